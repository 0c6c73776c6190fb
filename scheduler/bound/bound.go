package bound

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

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

// Bounds works out what no plan in the scope can go below.
func (s *Scope) Bounds() measure.PairSums {
	var b measure.PairSums
	partner := make([]curve, s.n.People)
	repeat := make([]curve, s.n.People)
	oppose := make([]curve, s.n.People)
	meet := make([]curve, s.n.People)
	for i := range night.Player(s.n.People) {
		low, high := s.Low[i], s.High[i]
		d := s.partnerDemand(i)
		partner[i] = d.curve(low, high, (*pours).pour)
		repeat[i] = d.curve(low, high, (*pours).repeats)
		oppose[i] = s.sum(i, s.opponentDemands(i))
		meet[i] = s.sum(i, s.meetingDemands(i))
	}
	old := measure.SumPairs(s.past, s.n.People)
	b.Partners = old.Partners + halved(s.share(partner))
	b.Repeats = old.Repeats + halved(s.share(repeat))
	b.Opponents = old.Opponents + halved(s.share(oppose))
	b.Meetings = old.Meetings + halved(s.share(meet))
	common := s.commonSeats()
	cells, crowds := s.overlap(common), s.phases(common)
	b.Opponents = max(b.Opponents, old.Opponents+max(cells.Opponents, crowds.Opponents))
	b.Meetings = max(b.Meetings, old.Meetings+max(cells.Meetings, crowds.Meetings, s.chains(common), s.published(common)))
	return b
}

// sum adds the curves of several demands of a person.
func (s *Scope) sum(i night.Player, demands []demand) curve {
	total := curve{steps: make([]int, s.High[i]-s.Low[i])}
	for _, d := range demands {
		total = total.plus(d.curve(s.Low[i], s.High[i], (*pours).pour))
	}
	return total
}

// share distributes the games of the free rounds over the people's curves. On mixed nights each group
// has half of the seats.
func (s *Scope) share(curves []curve) int {
	seats := 0
	for r := range s.games {
		seats += s.seats(r)
	}
	if s.n.Side == nil {
		return s.shareAmong(curves, seats, -1)
	}
	return s.shareAmong(curves, seats/2, 0) + s.shareAmong(curves, seats/2, 1)
}

func (s *Scope) shareAmong(curves []curve, seats, side int) int {
	var own []curve
	for i, c := range curves {
		if side < 0 || s.n.Side[i] == side {
			own = append(own, c)
			seats -= s.Low[i]
		}
	}
	return least(own, seats)
}

// partnerDemand is one partner a game. Partners asked for a number of times come first.
func (s *Scope) partnerDemand(i night.Player) demand {
	d := s.demand(1, i, s.mayPartner, func(t night.Tally) int { return int(t.P) })
	if w := s.n.Wishes; w != nil {
		for j := range night.Player(s.n.People) {
			if t := int(w.Times[w.At(i, j)]); t > 0 && s.mayPartner(i, j) {
				past := int(s.past[w.At(i, j)].P)
				if s.got != nil {
					t = min(t, int(s.got[w.At(i, j)].P)) // an asked partnership that is missing saves its repeats
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
func (s *Scope) opponentDemands(i night.Player) []demand {
	height := func(t night.Tally) int { return int(t.O) }
	if s.n.Side == nil {
		return []demand{s.demand(2, i, s.mayOppose, height)}
	}
	return []demand{
		s.demand(1, i, s.beside(true), height),
		s.demand(1, i, s.beside(false), height),
	}
}

// meetingDemands are three meetings a game; on mixed nights one with the own group and two with the
// other; a partner who is always there takes one.
func (s *Scope) meetingDemands(i night.Player) []demand {
	height := func(t night.Tally) int { return int(t.P) + int(t.O) }
	switch {
	case s.n.Side != nil:
		return []demand{
			s.demand(1, i, s.beside(true), height),
			s.demand(2, i, s.beside(false), height),
		}
	case s.always[i]:
		m := s.n.Mate[i]
		return []demand{
			s.demand(1, i, func(_, j night.Player) bool { return j == m }, height),
			s.demand(2, i, func(i, j night.Player) bool { return j != m && s.mayMeet(i, j) }, height),
		}
	}
	return []demand{s.demand(3, i, s.mayMeet, height)}
}

// inseparable tells whether the person's fixed partner is there in all of the person's free rounds.
func (s *Scope) inseparable(i night.Player) bool {
	m := s.n.Mate[i]
	return m != night.Nobody && s.common(i, m) == s.common(i, i)
}

// beside returns who of the own or the other group may be an opponent.
func (s *Scope) beside(own bool) func(i, j night.Player) bool {
	return func(i, j night.Player) bool {
		return s.mayOppose(i, j) && (s.n.Side[i] == s.n.Side[j]) == own
	}
}

// halves tells whether the night falls into two halves who never meet: exactly twice as many
// people as seats, and nobody benched twice running, make the same people play every second round.
func (s *Scope) halves() bool {
	if !s.Rests || !s.n.Fresh() || s.n.Side != nil || len(s.games) == 0 {
		return false
	}
	for r := range s.games {
		if len(s.here[r]) != s.n.People || 2*s.seats(r) != s.n.People {
			return false
		}
	}
	return true
}

// demand collects the people whom i may meet in some way in the free rounds, and how often they met
// in that way.
func (s *Scope) demand(each int, i night.Player, may func(i, j night.Player) bool, height func(night.Tally) int) demand {
	d := demand{each: each, heights: make([]int, 0, s.n.People), limits: make([]int, 0, s.n.People)}
	for j := range night.Player(s.n.People) {
		if !may(i, j) {
			continue
		}
		if limit := s.common(i, j); limit > 0 {
			d.heights = append(d.heights, height(s.past[int(i)*s.n.People+int(j)]))
			d.limits = append(d.limits, limit)
		}
	}
	if s.halves() && len(d.limits) >= s.n.People/2 {
		d.heights, d.limits = d.heights[:s.n.People/2-1], d.limits[:s.n.People/2-1]
	}
	return d
}
