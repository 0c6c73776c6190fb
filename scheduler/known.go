package scheduler

// published bounds the meetings by results of the literature that the arguments of bound.go miss.
//
// Twenty people on five courts cannot play six rounds in which nobody meets twice: a resolvable
// packing RP(20,4) of six classes does not exist (Ge, Lam, Ling & Shen, Des. Codes Cryptogr. 35
// (2005) 287-302; OEIS A107431).
func (s *scope) published() int {
	if s.n.people != 20 || s.n.first > 0 || len(s.games) < 6 {
		return 0
	}
	for r, games := range s.games {
		if games != 5 || len(s.here[r]) != 20 {
			return 0
		}
	}
	return 1
}
