package scheduler

import "slices"

// kept is the problem without what the rounds do not keep of it. On a real night somebody is put in for
// somebody else, or is left without a partner and gets another: then two meet who should not, or a
// team is not as the format asks. Bounds that rely on what was not kept would not hold for
// the night itself. Couples who were parted are seen to in scopeOf.
func kept(p Problem, rounds []Round) Problem {
	n := newNight(&p)
	met := make([]tally, n.people*n.people)
	fit := true
	for _, round := range rounds {
		for _, g := range round.Games {
			countMeetings(met, n.people, g.seats())
			fit = fit && n.isTeam(g.A) && n.isTeam(g.B)
		}
	}
	without := func(list []Pair, broken func(tally) bool) []Pair {
		return slices.DeleteFunc(slices.Clone(list), func(w Pair) bool { return broken(met[int(w.A)*n.people+int(w.B)]) })
	}
	p.NeverMeet = without(p.NeverMeet, func(t tally) bool { return t != tally{} })
	p.NeverPartner = without(p.NeverPartner, func(t tally) bool { return t.p > 0 })
	if fit {
		return p
	}
	p.Format = Rotating
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t Pair) bool { return t.Times == 0 })
	for i, mate := range n.mate {
		if mate > Player(i) {
			p.Together = append(p.Together, Pair{A: Player(i), B: mate})
		}
	}
	return p
}

// isTeam tells whether two people are a team as the format asks. Somebody alone is no team that could be wrong.
func (n *night) isTeam(t Team) bool {
	switch {
	case !n.known(t[0]) || !n.known(t[1]):
		return true
	case n.p.Format == Pairs:
		return n.mate[t[0]] == t[1]
	}
	return n.side == nil || n.side[t[0]] != n.side[t[1]]
}
