package session

import (
	"fmt"
	"time"
)

// NightOpened begins a night.
type NightOpened struct {
	Night    NightID   `json:"night"`
	ID       string    `json:"id"` // the same night has the same in every file, see Night.UID
	Name     string    `json:"name"`
	Settings Settings  `json:"settings"`
	Courts   []CourtID `json:"courts"`

	Venue  string       `json:"venue,omitempty"`  // since version 2, as is Traits
	Traits []VenueCourt `json:"traits,omitempty"` // of those courts that are kept for some levels or have a note
}

func (e NightOpened) older() uint16 { return layoutWithout(e.Venue == "" && len(e.Traits) == 0) }

func (e NightOpened) apply(f *fold, at time.Time) error {
	if f.club.OpenNight() != nil {
		return ErrNightOpen
	}
	if int(e.Night) != len(f.club.Nights)+1 {
		return fmt.Errorf("night %d cannot follow night %d", e.Night, len(f.club.Nights))
	}
	if err := e.Settings.Validate(); err != nil {
		return err
	}
	if len(e.Courts) > MaxCourts {
		return fmt.Errorf("a night has at most %d courts, not %d", MaxCourts, len(e.Courts))
	}
	n := &Night{ID: e.Night, UID: e.ID, Name: e.Name, Opened: at, Settings: e.Settings.known(), Venue: CleanText(e.Venue, MaxName), leveled: &leveled{}}
	for _, id := range e.Courts {
		n.Courts = append(n.Courts, Court{ID: id, Open: true})
	}
	for _, t := range e.Traits {
		c := n.Court(t.ID)
		if c == nil {
			return fmt.Errorf("tonight has no court %s", t.ID)
		}
		if err := t.validate(); err != nil {
			return err
		}
		c.Note, c.Low, c.High = CleanText(t.Note, MaxCourtNote), t.Low, t.High
	}
	f.club.Nights = append(f.club.Nights, n)
	f.club.Usual = newUsual(e.Settings, len(e.Courts))
	return nil
}

// NightClosed ends a night.
type NightClosed struct{}

func (NightClosed) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if len(n.Running()) > 0 {
		return fmt.Errorf("a game still goes on")
	}
	for i := range n.Roll {
		if a := &n.Roll[i]; a.State == Here || a.State == Resting {
			a.leaveTo(Gone, at)
		}
	}
	n.Closed, n.Plan, n.Pins, n.Hold, n.Rolls, n.Messages = at, nil, nil, nil, false, nil
	return nil
}

// SettingsChanged replaces the settings from now on.
type SettingsChanged struct {
	Settings Settings `json:"settings"`
}

func (e SettingsChanged) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := e.Settings.Validate(); err != nil {
		return err
	}
	if e.Settings.Flow != n.Settings.Flow || e.Settings.Flow == Rounds {
		n.Rolls, n.LastCall = false, false // rolling is begun anew
	}
	if next := e.Settings.known(); !n.outlives(next) {
		n.Picked = nil
	}
	n.Settings, n.Plan = e.Settings.known(), nil
	return nil
}

// CourtOpened adds a court, or opens one again.
type CourtOpened struct {
	Court CourtID `json:"court"`
}

func (e CourtOpened) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if e.Court == "" {
		return fmt.Errorf("a court needs a name")
	}
	n.Plan = nil
	if c := n.Court(e.Court); c != nil {
		c.Open = true
		return nil
	}
	n.Courts = append(n.Courts, Court{ID: e.Court, Open: true})
	return nil
}

// CourtClosed takes a court out of play. A game that goes on there may end.
type CourtClosed struct {
	Court CourtID `json:"court"`
}

func (e CourtClosed) apply(f *fold, _ time.Time) error {
	n, c, err := f.court(e.Court)
	if err != nil {
		return err
	}
	c.Open, n.Plan = false, nil
	return nil
}

// PlayHeld stops play for safety.
type PlayHeld struct {
	Why string `json:"why"`
}

func (e PlayHeld) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if n.Hold != nil {
		return fmt.Errorf("play is held already")
	}
	n.Hold = &Hold{Why: e.Why, Since: at}
	return nil
}

// PlayResumed ends a hold.
type PlayResumed struct{}

func (PlayResumed) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if n.Hold == nil {
		return fmt.Errorf("play is not held")
	}
	for _, g := range n.Running() {
		from := n.Hold.Since
		if g.Called.After(from) {
			from = g.Called
		}
		g.Stood += max(0, at.Sub(from)) // a clock may go back by less than is taken for a move
	}
	n.Hold = nil
	return nil
}

// RecordLost stands where a rescue could not read a record. What rests on it is skipped.
type RecordLost struct{}

func (RecordLost) apply(*fold, time.Time) error { return nil }

// Undone takes an action back, as if it had not happened. It is carried out by the ledger, which
// folds the night again without that action. Courts that are free then may be called; these calls are of
// the same action as the undo.
type Undone struct {
	Action uint64   `json:"action"`
	With   []uint64 `json:"with,omitempty"` // earlier undos and redos whose calls cannot stand without it: these go too; since version 2
}

func (Undone) apply(*fold, time.Time) error { return nil }

func (e Undone) older() uint16 { return layoutWithout(len(e.With) == 0) }

// Redone brings back an action that was undone.
type Redone struct {
	Action uint64   `json:"action"`
	Back   []uint64 `json:"back,omitempty"` // whose calls its undo took with it: these come back; since version 2, as is With
	With   []uint64 `json:"with,omitempty"` // earlier undos and redos whose calls cannot stand beside it: these go
}

func (Redone) apply(*fold, time.Time) error { return nil }

func (e Redone) older() uint16 { return layoutWithout(len(e.Back)+len(e.With) == 0) }
