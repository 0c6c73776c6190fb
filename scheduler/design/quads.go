package design

// Quads returns rounds of tables of four, all people in each round, in which no two people meet
// twice; as many rounds as are known here. People must be divisible by 4; ok is false otherwise.
//
// Nobody can play more than ⌊(people-1)/3⌋ such rounds. That bound is reached for 4, 16, all from 24
// to 88 but 68 and 80, and for 96. For 20 people 5 rounds are the most (6 do not exist). For 8 and
// 12 there is one round: any second one repeats a meeting. From 100 people on there are at least
// people/12 rounds. Teams within a table are arbitrary, since whoever met has met once; a longer
// night goes on with the same tables split in their other two ways, which is what [Best] does.
func Quads(people int) (rounds [][]Table, ok bool) {
	if people < 4 || people%4 != 0 {
		return nil, false
	}
	if classes, ok := blockClasses(people); ok {
		return classes, true
	}
	if s, ok := find(quadRecipes, people); ok {
		return s.Rounds(), true
	}
	return quadsByTeams(people), true
}

// quadsByTeams splits the people into four teams: a resolvable transversal design lets each meet
// everybody of the other teams, and afterwards the teams play among themselves.
func quadsByTeams(people int) (rounds [][]Table) {
	m := people / 4
	classes, ok := transversal(4, m)
	if !ok {
		classes = progressions(m)
	}
	for _, class := range classes {
		rounds = append(rounds, playBlocks(class, []Table{{0, 1, 2, 3}}))
	}
	if !ok {
		return rounds
	}
	within, _ := Quads(m)
	for _, round := range within {
		rounds = append(rounds, playTeams(4, m, round))
	}
	return rounds
}
