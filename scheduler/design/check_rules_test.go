package design

import "fmt"

// checkWhist returns nil if the rounds are a whist tournament for v people, as [Whist] promises it,
// and otherwise an error that names the first fault.
func checkWhist(v int, rounds [][]Table) error {
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

// checkQuads returns nil if all tables of four that the people fill are filled in each round, no two
// people meet twice, and numbers of games differ by one at most, as [Quads] and quadsWithRest
// promise. Otherwise the error names the first fault.
func checkQuads(people int, rounds [][]Table) error {
	if people < 4 {
		return fmt.Errorf("%d people do not fill a table of four", people)
	}
	if err := checkRounds(people, people/4, rounds); err != nil {
		return err
	}
	c := tally(people, rounds)
	if err := checkSpread(c.games); err != nil {
		return err
	}
	for p := range people {
		for q := range p {
			if n := c.partners[p*people+q] + c.opponents[p*people+q]; n > 1 {
				return fmt.Errorf("persons %d and %d meet %d times", q, p, n)
			}
		}
	}
	return nil
}

// checkSpouseAvoiding returns nil if the rounds are what [SpouseAvoiding] promises for this number
// of couples, and otherwise an error that names the first fault. How many rounds the games take is
// not judged.
func checkSpouseAvoiding(couples int, rounds [][]Table) error {
	people := 2 * couples
	if err := checkRounds(people, -1, rounds); err != nil {
		return err
	}
	if err := checkSeats(couples, rounds); err != nil {
		return err
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

// checkMixed returns nil if the rounds are what [MixedRotation] promises: one of each group in every
// team, as many games a round as the smaller group fills, nobody partners anybody twice, and the
// numbers of games differ by at most one within each group. Otherwise the error names the first fault.
func checkMixed(men, women int, rounds [][]Table) error {
	people := men + women
	if want := max(men, women); len(rounds) != want {
		return fmt.Errorf("%d rounds, but a rotation of %d men and %d women has %d", len(rounds), men, women, want)
	}
	if err := checkRounds(people, min(men, women)/2, rounds); err != nil {
		return err
	}
	if err := checkSeats(men, rounds); err != nil {
		return err
	}
	c := tally(people, rounds)
	for _, group := range [][]int{c.games[:men], c.games[men:]} {
		if err := checkSpread(group); err != nil {
			return err
		}
	}
	for p := range people {
		for q := range p {
			if n := c.partners[p*people+q]; n > 1 {
				return fmt.Errorf("persons %d and %d partner %d times", q, p, n)
			}
		}
	}
	return nil
}

// checkSeats returns an error if a table does not seat a man, a woman, a man and a woman, men being
// the people below the given number.
func checkSeats(men int, rounds [][]Table) error {
	for r, round := range rounds {
		for _, t := range round {
			if t[0] >= men || t[2] >= men || t[1] < men || t[3] < men {
				return fmt.Errorf("round %d: table %v does not seat man, woman, man, woman", r+1, t)
			}
		}
	}
	return nil
}
