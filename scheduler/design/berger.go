package design

// Berger returns the round robin of n contestants in the order of the Berger tables (FIDE Handbook
// C.05, Annex 1), as pairs of home and away, contestants numbered from 0. For odd n the table for
// n+1 is used and the games of the last, absent contestant are left out: whoever would meet it has
// a bye. Fewer than two contestants give no rounds.
//
// Round r (from 1) of an even table: k = (r+1)/2 is at home to n when r is odd, n is at home to
// k = (n+r)/2 when r is even; the other games are k+d at home to k-d, d = 1..n/2-1, numbers taken
// modulo n-1 from 1.
func Berger(n int) [][][2]int {
	if n < 2 {
		return nil
	}
	even := n + n%2
	rounds := make([][][2]int, even-1)
	for r := range rounds {
		rounds[r] = bergerRound(n, even, r+1)
	}
	return rounds
}

// bergerRound returns round r, from 1, of the table for an even number, without the games of
// contestants from n up.
func bergerRound(n, even, r int) [][2]int {
	last, k := even-1, (r-1)/2
	home, away := k, last
	if r%2 == 0 {
		k = (even+r)/2 - 1
		home, away = last, k
	}
	var games [][2]int
	if home < n && away < n {
		games = append(games, [2]int{home, away})
	}
	for d := 1; d < even/2; d++ {
		games = append(games, [2]int{(k + d) % last, (k - d + last) % last})
	}
	return games
}
