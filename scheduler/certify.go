package scheduler

import (
	"club/quadrille/scheduler/bound"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// Certify measures the whole night: the history of the problem, then these rounds. The bounds take from
// the night who was there in each round and how many games were played; who played with whom is free, also in
// the history. They hold for plans that share sit-outs as fairly, bench as few people twice running
// and keep what people ask, as far as this one does: somebody who was put in may have met whom not to.
// Otherwise the rotation should pass [Audit]; of an invalid one nothing is promised but that Certify
// returns.
//
// With games of no round among those of the night, the bounds on who plays with whom are those of
// [CertifyGames], and those on sitting out are of the rounds.
func Certify(p Problem, rounds []Round) Certificate {
	rounds = append(append([]Round(nil), p.History...), rounds...)
	if len(p.Met) > 0 {
		p.History, p.Rounds = rounds, 0
		whole := CertifyGames(p, p.Earlier())
		p.History, p.Met = nil, nil
		c := Certify(p, rounds)
		whole.SitoutEvenness, whole.SitoutSpread = c.SitoutEvenness, c.SitoutSpread
		whole.BenchedTwice, whole.LongestBench = c.BenchedTwice, c.LongestBench
		return whole
	}
	p.History, p.Rounds = nil, len(rounds)
	p = bound.Kept(p, rounds)
	n := night.New(&p)
	for r, round := range rounds {
		n.Here[r] = n.Distinct(round.Named())
	}
	m := measure.Count(n, rounds)
	s := bound.ScopeOf(n, rounds, m)
	c := certificate(m, s)
	c.SitoutEvenness, c.SitoutSpread = s.Sitouts(rounds, m)
	p.History = rounds
	c.Levels = measure.LevelsOf(&p, p.Earlier())
	c.LongestBench = Value{Value: m.Longest, Bound: s.LongestBound()}
	c.BenchedTwice = Value{Value: m.Twice, Bound: s.TwiceBound()}
	return c
}

// CertifyGames measures the games of a rolling night, in which there are no rounds and nobody counts as
// sitting out: the measures of sitting out are 0. The bounds take the numbers of everybody's games as
// they are and let everybody meet everybody.
func CertifyGames(p Problem, games []Game) Certificate {
	rounds := make([]Round, len(games))
	for k, g := range games {
		rounds[k] = Round{Games: []Game{g}}
	}
	p.History, p.Met, p.Rounds = nil, nil, len(rounds)
	p = bound.Kept(p, rounds)
	n := night.New(&p)
	for r := range n.Here {
		n.Here[r] = n.Everybody()
	}
	m := measure.Count(n, rounds)
	s := bound.ScopeOf(n, rounds, m)
	copy(s.Low, m.Games)
	copy(s.High, m.Games)
	s.Rests, s.Loose = false, true
	c := certificate(m, s)
	c.Levels = measure.LevelsOf(&p, games)
	return c
}

// certificate sets values beside bounds, but for sitting out.
func certificate(m *measure.Counts, s *bound.Scope) Certificate {
	b := s.Bounds()
	return Certificate{
		PartnerRepeats:   Value{Value: m.Repeats, Bound: b.Repeats},
		PartnerEvenness:  Value{Value: m.Partners, Bound: b.Partners},
		OpponentEvenness: Value{Value: m.Opponents, Bound: b.Opponents},
		MeetingEvenness:  Value{Value: m.Meetings, Bound: b.Meetings},
		Strangers:        s.Strangers(m, b.Meetings),
		CourtSpread:      Value{Value: m.CourtSpread(), Bound: s.CourtBound(m)},
	}
}
