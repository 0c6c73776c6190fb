package search

import (
	"slices"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// spareTables is a board whose rounds come from a design in which nobody meets twice, with more tables
// or more rounds than the night has. The board's seats of each round hold all complete tables in
// fours and then whoever is left over: the first tables play, the others sit out. Whichever play,
// nobody meets twice; what is left to search is who sits out.
type spareTables struct {
	b     *board
	whole []int      // complete tables of each round
	pool  []spareRow // rounds of the design that are not played
}

// spareRow is a round that is not played: its seats, with so many complete tables in front.
type spareRow struct {
	seats []int32
	whole int
}

// spareTries is how often names are given to the people of a design anew when sit-outs do not come
// out fair.
const spareTries = 3

// spareEffort is to how many of the search's moves a change of the tables that play amounts.
const spareEffort = 15

// mostSpare is how many people for every two courts may sit out for tables to spare to be worth a try:
// where more do, hardly any choice of tables benches nobody twice running.
const mostSpare = 7

// fromSpare makes a board from a design in which nobody meets twice, with tables to spare, or nil where
// there is none. Its work is taken from the search's moves; one try may take more than there are, as it does
// more for a night of that size than they would.
func (s *search) fromSpare(drawn *board) *board {
	n, d := s.n, s.d
	games, rounds := len(drawn.shapes[0].Courts), len(drawn.shapes)
	if out := drawn.shapes[0].Out(); out == 0 || 2*out > mostSpare*games {
		return nil
	}
	var best *board
	enough := s.moves / 2 // to be left for another try
	for v := n.People; v <= n.People+mostGhosts && s.moves > enough; v++ {
		for _, plan := range design.Unmet(v, games, rounds) {
			for k := 0; k < spareTries && s.moves > enough; k++ {
				t, ok := newSpare(n, drawn, plan, v, k, d)
				if !ok {
					break
				}
				s.moves = max(0, s.moves-spareEffort*t.share(d, s.moves))
				if best == nil || t.b.rest < best.rest {
					best = t.b
				}
				if best.rest == 0 {
					best.recount()
					return best
				}
			}
		}
	}
	if best != nil {
		best.recount()
	}
	return best
}

// mostGhosts is how many people more than there are a design may have. Each costs a table a round.
const mostGhosts = 7

// newSpare seats a design by lot. People of the design whom the night does not have are, in the first
// try, such as meet each other little, and then any. It fails if too few tables are complete.
func newSpare(n *night.Night, drawn *board, rounds [][]design.Table, v, try int, d *dice.Dice) (*spareTables, bool) {
	names := names(n, v, ghosts(n, rounds, v, try, d), d)
	b := drawn.blank()
	t := &spareTables{b: b, whole: make([]int, len(b.shapes))}
	courts := len(b.shapes[0].Courts)
	for _, tables := range rounds {
		if row := seatSpare(n, tables, names); row.whole >= courts {
			t.pool = append(t.pool, row)
		}
	}
	if len(t.pool) < len(b.shapes) {
		return nil, false
	}
	dice.Shuffle(d, t.pool)
	for r := range b.shapes {
		copy(b.row(r), t.pool[r].seats)
		t.whole[r] = t.pool[r].whole
	}
	t.pool = t.pool[len(b.shapes):]
	b.recount()
	return t, true
}

// seatSpare seats the complete tables of a round and then everybody else.
func seatSpare(n *night.Night, tables []design.Table, names []night.Player) spareRow {
	var row spareRow
	seated := make([]bool, n.People)
	for _, game := range wholeTables(tables, names) {
		row.whole++
		for _, i := range game {
			row.seats = append(row.seats, int32(i))
			seated[i] = true
		}
	}
	for i, there := range seated {
		if !there {
			row.seats = append(row.seats, int32(i))
		}
	}
	return row
}

// ghosts chooses which people of a design the night does not have.
func ghosts(n *night.Night, rounds [][]design.Table, v, try int, d *dice.Dice) []int {
	if try == 0 {
		return strangers(rounds, v, max(0, v-n.People))
	}
	all := make([]int, v)
	for i := range all {
		all[i] = i
	}
	dice.Shuffle(d, all)
	return all[:max(0, v-n.People)]
}

// names gives the people of the night by lot to those of a design who are no ghosts.
func names(n *night.Night, v int, ghosts []int, d *dice.Dice) []night.Player {
	people := n.Everybody()
	dice.Shuffle(d, people)
	names := make([]night.Player, v)
	for i := range names {
		if slices.Contains(ghosts, i) {
			names[i] = night.Nobody
			continue
		}
		names[i] = people[0]
		people = people[1:]
	}
	return names
}
