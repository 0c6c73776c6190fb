package session

import (
	"cmp"
	"slices"

	"club/quadrille/scoring"
)

// FaultCount counts faults by their kind.
type FaultCount [scoring.Other + 1]int

// Total is how many faults there are of all kinds.
func (c FaultCount) Total() int {
	total := 0
	for _, n := range c {
		total += n
	}
	return total
}

// PersonFaults are the faults that were noted of one person tonight.
type PersonFaults struct {
	Person PersonID
	Count  FaultCount
}

// Faults lists the faults of the night by the people who made them, most faults first and people of
// equal ones by identity. Untold counts those of which nobody noted who it was. Faults are only known of
// games that were scored rally by rally, as far as somebody noted them.
func (n *Night) Faults() (people []PersonFaults, untold FaultCount) {
	by := map[PersonID]*FaultCount{}
	for i := range n.Games {
		g := &n.Games[i]
		for j, r := range g.Rallies {
			if r.Fault == scoring.None || r.Fault > scoring.Other {
				continue
			}
			id := g.faulter(r, j+1)
			if id == "" {
				untold[r.Fault]++
				continue
			}
			if by[id] == nil {
				by[id] = &FaultCount{}
			}
			by[id][r.Fault]++
		}
	}
	for id, count := range by {
		people = append(people, PersonFaults{id, *count})
	}
	slices.SortFunc(people, func(a, b PersonFaults) int {
		return cmp.Or(b.Count.Total()-a.Count.Total(), cmp.Compare(a.Person, b.Person))
	})
	return people, untold
}

// faulter is who lost a rally by a fault, empty when nobody noted it. Rally counts from 1.
func (g *Game) faulter(r scoring.Rally, rally int) PersonID {
	a, b := g.lineup(rally)
	loser := a
	if r.Won == scoring.A {
		loser = b
	}
	if loser[1] == "" { // in singles the side says who it was
		return loser[0]
	}
	seat, ok := r.Player()
	if !ok {
		return ""
	}
	return loser[seat.Index]
}
