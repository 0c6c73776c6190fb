package session

import (
	"context"
	"reflect"
	"slices"
	"time"

	"club/quadrille/scheduler"
)

// Shown is what people have seen of the rounds to come: where a rotation is planned anew it sets out from there.
type Shown struct {
	Night  NightID
	Called int            // rounds that were called by then
	Way    Way            // in which they were planned
	Of     []PlannedRound // the plan that the night had then, which the rounds may improve on
	Rounds []PlannedRound
}

// Show is what a rotation of the night shows.
func (l *Ledger) Show(r Rotation) Shown {
	n := l.Night()
	if n == nil {
		return Shown{}
	}
	return Shown{n.ID, len(n.Rounds), n.Way(), n.Plan, r.Rounds}
}

// of is what was shown of the rounds that are still to come; nil where that is not known.
func (s Shown) of(n *Night) []PlannedRound {
	called := len(n.Rounds) - s.Called
	if s.Night != n.ID || called < 0 || called >= len(s.Rounds) {
		return nil
	}
	return s.Rounds[called:]
}

// improves tells whether what was shown improved on the plan that the night still has.
func (s Shown) improves(n *Night) bool {
	return s.Night == n.ID && s.Called == len(n.Rounds) && n.suits(s.Rounds) && len(s.Rounds) == len(n.Plan) && reflect.DeepEqual(s.Of, n.Plan)
}

// ReplanRotation is [PlanRotation] where people have seen a rotation: among equally good plans it takes one with
// more of the games that were shown, and says what has changed.
func ReplanRotation(ctx context.Context, l *Ledger, now time.Time, shown Shown) (Rotation, error) {
	n, err := openNight(l)
	if err != nil {
		return Rotation{}, err
	}
	d := newDraw(l.Club(), n, now)
	var rounds []PlannedRound
	switch {
	case shown.improves(n) && d.keeps(shown.Rounds):
		rounds = shown.Rounds
	case n.suits(n.Plan) && d.keeps(n.Plan):
		rounds = n.Plan
	default:
		from := shown.of(n)
		if from == nil || shown.Way != n.Way() {
			from = n.Plan
		}
		if len(n.Games) == 0 && len(n.Plan) == 0 && len(d.problem.Lately) > 0 {
			from = nil // nobody has gone to a court by it yet, and who comes changes who has met whom lately
		}
		if rounds, err = d.plan(ctx, from); err != nil {
			return Rotation{Warnings: d.warnings()}, err
		}
	}
	r := d.rotation(rounds)
	r.Change = shown.Change(l, rounds)
	return r, nil
}

// Change is what rounds to come leave of what was shown; zero where nothing was.
func (s Shown) Change(l *Ledger, rounds []PlannedRound) Change {
	n := l.Night()
	if n == nil {
		return Change{}
	}
	return Changed(s.of(n), rounds, len(n.Rounds)+1)
}

// ImproveRotation looks for a better rotation beside one that is shown, in a slice of work, and tells whether it found
// one. The next round stays as it is shown, and so do the rounds that were called; those after it change only where all
// together become better. The same night, rotation and slice give the same. See [scheduler.Improve].
func ImproveRotation(ctx context.Context, l *Ledger, now time.Time, r Rotation, slice uint64) (Rotation, bool, error) {
	n, err := openNight(l)
	if err != nil || len(r.Rounds) < 2 || n.Settings.Format == scheduler.Ladder {
		return r, false, err
	}
	d := newDraw(l.Club(), n, now)
	plan := d.schedule(r.Rounds)
	p := d.problem
	p.History, p.Rounds = append(slices.Clip(p.History), plan[0]), len(plan)-1
	p.Pins = slices.DeleteFunc(slices.Clone(p.Pins), func(x scheduler.Pin) bool { return x.Round < len(p.History) })
	better, found, err := scheduler.Improve(ctx, p, plan[1:], scheduler.Budget{}, slice)
	if err != nil || !found {
		return r, false, err
	}
	next := d.rotation(append(slices.Clone(r.Rounds[:1]), d.rounds(better)...))
	next.Change = r.Change
	return next, true, nil
}
