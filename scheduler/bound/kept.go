package bound

import (
	"slices"

	"club/quadrille/scheduler/night"
)

// Kept is the problem without what the rounds do not keep of it. On a real night somebody is put in for
// somebody else, or is left without a partner and gets another: then two meet who should not, or a
// team is not as the format asks. Bounds that rely on what was not kept would not hold for
// the night itself. Couples who were parted are seen to in [ScopeOf].
func Kept(p night.Problem, rounds []night.Round) night.Problem {
	n := night.New(&p)
	met := make([]night.Tally, n.People*n.People)
	fit := true
	for _, round := range rounds {
		for _, g := range round.Games {
			night.CountMeetings(met, n.People, g.Seats())
			fit = fit && isTeam(n, g.A) && isTeam(n, g.B)
		}
	}
	without := func(list []night.Pair, broken func(night.Tally) bool) []night.Pair {
		return slices.DeleteFunc(slices.Clone(list), func(w night.Pair) bool { return broken(met[int(w.A)*n.People+int(w.B)]) })
	}
	p.NeverMeet = without(p.NeverMeet, func(t night.Tally) bool { return t != night.Tally{} })
	p.NeverPartner = without(p.NeverPartner, func(t night.Tally) bool { return t.P > 0 })
	if fit {
		return p
	}
	p.Format = night.Rotating
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t night.Pair) bool { return t.Times == 0 })
	for i, mate := range n.Mate {
		if mate > night.Player(i) {
			p.Together = append(p.Together, night.Pair{A: night.Player(i), B: mate})
		}
	}
	return p
}

// isTeam tells whether two people are a team as the format asks. Somebody alone is no team that could be wrong.
func isTeam(n *night.Night, t night.Team) bool {
	switch {
	case !n.Known(t[0]) || !n.Known(t[1]):
		return true
	case n.Problem.Format == night.Pairs:
		return n.Mate[t[0]] == t[1]
	}
	return n.Side == nil || n.Side[t[0]] != n.Side[t[1]]
}
