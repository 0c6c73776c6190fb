package scheduler

// Certificate is the fairness report of a night: for each measure the value that the rotation has
// and a bound that no rotation can go below which is as fair in sitting out and keeps what people
// ask. Gap 0 everywhere proves the rotation best.
type Certificate struct {
	PartnerRepeats   Value `json:"partner_repeats"`   // Σ max(0, p-1) over pairs who partnered p times
	PartnerEvenness  Value `json:"partner_evenness"`  // Σ C(p,2)
	OpponentEvenness Value `json:"opponent_evenness"` // Σ C(o,2) over pairs who opposed o times
	MeetingEvenness  Value `json:"meeting_evenness"`  // Σ C(p+o,2)
	SitoutSpread     Value `json:"sitout_spread"`     // most less fewest sit-outs of those present throughout
	BenchedTwice     Value `json:"benched_twice"`     // sit-outs right after a sit-out
	CourtSpread      Value `json:"court_spread"`      // Σ over people of most less fewest games on a court
}

// Value is one measure with its provable lower bound.
type Value struct {
	Value int `json:"value"`
	Bound int `json:"bound"`
}

// Gap is how far the value may be from the best possible.
func (v Value) Gap() int { return v.Value - v.Bound }

// Perfect tells whether every gap is 0.
func (c Certificate) Perfect() bool {
	for _, m := range c.Measures() {
		if m.Gap() != 0 {
			return false
		}
	}
	return true
}

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
		whole := CertifyGames(p, p.earlier())
		p.History, p.Met = nil, nil
		c := Certify(p, rounds)
		whole.SitoutSpread, whole.BenchedTwice = c.SitoutSpread, c.BenchedTwice
		return whole
	}
	p.History, p.Rounds = nil, len(rounds)
	p = kept(p, rounds)
	n := newNight(&p)
	for r, round := range rounds {
		n.here[r] = n.distinct(round.named())
	}
	m := measure(n, rounds)
	s := n.scopeOf(rounds, m)
	c := certificate(m, s)
	c.SitoutSpread = Value{m.spread(), s.spreadBound(m)}
	c.BenchedTwice = Value{m.twice, s.twiceBound()}
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
	p = kept(p, rounds)
	n := newNight(&p)
	for r := range n.here {
		n.here[r] = n.everybody()
	}
	m := measure(n, rounds)
	s := n.scopeOf(rounds, m)
	copy(s.low, m.games)
	copy(s.high, m.games)
	s.rests = false
	return certificate(m, s)
}

// certificate sets values beside bounds, but for sitting out.
func certificate(m *measures, s *scope) Certificate {
	b := s.bounds()
	return Certificate{
		PartnerRepeats:   Value{m.repeats, b.repeats},
		PartnerEvenness:  Value{m.partners, b.partners},
		OpponentEvenness: Value{m.opponents, b.opponents},
		MeetingEvenness:  Value{m.meetings, b.meetings},
		CourtSpread:      Value{m.courtSpread(), s.courtBound(m)},
	}
}
