package search

import (
	"cmp"
	"slices"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// splitTries is how often a design is split by lot.
const splitTries = 12

// fromSplit makes a board for a night on which about half of the people sit out, from a design for all of
// them: each of its rounds is played in two, half of the tables in each. Everybody meets everybody as in the design;
// whoever played in the first half of one and in the second of the next sits out twice running in between.
// It returns nil where there is no design.
func fromSplit(n *night.Night, drawn *board, d *dice.Dice) *board {
	rounds := len(drawn.shapes)
	var best *board
	for _, v := range [2]int{n.People, (n.People + 3) / 4 * 4} {
		plan, ok := design.Best(v, (rounds+1)/2)
		if !ok || best != nil && v == n.People {
			continue
		}
		for range splitTries {
			b := drawn.blank()
			b.splitTables(plan, names(n, v, someOf(d, v, v-n.People), d), d)
			if best == nil || b.play+b.rest < best.play+best.rest {
				best = b
			}
		}
	}
	return best
}

// someOf draws so many of the numbers from 0 to v-1.
func someOf(d *dice.Dice, v, count int) []int {
	all := make([]int, v)
	for i := range all {
		all[i] = i
	}
	dice.Shuffle(d, all)
	return all[:max(0, count)]
}

// splitTables seats each round of a design in two rounds, the rounds in an order by lot. Of each, those tables play
// first whose people have just sat out, and the more so if they did so twice running before.
func (b *board) splitTables(plan [][]design.Table, names []night.Player, d *dice.Dice) {
	outs, last := make([]int, b.n.People), make([]bool, b.n.People)
	twice := make([]int, b.n.People)
	order := someOf(d, len(plan), len(plan))
	for r := range b.shapes {
		tables := slices.Clone(plan[order[r/2]])
		if r%2 == 1 {
			before := b.row(r - 1)[:b.shapes[r-1].Seats()]
			tables = slices.DeleteFunc(tables, func(t design.Table) bool {
				return slices.ContainsFunc(t[:], func(p int) bool { return slices.Contains(before, int32(names[p])) })
			})
		} else {
			dice.Shuffle(d, tables)
			urgency := func(t design.Table) (sum int) {
				for _, p := range t {
					if i := names[p]; i != night.Nobody && last[i] {
						sum += 1 + 4*twice[i]
					}
				}
				return sum
			}
			slices.SortStableFunc(tables, func(x, y design.Table) int { return cmp.Compare(urgency(y), urgency(x)) })
			whole := 0
			tables = slices.DeleteFunc(tables, func(t design.Table) bool {
				broken := slices.ContainsFunc(t[:], func(p int) bool { return names[p] == night.Nobody })
				if !broken {
					whole++
				}
				return broken || whole > len(b.shapes[r].Courts)
			})
		}
		rested := slices.Clone(last)
		b.seatTables(r, tables, names, outs, last)
		for i := range twice {
			twice[i] += night.One(rested[i] && last[i])
		}
	}
	b.recount()
}
