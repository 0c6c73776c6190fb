package design

import (
	"fmt"
	"slices"
)

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

// checkSpread returns an error if numbers of games differ by more than one.
func checkSpread(games []int) error {
	if least, most := slices.Min(games), slices.Max(games); most > least+1 {
		return fmt.Errorf("one person plays %d games and another of the same group %d", least, most)
	}
	return nil
}
