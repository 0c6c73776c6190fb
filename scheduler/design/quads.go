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

// QuadsWithRest returns rounds for people who are one to three more than tables of four hold: all
// those tables are filled, the others sit out, nobody meets twice and nobody sits out twice. There
// are as many rounds as this catalogue can make: for 29, 33, 41, 45 and 53 people ⌊(people-1)/3⌋,
// the most that can be, for most others one or two fewer. ok is false for fewer than five people and
// for numbers divisible by 4.
func QuadsWithRest(people int) (rounds [][]Table, ok bool) {
	if people < 5 || people%4 == 0 {
		return nil, false
	}
	if s, ok := find(restRecipes, people); ok {
		return s.Rounds(), true
	}
	full, _ := Quads(people / 4 * 4)
	for r := len(full); r > 1; r-- {
		if rounds, ok := withGuests(full[:r], people/4*4, people%4); ok {
			return rounds, true
		}
	}
	return full[:1], true
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
