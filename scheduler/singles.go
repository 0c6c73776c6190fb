package scheduler

import (
	"cmp"
	"slices"
)

func sortByCourt(games []Game) {
	slices.SortStableFunc(games, func(a, b Game) int { return cmp.Compare(a.Court, b.Court) })
}

// addSingles lets two of those left over play singles in every round in which a court that suits them
// is free. With three left over, the one who sits out is the one who sat out least so far.
func (n *night) addSingles(rounds []Round) {
	outs := n.pastOuts()
	for r := range rounds {
		round := &rounds[r]
		slices.SortStableFunc(round.Out, func(i, j Player) int { return cmp.Compare(outs[j], outs[i]) })
		if g, ok := n.singles(n.first+r, *round); ok {
			round.Games = append(round.Games, g)
			sortByCourt(round.Games)
			round.Out = slices.DeleteFunc(round.Out, func(i Player) bool { return i == g.A[0] || i == g.B[0] })
		}
		for _, i := range round.Out {
			outs[i]++
		}
		slices.Sort(round.Out)
	}
}

// singles finds a game of singles for round r of the night: a free court, and the first two on the
// bench who may meet there. People who need a rest keep it.
func (n *night) singles(r int, round Round) (Game, bool) {
	if len(round.Out) > 3 || n.p.Format == Pairs || n.p.MaxRun > 0 {
		return Game{}, false
	}
	for _, c := range n.openCourts(r) {
		if slices.ContainsFunc(round.Games, func(g Game) bool { return g.Court == c }) {
			continue
		}
		for x, i := range round.Out {
			for _, j := range round.Out[x+1:] {
				if n.fits(i, c) && n.fits(j, c) && (n.wishes == nil || !n.wishes.apart[n.wishes.at(i, j)]) {
					return Game{c, Team{i, Nobody}, Team{j, Nobody}}, true
				}
			}
		}
	}
	return Game{}, false
}
