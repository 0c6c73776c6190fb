package bound

// published bounds the meetings of the free rounds by results of the literature that the arguments of
// bound.go and crowd.go miss, and by arguments for single nights.
func (s *Scope) published(common [][]int) int {
	games, all := 0, make([]int, len(s.games))
	for r := range all {
		games += s.games[r]
		all[r] = r
	}
	return max(games-packing(s.n.People), s.fives(all, common), s.between(), s.sixteen())
}

// packing is how many games at most can be among so many people if no two of them meet twice. If there
// are more, each game beyond costs a repeated meeting at least: leaving one game out for each repeated
// meeting leaves none.
//
// Nobody can have more games than a third of the others make. The games that this allows are reached
// but for one if the people are 7 or 10 beyond a multiple of twelve, and but for one to three with
// six small numbers (Brouwer, J. Combin. Theory Ser. A 26 (1979) 278-297; as codes A(n,6,4): Brouwer,
// Shearer, Sloane & Smith, IEEE Trans. Inform. Theory 36 (1990) 1334-1380).
func packing(people int) int {
	games := people * ((people - 1) / 3) / 4
	switch people {
	case 9, 17:
		return games - 1
	case 8, 10, 11:
		return games - 2
	case 19:
		return games - 3
	}
	if people%12 == 7 || people%12 == 10 {
		games--
	}
	return games
}

// fives is 1 if the same twenty people play on five courts in six of the rounds or more, since these
// cannot be without a repeated meeting: a resolvable packing RP(20,4) of six classes does not exist
// (Ge, Lam, Ling & Shen, Des. Codes Cryptogr. 35 (2005) 287-302; OEIS A107431).
func (s *Scope) fives(rounds []int, common [][]int) int {
	same := 0
	for _, r := range rounds {
		if s.games[r] == 5 && common[rounds[0]][r] == 20 {
			same++
		}
	}
	if same < 6 {
		return 0
	}
	return 1
}
