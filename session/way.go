package session

import (
	"fmt"
	"slices"
	"time"

	"club/quadrille/scheduler"
)

// Way is how tonight's plan trades what cannot be had together: what sitting out twice running may cost, and how
// even games shall be, each against meeting everybody.
type Way struct {
	Benching scheduler.Benching `json:"benching,omitempty"`
	Price    int                `json:"price,omitempty"`  // of two sit-outs twice running, in repeated meetings; 0 = the usual
	Levels   string             `json:"levels,omitempty"` // the step of leveling; "" = off
}

// wayOf is a way that is written as it is compared: one of a kind.
func wayOf(b scheduler.Benching, price int, l scheduler.Leveling) Way {
	w := Way{Benching: b, Price: price}
	if b == scheduler.StrictBench || price == scheduler.UsualPrice {
		w.Price = 0
	}
	if l != scheduler.AnyLevels {
		w.Levels = l.String()
	}
	return w
}

// Leveling is how much even games are worth.
func (w Way) Leveling() scheduler.Leveling {
	l, err := scheduler.ParseLeveling(w.Levels)
	if err != nil {
		return scheduler.AnyLevels
	}
	return l
}

// maxPrice is the highest price that a way may have: beyond it there is nothing to trade.
const maxPrice = 1000

// Validate says what is wrong with w, and nil when nothing is.
func (w Way) Validate() error {
	if int(w.Benching) >= len(scheduler.Benchings()) {
		return fmt.Errorf("%s is no way to share the bench: use mixed or strict", w.Benching)
	}
	if w.Price < 0 || w.Price > maxPrice {
		return fmt.Errorf("a price of sitting out twice running is 0 to %d repeated meetings, not %d", maxPrice, w.Price)
	}
	if _, err := scheduler.ParseLeveling(w.Levels); err != nil && w.Levels != "" {
		return err
	}
	return nil
}

// Way is how the night's coming rounds are planned: what was picked, else what the settings say.
func (n *Night) Way() Way {
	if n.Picked != nil {
		return *n.Picked
	}
	return wayOf(n.Settings.Benching, 0, n.Settings.Leveling())
}

// follow plans by the way.
func (w Way) follow(p *scheduler.Problem) {
	p.Benching, p.TwicePrice, p.Leveling = w.Benching, w.Price, w.Leveling()
	if p.Leveling == scheduler.AnyLevels {
		p.LevelLimit = 0 // a limit alone asks for even levels
	}
}

// WayPicked plans tonight another way: by these rounds, which the organiser saw, and in the same way from then on.
type WayPicked struct {
	Way    Way            `json:"way"`
	Rounds []PlannedRound `json:"rounds"`
}

func (e WayPicked) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := e.Way.Validate(); err != nil {
		return err
	}
	n.Picked, n.Plan = &e.Way, slices.Clone(e.Rounds)
	return nil
}

func isPick(e Event) bool { _, ok := e.(WayPicked); return ok }

// outlives tells whether a pick still holds under other settings: not where they settle anew what it settled.
func (n *Night) outlives(s Settings) bool {
	return s.Benching == n.Settings.Benching && s.Leveling() == n.Settings.Leveling()
}

// PickWay picks a way with the rounds that were shown for it.
type PickWay struct {
	Way    Way
	Rounds []PlannedRound
}

func (c PickWay) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Settings.Flow != Rounds {
		return nil, fmt.Errorf("tonight is rolling: there is no plan to pick")
	}
	if err := c.Way.Validate(); err != nil {
		return nil, err
	}
	if n.Picked != nil && *n.Picked == c.Way {
		return nil, fmt.Errorf("that way is picked already")
	}
	if !n.suits(c.Rounds) {
		return nil, fmt.Errorf("people or courts have changed since: look at the ways again")
	}
	return []Event{WayPicked(c)}, nil
}

// replannedSince tells whether rounds were planned after an action, and so by what it settled.
func (l *Ledger) replannedSince(action uint64) bool {
	return slices.ContainsFunc(l.Actions(), func(a Action) bool {
		return a.ID > action && !a.Undone && a.has(func(e Event) bool { p, ok := e.(RotationPlanned); return ok && len(p.Rounds) > 0 })
	})
}

// Words say how a way plans.
func (w Way) Words() string {
	text := "a few sit out twice running, so that all meet more"
	switch {
	case w.Benching == scheduler.StrictBench:
		text = "nobody sits out twice running who need not"
	case w.Price > scheduler.UsualPrice:
		text = "sitting out twice running only where it buys most"
	}
	if w.Levels != "" {
		text += "; " + levelsWord(w)
	}
	return text
}
