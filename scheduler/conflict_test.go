package scheduler

import (
	"context"
	"errors"
	"strings"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

func TestContradictionsAreNamed(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Problem)
		want   string
	}{
		{"two partners", func(p *Problem) { p.Together = []Pair{{A: 0, B: 1}, {A: 2, B: 0}} }, "P01 cannot always be the partner of both P02 and P03"},
		{"together and apart", func(p *Problem) {
			p.Together, p.NeverMeet = []Pair{{A: 0, B: 1, Times: 2}}, []Pair{{A: 1, B: 0}}
		}, "P01 and P02 shall be partners and never meet"},
		{"together and never", func(p *Problem) {
			p.Together, p.NeverPartner = []Pair{{A: 0, B: 1}}, []Pair{{A: 1, B: 0}}
		}, "P01 and P02 shall be partners and never be partners"},
		{"one group", func(p *Problem) { p.Format = Mixed }, "mixed teams need two groups, but all 8 people are of one"},
		{"third group", func(p *Problem) {
			p.Format = Mixed
			p.People[1].Group, p.People[2].Group = "x", "y"
		}, `P03 is of a third, "y", beside "" and "x"`},
		{"couple of a group", func(p *Problem) {
			p.Format = Mixed
			p.People[7].Group = "x"
			p.Together = []Pair{{A: 0, B: 1}}
		}, "are both of group"},
		{"no court for a couple", func(p *Problem) {
			p.Together = []Pair{{A: 0, B: 1}}
			p.People[0].Courts, p.People[1].Courts = []Court{0}, []Court{1}
		}, "no court suits both"},
		{"limit", func(p *Problem) { p.LevelLimit = 0.4 }, "choose from 0.5 to below 1"},
		{"with oneself", func(p *Problem) { p.NeverMeet = []Pair{{A: 2, B: 2}} }, "P03 cannot be paired with or kept apart from the same person"},
		{"too few", func(p *Problem) { p.People = p.People[:3] }, "round 1 has 3 of the 4 people that a game needs"},
		{"no court", func(p *Problem) { p.Courts = nil }, "no court is open in round 1"},
		{"nobody may meet", func(p *Problem) {
			for a := range Player(8) {
				for b := range a {
					p.NeverMeet = append(p.NeverMeet, Pair{A: a, B: b})
				}
			}
		}, "of the 8 people of round 1 no four may play together"},
		{"set pair forbidden", func(p *Problem) {
			p.Format = Pairs
			for i := range Player(7) {
				p.NeverMeet = append(p.NeverMeet, Pair{A: 0, B: i + 1})
			}
		}, "P01 and P02 are a set pair by their places in the list but shall not be"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := nighttest.Club(8, 2, 3)
			c.change(&p)
			_, err := Plan(context.Background(), p, Budget{Moves: 10_000})
			var conflict *Conflict
			if !errors.As(err, &conflict) || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want a conflict that says %q", err, c.want)
			}
			for _, clash := range Clashes(p) {
				for _, i := range clash.People {
					if !strings.Contains(clash.Text, p.NameOf(i)) {
						t.Errorf("%q is said to be about %s", clash.Text, p.NameOf(i))
					}
				}
			}
		})
	}
}

func TestWarningsSayWhatWishesCost(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Problem)
		want   string
	}{
		{"rests", func(p *Problem) { p.MaxRun = 3 }, "a rest after 3 games running leaves 1 of 2 courts empty from round 1 on"},
		{"leavers", func(p *Problem) {
			for i := range 5 {
				p.People[i].Leave = 2
			}
		}, "round 3 has 3 of the 4 people that a game needs"},
		{"shut out", func(p *Problem) {
			p.People[3].Courts = []Court{1}
			p.Courts[1].Open = 9
		}, "P04 can play on none of the open courts and sits out 4 rounds"},
		{"bench", func(p *Problem) { p.Courts, p.People = p.Courts[:1], append(p.People, Person{Name: "Z"}) }, "5 of 9 people sit out each round, and 1 of them twice running"},
		{"no partner", func(p *Problem) { p.Format, p.People = Pairs, append(p.People, Person{Name: "Z"}) }, "Z has no partner tonight and sits out 4 rounds"},
		{"ladder", func(p *Problem) {
			p.Format, p.Together = Ladder, []Pair{{A: 0, B: 1}}
		}, "a ladder splits partners: P01 and P02 play together by chance only"},
		{"times", func(p *Problem) {
			p.Together = []Pair{{A: 0, B: 1, Times: 3}}
			p.People[1].Leave = 2
		}, "P01 and P02 shall be partners 3 times, but are there together for 2 rounds only"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := nighttest.Club(8, 2, 4)
			c.change(&p)
			for _, w := range Warnings(p) {
				if strings.Contains(w, c.want) {
					return
				}
			}
			t.Errorf("%q do not say %q", Warnings(p), c.want)
		})
	}
	if w := Warnings(nighttest.Club(18, 4, 6)); len(w) > 0 {
		t.Errorf("a plain night warns: %q", w)
	}
}
