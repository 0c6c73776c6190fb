package scheduler

import (
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestReplanTakesUpWhatIsNewlyAsked plans on after a wish, a group or a court's levels changed that nothing shown so
// far has to keep. Nobody who asks for a partner at the door is told that it is so and then plays with others.
func TestReplanTakesUpWhatIsNewlyAsked(t *testing.T) {
	mixed := func(p *Problem) {
		for i := range p.People {
			p.People[i].Group = string(rune('x' + i%2))
		}
	}
	two := func(p *Problem, a, b Player) { p.Together = append(p.Together, Pair{A: a, B: b}) }
	for _, c := range []struct {
		name   string
		format Format
		change func(*Problem)
	}{
		{"two are partners from now on", Rotating, func(p *Problem) { two(p, 3, 12) }},
		{"set pairs, two others are a pair", Pairs, func(p *Problem) { two(p, 3, 12); two(p, 2, 13) }},
		{"mixed, two are partners from now on", Mixed, func(p *Problem) { two(p, 3, 12) }},
		{"mixed, four change their group", Mixed, func(p *Problem) {
			for i, g := range []string{"y", "x", "y", "x"} {
				p.People[4+i].Group = g
			}
		}},
		{"two are kept apart", Rotating, func(p *Problem) { p.NeverMeet = append(p.NeverMeet, Pair{A: 1, B: 9}) }},
		{"set pairs, two are no partners", Pairs, func(p *Problem) { p.NeverPartner = append(p.NeverPartner, Pair{A: 0, B: 1}) }},
		{"somebody keeps to one court", Rotating, func(p *Problem) { p.People[5].Courts = []Court{1} }},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, people := range []int{16, 20, 22} {
				for _, called := range []int{0, 2} {
					p := nighttest.Club(people, 4, 7)
					if p.Format = c.format; p.Format == Mixed {
						mixed(&p)
					}
					plan := mustPlan(t, p, Budget{})
					if called > 0 {
						p.History, p.Rounds = plan[:called], p.Rounds-called
					}
					c.change(&p)
					rounds, _, err := Replan(t.Context(), p, plan[called:], Budget{})
					if err != nil {
						t.Fatalf("%d people, %d rounds called: %v", people, called, err)
					}
					for _, v := range Audit(p, rounds) {
						t.Errorf("%d people, %d rounds called: %s", people, called, v.Text)
					}
				}
			}
		})
	}
}
