package search

import (
	"cmp"
	"slices"

	"club/quadrille/scheduler/night"
)

func sortByCourt(games []night.Game) {
	slices.SortStableFunc(games, func(a, b night.Game) int { return cmp.Compare(a.Court, b.Court) })
}

// addSingles lets two of those left over play singles in every round in which a court that suits them
// is free. With three left over, the one who sits out is the one who sat out least so far.
func addSingles(n *night.Night, rounds []night.Round) {
	outs := n.PastOuts()
	for r := range rounds {
		round := &rounds[r]
		slices.SortStableFunc(round.Out, func(i, j night.Player) int { return cmp.Compare(outs[j], outs[i]) })
		if g, ok := singles(n, n.First+r, *round); ok {
			round.Games = append(round.Games, g)
			sortByCourt(round.Games)
			round.Out = slices.DeleteFunc(round.Out, func(i night.Player) bool { return i == g.A[0] || i == g.B[0] })
		}
		for _, i := range round.Out {
			outs[i]++
		}
		slices.Sort(round.Out)
	}
}

// singles finds a game of singles for round r of the night: a free court, and the first two on the
// bench who may meet there. People who need a rest keep it, and so does who was pinned to sit out.
func singles(n *night.Night, r int, round night.Round) (night.Game, bool) {
	if len(round.Out) > 3 || n.Problem.Format == night.Pairs || n.Problem.MaxRun > 0 {
		return night.Game{}, false
	}
	bench := slices.DeleteFunc(slices.Clone(round.Out), func(i night.Player) bool {
		return slices.Contains(n.Problem.Pins, night.SitsOut(r, i))
	})
	for _, c := range n.OpenCourts(r) {
		if slices.ContainsFunc(round.Games, func(g night.Game) bool { return g.Court == c }) {
			continue
		}
		for x, i := range bench {
			for _, j := range bench[x+1:] {
				if n.MayPlayOn(i, c) && n.MayPlayOn(j, c) && (n.Wishes == nil || !n.Wishes.Apart[n.Wishes.At(i, j)]) {
					return night.Game{Court: c, A: night.Team{i, night.Nobody}, B: night.Team{j, night.Nobody}}, true
				}
			}
		}
	}
	return night.Game{}, false
}
