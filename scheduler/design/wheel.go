package design

import "strings"

// Wheel returns rounds for a night on which some of the people sit out each round, found by computer:
// few meetings repeat, nobody partners anybody twice while that is possible, sit-outs differ by one at most
// and nobody sits out twice running. Who sits at no table of a round sits out. ok is false where the
// catalogue has nothing for so many people, tables and rounds; then a plain search does as well.
//
// Such a plan turns into itself: its people sit on circles, and when everybody moves on by one, each
// round becomes another. So a few base rounds make all others, as the difference methods of design
// theory make blocks (Bose, Ann. Eugenics 9 (1939) 353-399).
func Wheel(people, tables, rounds int) (plan [][]Table, ok bool) {
	for _, w := range wheels {
		if w.people == people && w.tables == tables && w.rounds == rounds {
			return w.plan(), true
		}
	}
	return nil, false
}

// wheel is the base rounds of a plan that turns into itself.
type wheel struct {
	people, tables, rounds int
	meetings               int   // Σ C(m,2) over pairs who meet m times
	order                  int   // turns until everybody is back
	circles                []int // numbers of people on circles, all divisors of order
	bases                  []string
}

// names are the people of a base round, one letter each.
const names = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"

// plan turns the base rounds, all of them by one step before the next step, until there are enough
// rounds.
func (w wheel) plan() [][]Table {
	var bases [][]Table
	for _, b := range w.bases {
		var base []Table
		for _, four := range strings.Fields(b) {
			var t Table
			for seat := range t {
				t[seat] = strings.IndexByte(names, four[seat])
			}
			base = append(base, t)
		}
		bases = append(bases, base)
	}
	var plan [][]Table
	for r := range w.rounds {
		plan = append(plan, relabelRound(bases[r%len(bases)], func(p int) int { return w.turned(p, r/len(bases)) }))
	}
	return plan
}

// turned is who sits where person p sat after so many turns.
func (w wheel) turned(p, turns int) int {
	first := 0
	for _, size := range w.circles {
		if p < first+size {
			return first + (p-first+turns)%size
		}
		first += size
	}
	return p
}
