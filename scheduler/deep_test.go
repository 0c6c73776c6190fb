package scheduler

import (
	"math/bits"
	"os"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// deep searches nights in which everybody is there in every round for the least Σ C(m,2) of plans
// that share sit-outs evenly and bench as few people twice running as can be. Unlike [optimum] it
// leaves off where a plan is no better than one that is known, and so reaches longer nights. Who
// partners whom makes no difference.
type deep struct {
	people, seats, rounds int
	met                   [][]int
	games                 []int
	best                  int
}

// leastMeetings returns the optimum if it is below the known value, which a plan has.
func leastMeetings(people, courts, rounds, known int) int {
	d := &deep{people: people, seats: 4 * courts, rounds: rounds, best: known}
	d.met = make([][]int, people)
	for i := range d.met {
		d.met[i] = make([]int, people)
	}
	d.games = make([]int, people)
	first := 1<<d.seats - 1
	d.fill(0, first, first, 0, true)
	return d.best
}

// fill seats the people who are left of a round's players in all ways, game by game. All ways to fill
// the first round are alike.
func (d *deep) fill(round, players, left, cost int, only bool) {
	if cost >= d.best {
		return
	}
	if left == 0 {
		d.next(round, players, cost)
		return
	}
	i := bits.TrailingZeros(uint(left))
	others := left &^ (1 << i)
	for j := others; j != 0; j &= j - 1 {
		for k := j & (j - 1); k != 0; k &= k - 1 {
			for l := k & (k - 1); l != 0; l &= l - 1 {
				game := [4]int{i, bits.TrailingZeros(uint(j)), bits.TrailingZeros(uint(k)), bits.TrailingZeros(uint(l))}
				more := d.meet(game, 1)
				rest := left
				for _, x := range game {
					rest &^= 1 << x
				}
				d.fill(round, players, rest, cost+more, only)
				d.meet(game, -1)
				if only {
					return
				}
			}
		}
	}
}

// meet adds a game, or takes it back, and returns the repeated meetings in it.
func (d *deep) meet(game [4]int, by int) int {
	cost := 0
	for x, i := range game {
		d.games[i] += by
		for _, j := range game[:x] {
			cost += d.met[i][j]
			d.met[i][j] += by
			d.met[j][i] += by
		}
	}
	return cost
}

// next tries all players of the round after a finished one. Those who sat out play if they can.
func (d *deep) next(round, before, cost int) {
	if round++; round == d.rounds {
		if d.even() {
			d.best = cost
		}
		return
	}
	all := 1<<d.people - 1
	rested := all &^ before
	for players := 1<<d.seats - 1; players <= all; {
		if rested&^players == 0 || players&^rested == 0 {
			d.fill(round, players, players, cost, false)
		}
		low := players & -players
		high := players + low
		players = high | (players^high)/low>>2 // the next number of as many bits
	}
}

// even tells whether nobody played two games more than another.
func (d *deep) even() bool {
	low, high := d.games[0], d.games[0]
	for _, g := range d.games {
		low, high = min(low, g), max(high, g)
	}
	return high-low <= 1
}

// TestBoundsNeverExceedTheLeastMeetings searches nights on which up to two thirds of the people sit out.
//
// QUADRILLE_LONG=1 adds nights that take half a minute.
func TestBoundsNeverExceedTheLeastMeetings(t *testing.T) {
	nights := [][3]int{
		{5, 1, 7},
		{6, 1, 6},
		{7, 1, 7},
		{8, 1, 7},
		{9, 1, 7},
		{10, 1, 5},
		{10, 1, 6},
		{11, 1, 5},
		{12, 1, 5},
		{10, 2, 3},
		{14, 2, 3},
		{15, 2, 3},
		{16, 2, 4},
		{17, 2, 3},
	}
	if os.Getenv("QUADRILLE_LONG") != "" {
		nights = append(nights, [][3]int{{12, 1, 6}, {15, 2, 4}, {17, 2, 4}}...)
	}
	for _, c := range nights {
		p := nighttest.Club(c[0], c[1], c[2])
		p.Benching = StrictBench
		v := Certify(p, mustPlan(t, p, Budget{})).MeetingEvenness
		least := leastMeetings(c[0], c[1], c[2], v.Value)
		if v.Bound > least {
			t.Errorf("%d people, %d courts, %d rounds: bound %d is above the optimum %d", c[0], c[1], c[2], v.Bound, least)
		}
		if v.Value > least {
			t.Logf("%d people, %d courts, %d rounds: plan %d, optimum %d", c[0], c[1], c[2], v.Value, least)
		}
	}
}

// TestTenPeople: the bound for ten people on one court in five rounds is what trying all rotations finds.
func TestTenPeople(t *testing.T) {
	p := nighttest.Club(10, 1, 5)
	p.Benching = StrictBench
	v := Certify(p, mustPlan(t, p, Budget{})).MeetingEvenness
	if least := leastMeetings(10, 1, 5, 10); least != 5 || v != (Value{Value: 5, Bound: 5}) {
		t.Errorf("least %d, certificate %+v", least, v)
	}
}
