package scheduler

import (
	"club/quadrille/scheduler/bound"
	"club/quadrille/scheduler/judge"
	"club/quadrille/scheduler/night"
)

// Certify measures the whole night: the history of the problem, then these rounds. The bounds take from
// the night who was there in each round and how many games were played; who played with whom is free, also in
// the history. They hold for plans that share sit-outs as fairly, bench as few people twice running
// and keep what people ask, as far as this one does: somebody who was put in may have met whom not to.
// Otherwise the rotation should pass [Audit]; of an invalid one nothing is promised but that Certify
// returns.
//
// Each value also says how much of its gap lies in the history, which nothing that follows can mend.
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
		for _, k := range judge.Kinds() {
			if k.Rests {
				*k.At(&whole) = *k.At(&c)
			}
		}
		return whole
	}
	played := len(p.History)
	p = bound.Kept(p, rounds)
	c := certifyAfter(p, rounds, 0)
	if played > 0 && played < len(rounds) {
		given := certifyAfter(p, rounds, played)
		for _, k := range judge.Kinds() {
			k.At(&c).After(*k.At(&given))
		}
	}
	return c
}

// certifyAfter measures the rounds of a night beside what no rotation can be below that begins with so many of them.
func certifyAfter(p Problem, rounds []Round, played int) Certificate {
	p.History, p.Rounds = rounds[:played:played], len(rounds)-played
	n := night.New(&p)
	for r, round := range rounds {
		n.Here[r] = n.Distinct(round.Named())
	}
	return judge.Rotation(n, rounds[played:]).Certificate()
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
	return judge.Games(n, rounds).Certificate()
}
