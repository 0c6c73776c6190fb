package lately

import (
	"testing"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestLaterTriesSetOutFromElsewhere: one descent ends where it ends; of some more, from other orders, the best is
// better on most nights.
func TestLaterTriesSetOutFromElsewhere(t *testing.T) {
	better, nights := 0, 12
	for seed := range uint64(nights) {
		p := nighttest.Club(16, 4, 4)
		p.Seed = seed + 1
		d := dice.New(p.Seed, 1)
		for i := range night.Player(16) {
			for j := range i {
				if d.Roll(3) == 0 {
					p.Lately = append(p.Lately, night.Recent{A: j, B: i, Partners: night.LastNight / 2, Opponents: night.LastNight / 4})
				}
			}
		}
		var rounds []night.Round
		for r := range 4 {
			var round night.Round
			order := make([]night.Player, 16)
			for i := range order {
				order[i] = night.Player((i*5 + r*3) % 16)
			}
			for c := range 4 {
				f := order[4*c : 4*c+4]
				round.Games = append(round.Games, night.Game{Court: night.Court(c), A: night.Team{f[0], f[1]}, B: night.Team{f[2], f[3]}})
			}
			rounds = append(rounds, round)
		}
		a := newArrangement(night.New(&p), rounds)
		a.begin(0)
		once := a.settle()
		best := once
		for try := 1; try < 10; try++ {
			a.begin(try)
			best = min(best, a.settle())
		}
		if best < once {
			better++
		}
	}
	if 2*better < nights {
		t.Errorf("more tries are better on %d of %d nights", better, nights)
	}
}

// TestWhoIsAlike: by group, level, times and courts, in whatever order these stand; whoever has a wish is alike nobody.
func TestWhoIsAlike(t *testing.T) {
	p := nighttest.Club(8, 2, 2)
	p.People[0].Courts, p.People[1].Courts, p.People[2].Courts = []night.Court{0, 1}, []night.Court{1, 0}, []night.Court{1}
	p.People[3].Level, p.People[4].Leave, p.People[5].Group = 3, 1, "x"
	p.NeverMeet = []night.Pair{{A: 6, B: 7}}
	got := classes(night.New(&p))
	for i := range got {
		for j := range i {
			if alike, want := got[i] == got[j], i == 1 && j == 0; alike != want {
				t.Errorf("persons %d and %d: alike %v, want %v: %v", i, j, alike, want, got)
			}
		}
	}
}
