package simulation

import (
	"slices"

	"club/quadrille/scheduler"
)

// Avoidable tells whether partners of a game that is called were partners before although others could play:
// now, another four of those who wait, with whoever of the game has waited longest, in teams that are all new; or
// after, such a four if the court waited for the people of the next game that is over, whichever that is, while three
// or more games go on. Whoever is passed over waits a game more. It knows of no wishes, which simulated nights do not
// have.
func Avoidable(r scheduler.Rolling, g scheduler.Game) (now, after bool) {
	partners := map[[2]scheduler.Player]bool{}
	team := func(t scheduler.Team) [2]scheduler.Player {
		return [2]scheduler.Player{min(t[0], t[1]), max(t[0], t[1])}
	}
	for _, p := range r.Played {
		partners[team(p.A)], partners[team(p.B)] = true, true
	}
	fresh := func(a, b, c, d scheduler.Player) bool {
		return !partners[team(scheduler.Team{a, b})] && !partners[team(scheduler.Team{c, d})]
	}
	if fresh(g.A[0], g.A[1], g.B[0], g.B[1]) {
		return false, false
	}
	longest := 0.0
	var wait []scheduler.Player
	for _, w := range r.Waiting {
		longest = max(longest, w.Waited)
		wait = append(wait, w.Player)
	}
	possible := func(people []scheduler.Player) bool {
		for _, w := range r.Waiting {
			if w.Waited < longest || !slices.Contains(g.Players(), w.Player) {
				continue
			}
			found := false
			for i, b := range people {
				for j, c := range people[:i] {
					for _, d := range people[:j] {
						a := w.Player
						if a != b && a != c && a != d && (fresh(a, b, c, d) || fresh(a, c, b, d) || fresh(a, d, b, c)) {
							found = true
						}
					}
				}
			}
			if !found {
				return false
			}
		}
		return true
	}
	if possible(wait) {
		return true, true
	}
	return false, len(r.Running) >= 3 && !slices.ContainsFunc(r.Running, func(next scheduler.Game) bool {
		return !possible(slices.Concat(wait, next.Players()))
	})
}
