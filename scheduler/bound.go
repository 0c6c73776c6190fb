package scheduler

// Bounds hold for every plan of the same games in the same rounds among the same people that is as
// fair in sitting out and keeps what people ask. Each argument is short:
//
//   - A person with g games has g partners, 2g opponents, 3g meetings. However they are spread over
//     the people who can be met, Σ C(x,2) is least when they are spread evenly (convexity). Summed
//     over people every pair is counted twice.
//   - Two people meet twice when they share games of two rounds. If person i plays g games, Σ C(g,2)
//     over people counts who is common to two games of different rounds; a pair of games with x
//     common people holds C(x,2) repeated meetings. Spread evenly over all pairs of games this is
//     least; see overlap.go, and chain.go. With x common people at least x-2 pairs oppose in both games.
//   - However a set of people is spread over the games of a round, some of them meet. If they must play
//     together in many rounds, their pairs are soon used up; see crowd.go.
//
// Published results are added where the arguments stop short; see known.go.

// pairBounds are lower bounds for what the pairs of a night cost.
type pairBounds struct {
	repeats, partners, opponents, meetings int
}

// bounds works out what no plan in the scope can go below.
func (s *scope) bounds() pairBounds {
	var b pairBounds
	partner := make([]curve, s.n.people)
	repeat := make([]curve, s.n.people)
	oppose := make([]curve, s.n.people)
	meet := make([]curve, s.n.people)
	for i := range Player(s.n.people) {
		low, high := s.low[i], s.high[i]
		d := s.partnerDemand(i)
		partner[i] = d.curve(low, high, (*pours).pour)
		repeat[i] = d.curve(low, high, (*pours).repeats)
		oppose[i] = s.sum(i, s.opponentDemands(i))
		meet[i] = s.sum(i, s.meetingDemands(i))
	}
	old := s.settled()
	b.partners = old.partners + halved(s.share(partner))
	b.repeats = old.repeats + halved(s.share(repeat))
	b.opponents = old.opponents + halved(s.share(oppose))
	b.meetings = old.meetings + halved(s.share(meet))
	common := s.commonSeats()
	cells, crowds := s.overlap(common), s.phases(common)
	b.opponents = max(b.opponents, old.opponents+max(cells.opponents, crowds.opponents))
	b.meetings = max(b.meetings, old.meetings+max(cells.meetings, crowds.meetings, s.chains(common), s.published(common)))
	return b
}

// sum adds the curves of several demands of a person.
func (s *scope) sum(i Player, demands []demand) curve {
	total := curve{steps: make([]int, s.high[i]-s.low[i])}
	for _, d := range demands {
		total = total.plus(d.curve(s.low[i], s.high[i], (*pours).pour))
	}
	return total
}

// share distributes the games of the free rounds over the people's curves. On mixed nights each group
// has half of the seats.
func (s *scope) share(curves []curve) int {
	seats := 0
	for r := range s.games {
		seats += s.seats(r)
	}
	if s.n.side == nil {
		return s.shareAmong(curves, seats, -1)
	}
	return s.shareAmong(curves, seats/2, 0) + s.shareAmong(curves, seats/2, 1)
}

func (s *scope) shareAmong(curves []curve, seats, side int) int {
	var own []curve
	for i, c := range curves {
		if side < 0 || s.n.side[i] == side {
			own = append(own, c)
			seats -= s.low[i]
		}
	}
	return least(own, seats)
}

// settled is what the fixed rounds cost by themselves.
func (s *scope) settled() pairBounds {
	var b pairBounds
	for i := range s.n.people {
		for j := range i {
			t := s.past[i*s.n.people+j]
			p, o := int(t.p), int(t.o)
			b.repeats += max(0, p-1)
			b.partners += pairsOf(p)
			b.opponents += pairsOf(o)
			b.meetings += pairsOf(p + o)
		}
	}
	return b
}

// partnerDemand is one partner a game. Partners asked for a number of times come first.
func (s *scope) partnerDemand(i Player) demand {
	d := s.demand(1, i, s.mayPartner, func(t tally) int { return int(t.p) })
	if w := s.n.wishes; w != nil {
		for j := range Player(s.n.people) {
			if t := int(w.times[w.at(i, j)]); t > 0 && s.mayPartner(i, j) {
				past := int(s.past[w.at(i, j)].p)
				if s.got != nil {
					t = min(t, int(s.got[w.at(i, j)].p)) // an asked partnership that is missing saves its repeats
				}
				if first := min(t-past, s.common(i, j)); first > 0 {
					d.first = append(d.first, [2]int{past, first})
				}
			}
		}
	}
	return d
}

// opponentDemands are two opponents a game, on mixed nights one of each group.
func (s *scope) opponentDemands(i Player) []demand {
	height := func(t tally) int { return int(t.o) }
	if s.n.side == nil {
		return []demand{s.demand(2, i, s.mayOppose, height)}
	}
	return []demand{
		s.demand(1, i, s.beside(true), height),
		s.demand(1, i, s.beside(false), height),
	}
}

// meetingDemands are three meetings a game; on mixed nights one with the own group and two with the
// other; a partner who is always there takes one.
func (s *scope) meetingDemands(i Player) []demand {
	height := func(t tally) int { return int(t.p) + int(t.o) }
	switch {
	case s.n.side != nil:
		return []demand{
			s.demand(1, i, s.beside(true), height),
			s.demand(2, i, s.beside(false), height),
		}
	case s.always[i]:
		m := s.n.mate[i]
		return []demand{
			s.demand(1, i, func(_, j Player) bool { return j == m }, height),
			s.demand(2, i, func(i, j Player) bool { return j != m && s.mayMeet(i, j) }, height),
		}
	}
	return []demand{s.demand(3, i, s.mayMeet, height)}
}

// inseparable tells whether the person's fixed partner is there in all of the person's free rounds.
func (s *scope) inseparable(i Player) bool {
	m := s.n.mate[i]
	return m != Nobody && s.common(i, m) == s.common(i, i)
}

// beside returns who of the own or the other group may be an opponent.
func (s *scope) beside(own bool) func(i, j Player) bool {
	return func(i, j Player) bool {
		return s.mayOppose(i, j) && (s.n.side[i] == s.n.side[j]) == own
	}
}

// halves tells whether the night falls into two halves who never meet: exactly twice as many
// people as seats, and nobody benched twice running, make the same people play every second round.
func (s *scope) halves() bool {
	if !s.rests || !s.n.fresh() || s.n.side != nil || len(s.games) == 0 {
		return false
	}
	for r := range s.games {
		if len(s.here[r]) != s.n.people || 2*s.seats(r) != s.n.people {
			return false
		}
	}
	return true
}

// demand collects the people whom i may meet in some way in the free rounds, and how often they met
// in that way.
func (s *scope) demand(each int, i Player, may func(i, j Player) bool, height func(tally) int) demand {
	d := demand{each: each}
	for j := range Player(s.n.people) {
		if !may(i, j) {
			continue
		}
		if limit := s.common(i, j); limit > 0 {
			d.heights = append(d.heights, height(s.past[int(i)*s.n.people+int(j)]))
			d.limits = append(d.limits, limit)
		}
	}
	if s.halves() && len(d.limits) >= s.n.people/2 {
		d.heights, d.limits = d.heights[:s.n.people/2-1], d.limits[:s.n.people/2-1]
	}
	return d
}
