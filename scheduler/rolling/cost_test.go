package rolling

import (
	"testing"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestPricesFollowTheOrder: what a repeat costs a free court stands in the order of importance and nowhere else.
func TestPricesFollowTheOrder(t *testing.T) {
	p := nighttest.Club(8, 2, 0)
	for i := range p.People {
		p.People[i].Level = 3
	}
	p.People[0].Level, p.People[1].Level = 5, 5
	r := Moment{
		People: p.People, Courts: p.Courts, Leveling: night.EvenLevels, Together: []night.Pair{{A: 4, B: 5, Times: 1}},
		Played: []night.Game{{A: night.Team{0, 1}, B: night.Team{2, 3}}},
	}
	for _, x := range []struct {
		id    measure.ID
		game  night.Game
		times float64
	}{
		{measure.Meetings, night.Game{A: night.Team{0, 2}, B: night.Team{1, 3}}, 6},
		{measure.Partners, night.Game{A: night.Team{0, 1}, B: night.Team{6, 7}}, 1},
		{measure.Opponents, night.Game{A: night.Team{0, 6}, B: night.Team{2, 7}}, 1},
		{measure.Onesided, night.Game{A: night.Team{0, 1}, B: night.Team{6, 7}}, 1},
		{measure.Missing, night.Game{A: night.Team{4, 5}, B: night.Team{6, 7}}, -1},
	} {
		cost := func() float64 {
			c, err := newCaller(r)
			if err != nil {
				t.Fatal(err)
			}
			return c.cost(x.game)
		}
		before := cost()
		measure.Usual[x.id]++
		after := cost()
		measure.Usual[x.id]--
		if after-before != x.times {
			t.Errorf("%s: a weight of one more costs %v more, want %v", measure.Order[x.id].Says, after-before, x.times)
		}
	}
}

// TestPartnersAreNewWhileOthersCanPlay: partners who were partners before are not called, however long others have
// waited less, while another four can be; strictly by waiting time they are.
func TestPartnersAreNewWhileOthersCanPlay(t *testing.T) {
	p := nighttest.Club(16, 2, 0)
	r := Moment{People: p.People, Courts: p.Courts, Seed: 1}
	for i := range night.Player(16) {
		r.Waiting = append(r.Waiting, Waiting{Player: i, Waited: 30 - 2*float64(i), Present: 60, Games: 3})
	}
	for a := range night.Player(12) {
		for b := range a { // the first twelve have all been partners
			r.Played = append(r.Played, night.Game{A: night.Team{a, b}, B: night.Team{night.Nobody, night.Nobody}})
		}
	}
	repeats := func() int {
		g, err := Next(r)
		if err != nil {
			t.Fatal(err)
		}
		c, _ := newCaller(r)
		return c.again(g)
	}
	if n := repeats(); n != 0 {
		t.Errorf("partners repeat %d times, and three others wait further down", n)
	}
	r.ByWait = true
	if n := repeats(); n == 0 {
		t.Error("somebody is passed over by minutes although strictly by waiting time was asked for")
	}
}
