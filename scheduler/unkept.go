package scheduler

import (
	"fmt"

	"club/quadrille/scheduler/night"
)

// Unkept tells which wishes to be partners a number of times the night does not keep, history and rounds together:
// a sentence for each pair. Sit-outs come first: whoever owes them has no game left for a wish. What a plan must
// keep is for [Audit], and what nobody could keep for [Warnings].
func Unkept(p Problem, rounds []Round) []string {
	if len(night.Misnumbered(&p)) > 0 {
		return nil
	}
	var said []string
	p.Rounds = len(rounds)
	n := night.New(&p)
	for _, t := range p.Together {
		want := min(t.Times, mayPartnerTimes(n, t))
		got := 0
		for _, g := range p.Earlier() {
			got += night.One(g.Partners(t.A, t.B))
		}
		for _, round := range rounds {
			for _, g := range round.Games {
				got += night.One(g.Partners(t.A, t.B))
			}
		}
		if t.Times > 0 && got < want {
			said = append(said, fmt.Sprintf("%s and %s wish to be partners %s, but are %s: sit-outs are shared before wishes",
				p.NameOf(t.A), p.NameOf(t.B), times(want), times(got)))
		}
	}
	return said
}

// times is a number of times in words.
func times(n int) string {
	switch n {
	case 0:
		return "never"
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// mayPartnerTimes is how often two people can be partners tonight: as often as they were, and in
// every round to come in which both are there.
func mayPartnerTimes(n *night.Night, t Pair) int {
	times := 0
	for _, g := range n.Problem.Earlier() {
		times += night.One(g.Partners(t.A, t.B))
	}
	for r := n.First; r < len(n.Here); r++ {
		times += night.One(n.Problem.People[t.A].PresentIn(r) && n.Problem.People[t.B].PresentIn(r))
	}
	return times
}
