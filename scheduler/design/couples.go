package design

// SpouseAvoiding returns mixed doubles for couples (man i is person i, his wife person couples+i):
// spouses never share a court, every other man and woman partner once and oppose once, and people
// of the same sex oppose exactly once. Seats 0 and 2 of a table are men, 1 and 3 women.
//
// Such a schedule is a self-orthogonal Latin square L with L(i,i) = i: the games are man i and woman
// L(i,j) against man j and woman L(j,i), and they exist for all numbers of couples from 4 but 6 (Brayton,
// Coppersmith & Hoffman, Bull. Amer. Math. Soc. 80 (1974) 116-118).
func SpouseAvoiding(couples int) (rounds [][]Table, ok bool) {
	if _, _, ok := primePower(couples); ok && couples >= 4 {
		return spousesByField(couples), true
	}
	return nil, false
}

// spousesByField uses L(i,j) = a·i + (1-a)·j over a field, a any element but 0, 1 and ½. The game of
// men i and j is played in the round i+j.
func spousesByField(q int) [][]Table {
	f := field(q)
	a := 2 % q
	for f.add(a, a) == f.one {
		a++
	}
	b := f.sub(f.one, a)
	rounds := make([][]Table, q)
	for i := range q {
		for j := i + 1; j < q; j++ {
			s := f.add(i, j)
			rounds[s] = append(rounds[s], Table{
				i, q + f.add(f.times(a, i), f.times(b, j)),
				j, q + f.add(f.times(a, j), f.times(b, i)),
			})
		}
	}
	if len(rounds[0]) == 0 { // even field: i+j is never 0
		return rounds[1:]
	}
	return rounds
}
