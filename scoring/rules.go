package scoring

import (
	"fmt"
	"strings"
)

// Scoring says who may score.
type Scoring uint8

const (
	// SideOut is the standard scoring: only the serving team scores, and in doubles both partners
	// serve before the serve goes over.
	SideOut Scoring = iota
	// RallyScoring gives a point for every rally and one server a turn (provisional rules 12.B.1; 2026: 14.A).
	RallyScoring
)

// Rules are what two teams agree on before a game. The zero value is no rules: see [Rules.Validate].
type Rules struct {
	Scoring    Scoring `json:"scoring"`
	Singles    bool    `json:"singles,omitempty"`
	To         int     `json:"to"`                     // points that win a game
	WinBy      int     `json:"win_by"`                 // the lead it takes, 1 or 2
	Cap        int     `json:"cap,omitempty"`          // this many points win with any lead; 0 for no cap
	WinOnServe bool    `json:"win_on_serve,omitempty"` // rally scoring: the last point must be won on serve
	Minutes    int     `json:"minutes,omitempty"`      // after which play stops; 0 for no limit
	StartA     int     `json:"start_a,omitempty"`      // the score that team A begins with
	StartB     int     `json:"start_b,omitempty"`
}

// MaxTo is the highest target and cap that [Rules.Validate] lets pass. No rulebook goes beyond 21.
const MaxTo = 99

// Validate says what is wrong with r, and nil when a game can be played under it.
func (r Rules) Validate() error {
	switch {
	case r.Scoring > RallyScoring:
		return fmt.Errorf("scoring is side-out or rally")
	case r.To < 1 || r.To > MaxTo:
		return fmt.Errorf("a game goes to 1 point or more, at most %d, and not to %d: 11 is usual", MaxTo, r.To)
	case r.WinBy != 1 && r.WinBy != 2:
		return fmt.Errorf("a game is won by 1 or by 2, and not by %d", r.WinBy)
	case r.Cap != 0 && (r.Cap < r.To || r.Cap > MaxTo):
		return fmt.Errorf("a cap of %d does not fit a game to %d: use %d to %d, or 0 for none", r.Cap, r.To, r.To, MaxTo)
	case r.WinOnServe && r.Scoring == SideOut:
		return fmt.Errorf("side-out scoring gives every point on serve: leave win on serve off")
	case r.Minutes < 0:
		return fmt.Errorf("a time limit of %d minutes is not possible: use 0 for none", r.Minutes)
	case r.StartA < 0 || r.StartA >= r.To || r.StartB < 0 || r.StartB >= r.To:
		return fmt.Errorf("a game to %d cannot start at %d-%d: a start is 0 to %d", r.To, r.StartA, r.StartB, r.To-1)
	}
	return nil
}

// String names r in the words of a notice, such as "side-out to 11, win by 2".
func (r Rules) String() string {
	var b strings.Builder
	b.WriteString(r.Scoring.String())
	if r.Singles {
		b.WriteString(" singles")
	}
	b.WriteByte(' ')
	b.WriteString(r.limits())
	if r.WinOnServe {
		b.WriteString(", last point on serve")
	}
	if r.Minutes > 0 {
		b.WriteString(", ")
		b.WriteString(counted(r.Minutes, "minute", "minutes"))
	}
	return b.String()
}

// limits is the part of r that settles which scores can come up.
func (r *Rules) limits() string {
	text := fmt.Sprintf("to %d, win by %d", r.To, r.WinBy)
	if r.Cap > 0 {
		text += fmt.Sprintf(", cap %d", r.Cap)
	}
	if r.StartA != 0 || r.StartB != 0 {
		text += fmt.Sprintf(", starting at %d-%d", r.StartA, r.StartB)
	}
	return text
}

// threeNumbers reports whether the call ends in the number of the server.
func (r *Rules) threeNumbers() bool { return r.Scoring == SideOut && !r.Singles }

// ParseScoring reads the name of a scoring: side-out (also sideout, side out) or rally.
func ParseScoring(text string) (Scoring, error) {
	switch strings.ToLower(text) {
	case "side-out", "sideout", "side out":
		return SideOut, nil
	case "rally":
		return RallyScoring, nil
	}
	return 0, fmt.Errorf("no scoring is called %q: use side-out or rally", text)
}

// String is "side-out" or "rally".
func (s Scoring) String() string {
	if s == SideOut {
		return "side-out"
	}
	return "rally"
}

// MarshalText writes [Scoring.String].
func (s Scoring) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads a scoring as [ParseScoring] does.
func (s *Scoring) UnmarshalText(text []byte) (err error) {
	*s, err = ParseScoring(string(text))
	return err
}
