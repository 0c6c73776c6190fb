package lineup

import (
	"cmp"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// Lineup is who plays where in one round.
type Lineup struct {
	Courts []night.Court
	Units  [][]Unit // on each court
	Out    []night.Player
}

// Draw fills round r with at most so many games, fewer if walls, couples or rests leave a court
// without four people.
func Draw(n *night.Night, r, most int, l *Record, d *dice.Dice) Lineup {
	units := queue(n, r, l, d)
	if k := n.Problem.MaxRun; k > 0 {
		units = slices.DeleteFunc(units, func(u Unit) bool { return u.run >= k })
	}
	courts, most := choose(n, r, most)
	return fill(n, courts, most, units).lineup(n.Here[r])
}

// fill seats units on as many of the courts as it can but at most so many: on all, else on all but one,
// and so on, at last on any single one.
func fill(n *night.Night, courts []night.Court, most int, units []Unit) *filling {
	all := courts
	f := newFilling(n, courts, units)
	if f.fill() && len(courts) <= most {
		return f
	}
	for len(courts) > 1 && most > 0 {
		for c := len(courts) - 1; c >= 0 && len(courts) <= most+1; c-- {
			if g := newFilling(n, without(courts, c), units); g.fill() {
				return g
			}
			if n.Walls == nil {
				break // all courts are alike
			}
		}
		courts = without(courts, f.emptiest())
		f = newFilling(n, courts, units)
		f.fill()
	}
	for _, c := range all[:len(all)*night.One(most > 0)] {
		if g := newFilling(n, []night.Court{c}, units); g.fill() {
			return g
		}
	}
	return newFilling(n, nil, units)
}

func without(courts []night.Court, c int) []night.Court {
	return slices.Delete(slices.Clone(courts), c, c+1)
}

// choose picks the courts to use and says how many at most. Where walls stand it returns all that could
// be used, those first on which most of the people present may play: dropping what stays empty finds
// more games than guessing.
func choose(n *night.Night, r, most int) ([]night.Court, int) {
	open := n.OpenCourts(r)
	games := min(most, n.Restful(r, n.MostGames(r, len(open))))
	if n.Walls == nil {
		return open[:games], games
	}
	count := make([]int, len(n.Problem.Courts))
	for _, c := range open {
		for _, i := range n.Here[r] {
			if n.MayPlayOn(i, c) {
				count[c]++
			}
		}
	}
	open = slices.DeleteFunc(open, func(c night.Court) bool { return count[c] < 4 })
	slices.SortStableFunc(open, func(a, b night.Court) int { return cmp.Compare(count[b], count[a]) })
	return open, games
}

// lineup reads off who plays where.
func (f *filling) lineup(here []night.Player) Lineup {
	var l Lineup
	plays := make([]bool, f.n.People)
	for c, held := range f.held {
		var units []Unit
		for _, u := range held {
			units = append(units, f.units[u])
			plays[f.units[u].A] = true
			if b := f.units[u].B; b != night.Nobody {
				plays[b] = true
			}
		}
		l.Courts = append(l.Courts, f.courts[c])
		l.Units = append(l.Units, units)
	}
	for _, i := range here {
		if !plays[i] {
			l.Out = append(l.Out, i)
		}
	}
	return l
}
