package session

import (
	"fmt"
	"time"
)

// CourtLeveled keeps a court for people of some levels, as far as the rotation allows: whoever has another level plays
// there only where nothing else is as fair.
type CourtLeveled struct {
	Court CourtID `json:"court"`
	Low   float64 `json:"low,omitempty"`  // 0 for no lower end
	High  float64 `json:"high,omitempty"` // 0 for no upper end
}

func (e CourtLeveled) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := e.validate(); err != nil {
		return err
	}
	c := n.Court(e.Court)
	if c == nil {
		return fmt.Errorf("tonight has no court %s", e.Court)
	}
	c.Low, c.High, n.Plan = e.Low, e.High, nil
	return nil
}

func (e CourtLeveled) validate() error {
	switch {
	case !(e.Low >= 0 && e.Low <= 10) || !(e.High >= 0 && e.High <= 10):
		return fmt.Errorf("a level lies between 0 and 10: leave an end empty where there is none")
	case e.High > 0 && e.Low > e.High:
		return fmt.Errorf("levels from %g to %g are none: the lower one comes first", e.Low, e.High)
	}
	return nil
}

// Levels are the levels for which a court is kept, in words.
func (c Court) Levels() string {
	switch {
	case c.Low > 0 && c.High > 0:
		return fmt.Sprintf("levels %g to %g", c.Low, c.High)
	case c.Low > 0:
		return fmt.Sprintf("levels from %g", c.Low)
	case c.High > 0:
		return fmt.Sprintf("levels to %g", c.High)
	}
	return "any level"
}

// LevelCourt keeps a court for some levels from now on; 0 and 0 for any.
type LevelCourt struct {
	Court     CourtID
	Low, High float64
}

func (c LevelCourt) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	e := CourtLeveled(c)
	if err := e.validate(); err != nil {
		return nil, err
	}
	k := n.Court(c.Court)
	switch {
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case k.Low == c.Low && k.High == c.High:
		return nil, fmt.Errorf("court %s is for %s already", c.Court, k.Levels())
	}
	return []Event{e}, nil
}
