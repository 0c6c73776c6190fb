package bound

import "club/quadrille/scheduler/night"

// sixteen is 1 if sixteen people play on three courts in six rounds, each of them four games or five: these cannot be
// without a repeated meeting. By hand:
//
// Suppose nobody meets twice. Of 72 seats eight people have five (call them the full) and eight four (the short). The
// full meet all others, the short all but three, who are short too: the pairs of them who never meet are a graph G in
// which each of the eight has three neighbours.
//
// Let n(h) be the games with h full people. No game has four: it would share somebody with 16 others, and of 17 only one
// would be left for the two beside it in its round. In all a game with h full people shares somebody with
// 4h + 3(4-h) = 12+h others and nobody with 5-h. There are 18 games; the full have 40 seats, and each of their 28
// pairs meets once: n0+n1+n2+n3 = 18, n1+2·n2+3·n3 = 40, n2+3·n3 = 28. So n0 = 6-n3 and n1 = 3·n3-16, and
// that leaves n3 = 6 alone, with n0 = 0, n1 = 2 and n2 = 10.
//
// Take one of the six games b with three full people, and its short person l. Whoever else is full meets all four of b,
// each in another game, and so has one game that shares nobody with b. There are just two such games, those beside b in
// its round: all full people play in it, and it is made of two games with three of them, b and b', and one game d with
// two. Whoever is short, not in b, and meets l meets all of b, in four games, and is not in the round. So the
// short people of the round other than l are the three whom l never meets. By the same for b' and its short person
// l', both l and l' neighbour each other in G and the two short people m and m' of d, who meet in d and are no
// neighbours.
//
// The six games make three such rounds, and each shows four people of G of whom only m and m' are no neighbours. Two
// rounds never show the same four, since m and m' would meet in both, and no person is in two such fours: l and
// l' have their three neighbours among the four, and m has l and l' of its three, so that in another four with m,
// where two neighbours of m would be those with three, one of them would be l or l', and the four the same. But three
// fours of eight people must share somebody. TestSixteen tries all graphs and numbers of games.
func (s *Scope) sixteen() int {
	if s.n.People != 16 || len(s.games) != 6 || !s.n.Fresh() {
		return 0
	}
	for r, games := range s.games {
		if games != 3 || s.extra[r] > 0 || len(s.here[r]) != 16 {
			return 0
		}
	}
	for i := range night.Player(16) {
		if s.Low[i] < 4 || s.High[i] > 5 {
			return 0
		}
	}
	return 1
}
