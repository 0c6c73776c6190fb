package forecast

import (
	"fmt"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Hall is what an organiser expects of a night.
type Hall struct {
	People  int
	Late    int // of them, who come between a tenth and four tenths of the time
	Leave   int // of them, who go when half to 85 % of the time has passed
	Courts  int
	Minutes int // from the first call to closing time
	Flow    session.Flow
	Rules   scoring.Rules
}

// Validate says what is wrong with h, and nil when nothing is.
func (h Hall) Validate() error {
	switch {
	case h.People < h.Seats():
		return fmt.Errorf("a court takes %d people, and %d are too few", h.Seats(), h.People)
	case h.Courts < 1 || h.Courts > session.MaxCourts:
		return fmt.Errorf("a night needs 1 to %d courts, not %d", session.MaxCourts, h.Courts)
	case h.Minutes < 1 || h.Minutes > 12*60:
		return fmt.Errorf("a night lasts 1 to %d minutes, not %d", 12*60, h.Minutes)
	case h.Late < 0 || h.Leave < 0 || h.Late+h.Leave > h.People-h.Seats():
		return fmt.Errorf("%d who come late and %d who go early are too many of %d: %d must be there throughout", h.Late, h.Leave, h.People, h.Seats())
	}
	return h.Rules.Validate()
}

// Seats is how many people play on a court.
func (h Hall) Seats() int {
	if h.Rules.Singles {
		return 2
	}
	return 4
}

// Busy is how many courts the people fill.
func (h Hall) Busy() int { return min(h.Courts, h.People/h.Seats()) }

// Waiting is the share of their time that people sit out when all are there.
func (h Hall) Waiting() float64 { return 1 - float64(h.Busy()*h.Seats())/float64(h.People) }
