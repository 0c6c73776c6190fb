package design

import "slices"

// Wheel returns rounds found by computer for nights that no formula of the catalogue answers: few meetings
// repeat, nobody partners anybody twice, sit-outs differ by one at most, and nobody sits out twice running
// if two rounds have seats for all. Who is at no table of a round sits out. ok is false where the
// catalogue has nothing for exactly so many people, tables and rounds.
//
// Such a plan turns into itself: its people sit on circles, and when everybody moves on by one, each
// round becomes another. So a few base rounds make all others, as the difference methods of design
// theory make blocks (Bose, Ann. Eugenics 9 (1939) 353-399).
func Wheel(people, tables, rounds int) (plan [][]Table, ok bool) {
	for _, w := range stored() {
		if w.People == people && w.Tables == tables && w.Rounds == rounds {
			return w.Plan(), true
		}
	}
	return nil, false
}

// WheelStarter is a plan that turns into itself, given by the base rounds that make all others.
type WheelStarter struct {
	People, Tables, Rounds int
	Meetings               int       // Σ C(m,2) over the pairs of people, who meet m times
	Order                  int       // turns until everybody is back
	Circles                []int     // how many people sit on each circle, divisors of Order; the others never move
	Bases                  [][]Table // there are at least Rounds rounds after Order turns of them
}

// Wheels returns the starters behind [Wheel].
func Wheels() []WheelStarter { return slices.Clone(stored()) }

// Plan returns the rounds: the base rounds, then all of them turned by one step, then by two, until there
// are enough.
func (s WheelStarter) Plan() [][]Table {
	plan := make([][]Table, s.Rounds)
	for r := range plan {
		base, turns := s.Bases[r%len(s.Bases)], r/len(s.Bases)
		plan[r] = relabelRound(base, func(p int) int { return s.turned(p, turns) })
	}
	return plan
}

// turned is whom person p becomes by so many turns.
func (s WheelStarter) turned(p, turns int) int {
	first := 0
	for _, size := range s.Circles {
		if p < first+size {
			return first + (p-first+turns)%size
		}
		first += size
	}
	return p
}
