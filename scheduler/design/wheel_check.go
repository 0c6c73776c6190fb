package design

import "fmt"

// CheckWheel returns how many meetings repeat, Σ C(m,2) over the pairs of people who meet m times, if the
// rounds are what [Wheel] promises for so many people and tables, and otherwise an error that names the
// first fault. If two rounds have no seats for all, only as many people as must may sit out twice running.
func CheckWheel(people, tables int, rounds [][]Table) (meetings int, err error) {
	if err := checkRounds(people, tables, rounds); err != nil {
		return 0, err
	}
	c := tally(people, rounds)
	if err := checkSpread(c.games); err != nil {
		return 0, err
	}
	must := max(0, people-2*4*tables) * max(0, len(rounds)-1)
	if twice := benchedTwice(people, rounds); twice > must {
		return 0, fmt.Errorf("%d times somebody sits out twice running, not %d", twice, must)
	}
	for p := range people {
		for q := range p {
			partners := c.partners[p*people+q]
			if partners > 1 {
				return 0, fmt.Errorf("persons %d and %d partner %d times", q, p, partners)
			}
			m := partners + c.opponents[p*people+q]
			meetings += m * (m - 1) / 2
		}
	}
	return meetings, nil
}

// benchedTwice counts how often somebody is at no table in two rounds running.
func benchedTwice(people int, rounds [][]Table) (count int) {
	last := make([]int, people) // the last round played, from 1
	for r, round := range rounds {
		for _, t := range round {
			for _, p := range t {
				last[p] = r + 1
			}
		}
		for p := range people {
			if r > 0 && last[p] < r {
				count++
			}
		}
	}
	return count
}
