package forecast

import (
	"context"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Probable is the chance with which a way to play counts as giving people their games.
const Probable = 0.8

// Way is one way to play the night.
type Way struct {
	Rules  scoring.Rules
	Flow   session.Flow
	Each   int     // games that everybody probably gets, with [Probable]
	Round  float64 // minutes, as in [Answer]
	Rounds int     // that are probably over by closing time; 0 in the rolling flow
}

// targets are the points that clubs play to, longest game first, and limit the minutes of a game by the clock.
var targets = []int{21, 15, 11, 9, 7}

const limit = 12

// Ways lists the usual ways to play a night in both flows, the longest games first, and the index of the
// longest that probably gives everybody the wished games in the flow of h; -1 where none does.
func Ways(h Hall, club *session.Club, wished int, seed uint64) (ways []Way, best int, err error) {
	best = -1
	for _, rules := range lengths(h.Rules) {
		habit := Learned(club, rules)
		for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
			way := h
			way.Rules, way.Flow = rules, flow
			a, err := Of(way, habit, seed)
			if err != nil {
				return nil, -1, err
			}
			w := Way{rules, flow, Sure(a.Each, Probable), a.Round, Sure(a.Rounds, Probable)}
			if best < 0 && flow == h.Flow && w.Each >= wished {
				best = len(ways)
			}
			ways = append(ways, w)
		}
	}
	return ways, best, nil
}

// To are rules for games to so many points, with a cap as far above them as before.
func To(r scoring.Rules, points int) scoring.Rules {
	if r.Cap > 0 {
		r.Cap += points - r.To
	}
	r.To = points
	return r
}

// lengths are the rules with each usual target, and with a limit by the clock last.
func lengths(r scoring.Rules) (all []scoring.Rules) {
	r.Minutes = 0
	for _, to := range targets {
		if other := To(r, to); other.Validate() == nil {
			all = append(all, other)
		}
	}
	timed := r
	timed.Minutes = limit
	return append(all, timed)
}

// Other is the hall with other courts or people, and what it comes to.
type Other struct {
	Courts, People int
	Each           int     // games that everybody probably gets
	Waiting        float64 // share of their time that people sit out
}

// Others are the hall as it is, with a court less and more, and with three people fewer and more, as far as
// such halls can be.
func Others(h Hall, habit Habit, seed uint64) (all []Other) {
	for _, d := range [][2]int{{0, 0}, {-1, 0}, {1, 0}, {0, -3}, {0, 3}} {
		other := h
		other.Courts, other.People = h.Courts+d[0], h.People+d[1]
		a, err := Of(other, habit, seed)
		if err != nil {
			continue
		}
		all = append(all, Other{other.Courts, other.People, Sure(a.Each, Probable), other.Waiting()})
	}
	return all
}

// Mixing is what a rotation of some rounds comes to.
type Mixing struct {
	Rounds      int
	Certificate scheduler.Certificate
}

// LongestMixed is the number of rounds up to which [Mixes] looks.
const LongestMixed = 16

// Mixes plans the hall for 1 to 16 rounds as a night would be planned with everybody there. When ctx is done it
// returns what it has.
func Mixes(ctx context.Context, h Hall, format scheduler.Format, seed uint64) (all []Mixing, err error) {
	p := scheduler.Problem{Format: format, Seed: seed, People: make([]scheduler.Person, h.People), Courts: make([]scheduler.CourtSpec, h.Courts)}
	if format == scheduler.Mixed {
		for i := range p.People {
			p.People[i].Group = []string{"x", "y"}[i%2]
		}
	}
	for p.Rounds = 1; p.Rounds <= LongestMixed && ctx.Err() == nil; p.Rounds++ {
		rounds, err := scheduler.Plan(ctx, p, scheduler.Budget{})
		if err != nil {
			return nil, err
		}
		all = append(all, Mixing{p.Rounds, scheduler.Certify(p, rounds)})
	}
	return all, nil
}
