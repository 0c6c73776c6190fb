package design

import "fmt"

// CheckWhist returns nil if the rounds are a whist tournament for v people, as [Whist] promises it,
// and otherwise an error that names the first fault.
func CheckWhist(v int, rounds [][]Table) error {
	if v < 4 || v%4 > 1 {
		return fmt.Errorf("no whist tournament for %d people exists: the number must be 0 or 1 modulo 4", v)
	}
	if want := v - 1 + v%4; len(rounds) != want {
		return fmt.Errorf("%d rounds, but a whist tournament for %d people has %d", len(rounds), v, want)
	}
	if err := checkRounds(v, v/4, rounds); err != nil {
		return err
	}
	c := tally(v, rounds)
	for p := range v {
		if want := v - 1; c.games[p] != want {
			return fmt.Errorf("person %d plays %d games, not %d", p, c.games[p], want)
		}
		for q := range p {
			if n := c.partners[p*v+q]; n != 1 {
				return fmt.Errorf("persons %d and %d partner %d times, not once", q, p, n)
			}
			if n := c.opponents[p*v+q]; n != 2 {
				return fmt.Errorf("persons %d and %d oppose %d times, not twice", q, p, n)
			}
		}
	}
	return nil
}

// CheckQuads returns nil if everybody plays in each round and no two people meet twice, and
// otherwise an error that names the first fault.
func CheckQuads(people int, rounds [][]Table) error {
	if people%4 != 0 {
		return fmt.Errorf("%d people do not fill tables of four", people)
	}
	if err := checkRounds(people, people/4, rounds); err != nil {
		return err
	}
	c := tally(people, rounds)
	for p := range people {
		for q := range p {
			if n := c.partners[p*people+q] + c.opponents[p*people+q]; n > 1 {
				return fmt.Errorf("persons %d and %d meet %d times", q, p, n)
			}
		}
	}
	return nil
}

// CheckSpouseAvoiding returns nil if the rounds are what [SpouseAvoiding] promises for this number
// of couples, and otherwise an error that names the first fault. How many rounds the games take is
// not judged.
func CheckSpouseAvoiding(couples int, rounds [][]Table) error {
	people := 2 * couples
	if err := checkRounds(people, -1, rounds); err != nil {
		return err
	}
	for r, round := range rounds {
		for _, t := range round {
			if t[0] >= couples || t[2] >= couples || t[1] < couples || t[3] < couples {
				return fmt.Errorf("round %d: table %v does not seat man, woman, man, woman", r+1, t)
			}
		}
	}
	c := tally(people, rounds)
	for p := range people {
		for q := range p {
			partners, opponents := 0, 1
			switch {
			case p-q == couples:
				opponents = 0
			case q < couples && p >= couples:
				partners = 1
			}
			if n := c.partners[p*people+q]; n != partners {
				return fmt.Errorf("persons %d and %d partner %d times, not %d", q, p, n, partners)
			}
			if n := c.opponents[p*people+q]; n != opponents {
				return fmt.Errorf("persons %d and %d oppose %d times, not %d", q, p, n, opponents)
			}
		}
	}
	return nil
}

// checkRounds returns an error if a round has another number of tables than wanted (-1: any), names
// somebody unknown, or seats somebody twice.
func checkRounds(people, tables int, rounds [][]Table) error {
	for r, round := range rounds {
		if tables >= 0 && len(round) != tables {
			return fmt.Errorf("round %d has %d tables, not %d", r+1, len(round), tables)
		}
		seated := make([]bool, people)
		for _, t := range round {
			for _, p := range t {
				if p < 0 || p >= people {
					return fmt.Errorf("round %d seats person %d, but people are 0 to %d", r+1, p, people-1)
				}
				if seated[p] {
					return fmt.Errorf("round %d seats person %d twice", r+1, p)
				}
				seated[p] = true
			}
		}
	}
	return nil
}

// counts tells how often each person plays and each two people, at p·people + q and q·people + p,
// partner and oppose.
type counts struct {
	games, partners, opponents []int
}

// tally counts the games, partners and opponents of a valid schedule.
func tally(people int, rounds [][]Table) counts {
	c := counts{make([]int, people), make([]int, people*people), make([]int, people*people)}
	for _, round := range rounds {
		for _, t := range round {
			for i, p := range t {
				c.games[p]++
				for j, q := range t {
					switch {
					case i == j:
					case i/2 == j/2:
						c.partners[p*people+q]++
					default:
						c.opponents[p*people+q]++
					}
				}
			}
		}
	}
	return c
}
