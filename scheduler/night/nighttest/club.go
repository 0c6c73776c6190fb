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
