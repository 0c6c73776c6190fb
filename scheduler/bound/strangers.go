package bound

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// Strangers counts the pairs who are there together, may meet, and never do; with games of no round those who
// played.
//
// It also returns how many there must be, where so many meetings at least are repeated, Σ C(m,2). A person with g games meets 3g others at most, on mixed nights g of the own group
// and 2g of the other, and with a partner who is always there 1+2g. Whoever is left over stays a stranger; games
// are shared out where they make the fewest, and each pair is counted from both sides. Besides, all games together make
// so many meetings, and of two people who meet m times m-1 meetings make nobody known who was not: that is C(m,2)·2/m,
// and m is no more than they met in fixed rounds and the games that either has in others. Who met in fixed rounds is
// known, and who has gone before meeting stays a stranger.
func (s *Scope) Strangers(m *measure.Counts, repeated int) measure.Value {
	var v measure.Value
	curves := make([]curve, s.n.People)
	pairs, most, meetings := 0, 1, 0
	for i := range night.Player(s.n.People) {
		for j := range i {
			past := s.past[int(i)*s.n.People+int(j)]
			meetings += int(past.P) + int(past.O)
			most = max(most, int(past.P)+int(past.O)+min(s.High[i], s.High[j]))
			pairs += night.One(s.couldMeet(i, j, m))
			if s.couldMeet(i, j, m) && m.Pair[int(i)*s.n.People+int(j)] == (night.Tally{}) {
				v.Value++
			}
		}
		curves[i] = s.unmet(i, m)
	}
	if !m.Singles {
		for _, g := range s.games {
			meetings += 6 * g
		}
		known := meetings - (2*repeated+most-1)/most
		v.Bound = min(v.Value, max(halved(s.share(curves)), pairs-known))
	}
	return v
}

// couldMeet tells whether two people are there together and may share a court.
func (s *Scope) couldMeet(i, j night.Player, m *measure.Counts) bool {
	return s.mayMeet(i, j) && (s.common(i, j) > 0 || s.wereTogether(i, j)) && (!s.Loose || m.Games[i] > 0 && m.Games[j] > 0)
}

// wereTogether tells whether two people were there in the same fixed round.
func (s *Scope) wereTogether(i, j night.Player) bool {
	for k, w := range s.was[i] {
		if w&s.was[j][k] != 0 {
			return true
		}
	}
	return false
}

// unmet is how many of those whom a person could meet are strangers at least, for each number of games.
func (s *Scope) unmet(i night.Player, m *measure.Counts) curve {
	var near, far, lost int // of the own group or the fixed partner, others, and who is not there any more
	for j := range night.Player(s.n.People) {
		switch {
		case !s.couldMeet(i, j, m) || s.past[int(i)*s.n.People+int(j)] != (night.Tally{}):
		case s.common(i, j) == 0:
			lost++
		case s.n.Side != nil && s.n.Side[i] == s.n.Side[j] || s.always[i] && s.n.Mate[i] == j:
			near++
		default:
			far++
		}
	}
	left := func(g int) int {
		switch {
		case s.n.Side != nil:
			return lost + max(0, near-g) + max(0, far-2*g)
		case s.always[i]:
			return lost + max(0, near-min(g, 1)) + max(0, far-2*g)
		case s.halves():
			return s.n.People/2 + max(0, near+far-s.n.People/2-3*g)
		}
		return lost + max(0, near+far-3*g)
	}
	c := curve{base: left(s.Low[i])}
	for g := s.Low[i]; g < s.High[i]; g++ {
		c.steps = append(c.steps, left(g+1)-left(g))
	}
	return c
}
