package design

// MixedRotation returns a rotation for two groups of any sizes of at least two: men 0..men-1 and
// women men..men+women-1, one of each in every team (men on seats 0 and 2), as many games a round as
// the smaller group fills. It has as many rounds as the larger group has people, and nobody partners
// anybody twice.
//
// In each round every man of the smaller group has his own offset in the larger one, and all move on
// by one from round to round, so everybody partners somebody new and the larger group sits out in
// turn. Who opposes whom is taken from the rounds of a circle tournament of the smaller group, for
// each round the one that repeats the fewest opponents of all others. For equal groups that a
// spouse-avoiding design fits, that design is used, and a last round for the "spouses" if their
// number is even. ok is false for groups of less than two.
func MixedRotation(men, women int) (rounds [][]Table, ok bool) {
	if men < 2 || women < 2 {
		return nil, false
	}
	if men > women { // build it the other way round and change names and seats
		rounds, _ = MixedRotation(women, men)
		for r, round := range rounds {
			rounds[r] = relabelRound(round, func(p int) int { return (p + men) % (men + women) })
			for i, t := range rounds[r] {
				rounds[r][i] = Table{t[1], t[0], t[3], t[2]}
			}
		}
		return rounds, true
	}
	if men == women {
		if rounds, ok := SpouseAvoiding(men); ok && len(rounds) == men-1+men%2 {
			if men%2 == 0 {
				rounds = append(rounds, spousesTogether(men))
			}
			return rounds, true
		}
	}
	m := newMixer(men, women)
	m.improve()
	return m.rounds(), true
}

// spousesTogether is the round of an even number of couples in which spouses partner.
func spousesTogether(couples int) (round []Table) {
	for i := 0; i < couples; i += 2 {
		round = append(round, Table{i, couples + i, i + 1, couples + i + 1})
	}
	return round
}
