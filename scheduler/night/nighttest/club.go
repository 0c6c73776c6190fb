package nighttest

import (
	"fmt"

	"club/quadrille/scheduler/night"
)

// Club is a plain night: everybody there all the time, nothing asked.
func Club(people, courts, rounds int) night.Problem {
	p := night.Problem{Rounds: rounds, Seed: 1}
	for i := range people {
		p.People = append(p.People, night.Person{Name: fmt.Sprintf("P%02d", i+1)})
	}
	for c := range courts {
		p.Courts = append(p.Courts, night.CourtSpec{Name: fmt.Sprint(c + 1)})
	}
	return p
}

// Leveled is a plain night of people whose levels go from 2.5 to 4.5 in equal steps.
func Leveled(people, courts, rounds int) night.Problem {
	p := Club(people, courts, rounds)
	for i := range p.People {
		p.People[i].Level = 2.5 + 2*float64(i)/float64(people-1)
	}
	return p
}
