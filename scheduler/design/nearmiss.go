package design

// spousesNearly returns the nearest thing to spouse-avoiding mixed doubles for the numbers of couples
// for which there is none, or nil. Spouses never partner, every other man and woman partner once, and
// men oppose each other once:
//   - two and three couples cannot keep spouses off the same court; spouses oppose;
//   - with six couples spouses never meet and every other man and woman oppose once, but five pairs of
//     women oppose twice and five never. No idempotent Latin square of order 6 does better (all were
//     tried): ten pairs {L(i,j), L(j,i)} are the most that are distinct.
func spousesNearly(couples int) [][]Table {
	switch couples {
	case 2:
		return [][]Table{{{0, 3, 1, 2}}}
	case 3:
		return [][]Table{{{0, 4, 1, 3}}, {{1, 5, 2, 4}}, {{2, 3, 0, 5}}}
	case 6:
		return pack(gamesOf(latinSix))
	}
	return nil
}

// latinSix is the idempotent Latin square for six couples.
var latinSix = [][]int{
	{0, 2, 1, 4, 5, 3},
	{3, 1, 5, 0, 2, 4},
	{4, 3, 2, 5, 0, 1},
	{5, 4, 0, 3, 1, 2},
	{1, 5, 3, 2, 4, 0},
	{2, 0, 4, 1, 3, 5},
}

// gamesOf returns the games of a Latin square: man i and woman L(i,j) against man j and woman L(j,i).
func gamesOf(l [][]int) []Table {
	n := len(l)
	var games []Table
	for i := range n {
		for j := i + 1; j < n; j++ {
			games = append(games, Table{i, n + l[i][j], j, n + l[j][i]})
		}
	}
	return games
}
