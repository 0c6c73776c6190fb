package design

// Quads returns rounds of blocks of four, all people in each round, in which no two people meet
// twice; as many rounds as are known here. People must be divisible by 4; ok is false otherwise.
func Quads(people int) (rounds [][]Table, ok bool) {
	if people < 4 || people%4 != 0 {
		return nil, false
	}
	if classes, ok := blockClasses(people); ok {
		return classes, true
	}
	m := people / 4
	if classes, ok := transversal(4, m); ok {
		round := []Table{{0, 1, 2, 3}}
		for _, class := range classes {
			rounds = append(rounds, playBlocks(class, round))
		}
		return rounds, true
	}
	var round []Table
	for i := range m {
		round = append(round, Table{4 * i, 4*i + 1, 4*i + 2, 4*i + 3})
	}
	return [][]Table{round}, true
}
