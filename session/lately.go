package session

import (
	"slices"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// remembered is how many nights before one count for who met whom; each counts half as much as the one after it.
const remembered = 6

// met is who was with whom on the nights before this one, for those of the draw, unless the night forgets.
func (d *draw) met() {
	if d.night.Settings.Forget {
		return
	}
	nights := d.club.Nights
	at := slices.IndexFunc(nights, func(n *Night) bool { return n.ID == d.night.ID })
	pairs := map[[2]scheduler.Player]*scheduler.Recent{}
	weight := scheduler.LastNight
	for i := at - 1; i >= 0 && at-i <= remembered; i-- {
		for k := range nights[i].Games {
			d.recall(pairs, &nights[i].Games[k], weight)
		}
		weight /= 2
	}
	for _, r := range pairs {
		d.problem.Lately = append(d.problem.Lately, *r)
	}
	slices.SortFunc(d.problem.Lately, func(a, b scheduler.Recent) int {
		if a.A != b.A {
			return int(a.A) - int(b.A)
		}
		return int(a.B) - int(b.B)
	})
}

// recall adds a game of a night before.
func (d *draw) recall(pairs map[[2]scheduler.Player]*scheduler.Recent, g *Game, weight int) {
	if g.Final == nil || g.Final.How() == scoring.Void || g.A[1] == "" {
		return
	}
	seats := [4]scheduler.Player{d.player(g.A[0]), d.player(g.A[1]), d.player(g.B[0]), d.player(g.B[1])}
	for x, i := range seats {
		for y, j := range seats[:x] {
			if i == scheduler.Nobody || j == scheduler.Nobody {
				continue
			}
			key := [2]scheduler.Player{min(i, j), max(i, j)}
			r := pairs[key]
			if r == nil {
				r = &scheduler.Recent{A: key[0], B: key[1]}
				pairs[key] = r
			}
			if x^y == 1 {
				r.Partners += weight
			} else {
				r.Opponents += weight
			}
		}
	}
}
