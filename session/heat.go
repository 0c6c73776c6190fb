package session

import (
	"time"

	"club/quadrille/session/care"
)

// Heat is the air as somebody measured it last on a night.
type Heat struct {
	care.Air
	At time.Time `json:"at"`
}

// MeasureAgain is after how long the heat is measured again. It is a rule of thumb of this program; no authority has
// published one for a club's night.
const MeasureAgain = 30 * time.Minute

// Overdue is how many times MeasureAgain has passed since the air was measured.
func (h Heat) Overdue(now time.Time) int { return max(0, int(now.Sub(h.At)/MeasureAgain)) }

// HeatMeasured notes the air in the hall, or beside the courts.
type HeatMeasured struct{ care.Air }

func (e HeatMeasured) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := e.Possible(); err != nil {
		return err
	}
	n.Heat = &Heat{e.Air, at}
	return nil
}

// MeasureHeat notes what somebody measured.
type MeasureHeat struct{ Air care.Air }

func (c MeasureHeat) decide(l *Ledger, _ Env) ([]Event, error) {
	if _, err := openNight(l); err != nil {
		return nil, err
	}
	if err := c.Air.Possible(); err != nil {
		return nil, err
	}
	return []Event{HeatMeasured{c.Air}}, nil
}
