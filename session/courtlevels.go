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
	n, c, err := f.court(e.Court)
	if err != nil {
		return err
	}
	if err := validLevels(e.Low, e.High); err != nil {
		return err
	}
	c.Low, c.High, n.Plan = e.Low, e.High, nil
	return nil
}

// Levels are the levels for which a court is kept, in words.
func (c Court) Levels() string { return levelRange(c.Low, c.High) }

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
	if err := validLevels(c.Low, c.High); err != nil {
		return nil, err
	}
	k := n.Court(c.Court)
	switch {
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case k.Low == c.Low && k.High == c.High:
		return nil, fmt.Errorf("court %s is for %s already", c.Court, k.Levels())
	}
	return []Event{CourtLeveled(c)}, nil
}
