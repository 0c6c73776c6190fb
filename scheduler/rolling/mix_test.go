package rolling

import (
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// blocks is a hall in which two fours wait who came off as they were called, one four minutes after the other.
func blocks() Moment {
	p := nighttest.Club(16, 3, 0)
	r := Moment{People: p.People, Courts: p.Courts, Court: 2, Seed: 1}
	for a := night.Player(0); a < 16; a += 4 {
		g := night.Game{Court: night.Court(a/4) % 3, A: night.Team{a, a + 1}, B: night.Team{a + 2, a + 3}}
		r.Played = append(r.Played, g)
		if a >= 8 {
			r.Running = append(r.Running, g)
			continue
		}
		for i := a; i < a+4; i++ {
			r.Waiting = append(r.Waiting, Waiting{Player: i, Waited: 12 - float64(a), Present: 60, Games: 1})
		}
	}
	return r
}

// fromFirst counts how many of the four are of those who wait longest.
func fromFirst(t *testing.T, r Moment) (count int) {
	t.Helper()
	g, err := Next(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range g.Players() {
		count += night.One(i < 4)
	}
	return count
}

// TestBlocksDissolve: who came off together does not go on together, unless the order is strictly by waiting time or
// the next court is far away.
func TestBlocksDissolve(t *testing.T) {
	r := blocks()
	r.Free = []float64{2, 4}
	if got := fromFirst(t, r); got > 2 {
		t.Errorf("%d of a block go on together although a court frees in two minutes", got)
	}
	r.ByWait = true
	if got := fromFirst(t, r); got != 4 {
		t.Errorf("by waiting time %d of the four who waited longest are called", got)
	}
	r.ByWait, r.Free = false, []float64{25, 30}
	if got := fromFirst(t, r); got < 3 {
		t.Errorf("%d of the four who waited longest are called although the next court frees in 25 minutes", got)
	}
}
