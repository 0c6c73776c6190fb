package scoring

import (
	"encoding/json"
	"fmt"
)

// Final is how one game ended. Only [Rules.Final] and its kin make one, so that a value other than the
// zero one is a score the game can have come to. The zero value is no result: see [Final.IsZero].
type Final struct {
	score  Score
	how    How
	winner Side
	won    bool
}

// Final is the final score a-b, ended as how says, or an error that says why no game under r ends so.
//
// Played takes the scores at which play itself ends. Timed and Retired take those at which it had not
// ended yet: the side that is behind counts as the one that retired (use [Rules.Retire] when it was the
// leader). Walkover takes the side with more points as the one that came. Void takes any score that can
// stand, and keeps it for the record.
func (r Rules) Final(a, b int, how How) (Final, error) {
	if err := r.Validate(); err != nil {
		return Final{}, err
	}
	if a < 0 || b < 0 {
		return Final{}, fmt.Errorf("%d-%d is no score: points are 0 or more", a, b)
	}
	f := Final{score: Score{a, b}, how: how, won: a != b}
	if b > a {
		f.winner = B
	}
	switch how {
	case Played:
		if !r.ends(a, b) {
			return Final{}, r.refuse(a, b)
		}
	case Timed, Retired:
		if err := r.refuseStopped(a, b, how); err != nil {
			return Final{}, err
		}
	case Walkover:
		if a == b {
			return Final{}, fmt.Errorf("a walkover has a winner: give the side that came, as in \"walkover a\"")
		}
		return r.Walkover(f.winner), nil
	case Void:
		f.won, f.winner = false, A
		if !r.ends(a, b) && !r.passes(a, b) {
			return Final{}, r.refuse(a, b)
		}
	default:
		return Final{}, fmt.Errorf("a game is played, timed, retired, walkover or void, and not %v", how)
	}
	return f, nil
}

// Retire is a game that side gave up at a-b. The other side wins, whatever the score.
func (r Rules) Retire(a, b int, side Side) (Final, error) {
	f := Final{score: Score{a, b}, how: Retired, winner: side.Other(), won: true}
	if err := r.Validate(); err != nil {
		return Final{}, err
	}
	if err := r.refuseStopped(a, b, Retired); err != nil {
		return Final{}, err
	}
	return f, nil
}

// Walkover is a game that winner gets because the other side did not come. It is recorded as the target
// to nothing (2026: 22.K), or to the start the other side was given.
func (r Rules) Walkover(winner Side) Final {
	f := Final{score: Score{r.To, r.StartB}, how: Walkover, winner: winner, won: true}
	if winner == B {
		f.score = Score{r.StartA, r.To}
	}
	return f
}

// Score is the points as they stood.
func (f Final) Score() Score { return f.score }

// How is how the game ended.
func (f Final) How() How { return f.how }

// Winner is the side that won, and false for a draw on time, a void game and the zero value.
func (f Final) Winner() (Side, bool) { return f.winner, f.won }

// IsZero reports whether f is no result at all.
func (f Final) IsZero() bool { return f.how == 0 }

// leader is the side the score speaks for.
func (f Final) leader() (Side, bool) {
	if f.score.B > f.score.A {
		return B, true
	}
	return A, f.score.A > f.score.B
}

// String is the score with how it came about unless it was played: "11-7", "9-6 timed",
// "10-5 retired, B won".
func (f Final) String() string {
	switch side, ahead := f.leader(); {
	case f.how == 0:
		return "no result"
	case f.how == Played:
		return f.score.String()
	case f.won && (!ahead || side != f.winner):
		return fmt.Sprintf("%v %v, %v won", f.score, f.how, f.winner)
	}
	return fmt.Sprintf("%v %v", f.score, f.how)
}

// finalJSON is the stored form. The winner stands there only where the score does not tell it.
type finalJSON struct {
	A   int   `json:"a"`
	B   int   `json:"b"`
	How How   `json:"how"`
	Won *Side `json:"won,omitempty"`
}

// MarshalJSON writes {"a":11,"b":7,"how":"played"}, with "won" where the loser has the higher score.
func (f Final) MarshalJSON() ([]byte, error) {
	if f.IsZero() {
		return []byte("null"), nil
	}
	out := finalJSON{A: f.score.A, B: f.score.B, How: f.how}
	if side, ahead := f.leader(); f.won && (!ahead || side != f.winner) {
		out.Won = &f.winner
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what [Final.MarshalJSON] writes. It cannot know the rules of the game; check a
// result from an untrusted place with [Rules.Check].
func (f *Final) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*f = Final{}
		return nil
	}
	var in finalJSON
	if err := json.Unmarshal(data, &in); err != nil {
		return fmt.Errorf("this is no final score: %w", err)
	}
	out := Final{score: Score{in.A, in.B}, how: in.How}
	out.winner, out.won = out.leader()
	switch {
	case in.How == 0:
		return fmt.Errorf("the score %v lacks how the game ended: played, timed, retired, walkover or void", out.score)
	case in.A < 0 || in.B < 0:
		return fmt.Errorf("%v is no score: points are 0 or more", out.score)
	case in.How == Void:
		out.winner, out.won = A, false
	case in.How == Retired && in.Won != nil:
		out.winner, out.won = *in.Won, true
	case !out.won && in.How != Timed:
		return fmt.Errorf("a game that was %v has a winner, and %v has none", in.How, out.score)
	}
	*f = out
	return nil
}
