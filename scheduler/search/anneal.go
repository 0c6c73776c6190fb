package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
)

// annealer improves a board by simulated annealing (Kirkpatrick, Gelatt & Vecchi, Science 220 (1983)
// 671-680) and remembers the best that it saw.
type annealer struct {
	b       *board
	m       *mover
	d       *dice.Dice
	floor   int // no plan weighs less; reaching it ends the search
	resting int // least weight of who sits out
	best    int
	still   bool             // what changes nothing is not taken, so that people see fewer changes
	effort  int              // work of the pulse beyond that of single exchanges, in moves
	polish  int              // pulses since nothing but opponents and levels is left to better
	again   int              // a plan with more partner repeats is no better, however even its games
	first   func(*board) int // what plans are judged by before their weight; nil = nothing
	led     int              // that of the best plan
	record  []int32          // the seats of the best plan
}

func newAnnealer(b *board, d *dice.Dice, floor, resting int) *annealer {
	a := &annealer{b: b, m: newMover(b, d), d: d, floor: floor, best: b.play + b.rest, resting: resting, again: noLimit}
	a.m.patience = brokenWeight
	a.record = append(a.record, b.seat...)
	return a
}

// noLimit is more partner repeats than there are.
const noLimit = 1 << 40

// brokenWeight is what one game against what must hold weighs.
var brokenWeight = measure.Usual[measure.Broken]

// pulse is how many moves pass between two looks at the clock of the caller and the temperature.
const pulse = 512

// run tries so many moves while the temperature falls from hot to cold. It ends early when the best
// is proved best, when only opponents or levels are left to better and some time went into that, or when
// ctx is done. It returns the moves tried.
func (a *annealer) run(ctx context.Context, moves int, hot, cold float64) int {
	if len(a.m.live) == 0 {
		return 0
	}
	for done := 0; done < moves; done += pulse + a.effort {
		a.effort = 0
		if a.proved() || ctx.Err() != nil {
			return done
		}
		if a.best < a.floor+a.b.w[measure.Meetings] {
			if a.polish++; a.polish*pulse > moves/polishShare {
				return done
			}
		}
		temperature := hot - (hot-cold)*float64(done)/float64(moves)
		a.m.patience = int(9 * temperature) // beyond any nerve, see exponentials
		for range pulse {
			a.try(temperature)
		}
	}
	return moves
}

// polishShare is the part of the moves that may go into opponents and levels alone.
const polishShare = 6

// proved tells whether the best plan meets the floor in every measure.
func (a *annealer) proved() bool { return a.best <= a.floor }

// try proposes one move and takes it if the temperature allows.
func (a *annealer) try(temperature float64) {
	x := a.d.Next()
	if a.m.onlySwaps(x) {
		if r, s, t := a.m.roll(x); s>>1 != t>>1 && a.trySwap(r, s, t, temperature) {
			a.keep()
		}
		return
	}
	a.m.rest, a.m.known = 0, false
	steps := a.m.propose(x)
	switch {
	case len(steps) == 0:
		return
	case len(steps) == 1 && !a.b.replaces(steps[0]):
		if s := steps[0]; !a.trySwap(s.r, s.s, s.t, temperature) {
			return
		}
	default:
		nerve := a.d.Nerve(temperature)
		if a.still && nerve == 0 {
			nerve = -1
		}
		if !a.tryAll(steps, nerve) {
			return
		}
	}
	a.keep()
}

// trySwap lets two who play in one round change places if the temperature allows.
func (a *annealer) trySwap(r, s, t int, temperature float64) bool {
	b := a.b
	d := b.playDelta(b.row(r), s, t)
	if d > a.m.patience && b.leveling == nil {
		return false
	}
	if b.leveling != nil {
		if d > a.m.patience && d-b.mostGain(r, s, t) > a.m.patience {
			return false // however even the games become
		}
		d += b.levelDelta(r, s, t)
	}
	if d > a.m.patience || d > 0 && d > a.d.Nerve(temperature) || a.still && d == 0 {
		return false
	}
	b.swap(r, s, t, d)
	return true
}

// tryAll takes several steps, or one that concerns the bench, and takes them back unless the whole
// move costs no more than the nerve.
func (a *annealer) tryAll(steps []step, nerve int) bool {
	b := a.b
	teams := len(steps) > 1 && steps[0].r == steps[1].r // whose pairs the guess would count wrongly
	if !teams && (a.m.known || b.rest <= a.resting || !slices.ContainsFunc(steps, b.replaces)) {
		guess := a.m.rest
		for _, s := range steps {
			guess += b.swapDelta(s.r, s.s, s.t)
		}
		if guess > nerve+(len(steps)-1)*overlap {
			return false
		}
	}
	play, rest := b.play, b.rest
	a.effort += effortOfSteps * len(steps)
	for _, s := range steps {
		b.swap(s.r, s.s, s.t, b.swapDelta(s.r, s.s, s.t))
	}
	if b.play+b.rest-play-rest <= nerve {
		return true
	}
	for k := len(steps) - 1; k >= 0; k-- {
		b.swap(steps[k].r, steps[k].s, steps[k].t, 0)
	}
	b.play, b.rest = play, rest
	return false
}

// effortOfSteps is to how many moves that come to nothing it amounts to take a step and take it back.
const effortOfSteps = 8

// overlap is by how much steps that concern the same pairs may cost less together than one by one and
// still be worth trying.
const overlap = 48

// keep remembers the board if it is the best so far.
func (a *annealer) keep() {
	w := a.b.play + a.b.rest
	if a.first == nil {
		if w < a.best && a.b.again <= a.again {
			a.note(w)
		}
		return
	}
	if led := a.first(a.b); (led < a.led || led == a.led && w < a.best) && a.b.again <= a.again {
		a.led = led
		a.note(w)
	}
}

func (a *annealer) note(w int) {
	a.best = w
	copy(a.record, a.b.seat)
}

// leads lets plans be judged by something before their weight.
func (a *annealer) leads(first func(*board) int) {
	a.first, a.led = first, first(a.b)
}

// dear is what the board weighs but for levels and repeated opponents, which are traded for each other.
func (b *board) dear() int {
	return b.play + b.rest - b.leveled() - b.w[measure.Opponents]*b.opposed
}

// restore puts the best plan back on the board.
func (a *annealer) restore() {
	copy(a.b.seat, a.record)
	a.b.recount()
}
