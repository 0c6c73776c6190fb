package drill

import (
	"fmt"
	"strings"

	"club/quadrille/scoring"
)

// Verdict is what became of an answer.
type Verdict struct {
	Right    bool
	Expected Answer
	Wrong    []string // what was wrong, a phrase each
	Why      string   // a sentence on what the rally changed, and one on ends where they are switched
}

// Check compares an answer with the engine's.
func (q Question) Check(a Answer) Verdict {
	want := q.Expected()
	after := q.After()
	v := Verdict{Expected: want, Why: strings.TrimSpace(after.Why() + " " + after.EndsWhy(scoring.Names{}))}
	switch {
	case a.Over && want.Over:
	case want.Over:
		v.Wrong = append(v.Wrong, "the game is over")
	case a.Over:
		v.Wrong = append(v.Wrong, "the game goes on")
	default:
		v.Wrong = q.differences(a, want)
	}
	v.Right = len(v.Wrong) == 0
	return v
}

// differences names what two answers do not share.
func (q Question) differences(a, want Answer) []string {
	var out []string
	if a.Call != want.Call {
		out = append(out, callHint(a.Call, want.Call))
	}
	if a.Server != want.Server {
		out = append(out, fmt.Sprintf("%v serves", want.Server))
	}
	if a.Box != want.Box {
		out = append(out, fmt.Sprintf("it is the %v box", want.Box))
	}
	if !q.Level.asksMore() {
		return out
	}
	if a.Ends != want.Ends {
		out = append(out, yes(want.Ends, "the teams switch ends", "the teams stay at their ends"))
	}
	if a.GamePoint != want.GamePoint {
		out = append(out, yes(want.GamePoint, "it is game point", "it is not game point"))
	}
	return out
}

// callHint corrects a call, and says what kind of mistake it was where that can be told.
func callHint(said, want string) string {
	saidParts, parts := strings.Split(said, "-"), strings.Split(want, "-")
	switch {
	case len(saidParts) < len(parts):
		return fmt.Sprintf("the call is %s: the number of the server comes last", want)
	case len(saidParts) > len(parts):
		return fmt.Sprintf("the call is %s: servers have no number here", want)
	case saidParts[0] == parts[1] && saidParts[1] == parts[0] && parts[0] != parts[1]:
		return fmt.Sprintf("the call is %s: the serving team's score comes first", want)
	}
	return fmt.Sprintf("the call is %s", want)
}

func yes(is bool, then, otherwise string) string {
	if is {
		return then
	}
	return otherwise
}

// String is the verdict in words: whether it was right, what was not, and why.
func (v Verdict) String() string {
	if v.Right {
		return "Right. " + v.Why
	}
	return "Wrong: " + strings.Join(v.Wrong, "; ") + ". " + v.Why
}
