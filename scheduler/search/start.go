package search

import (
	"cmp"
	"context"
	"slices"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// fromDesigns makes boards of the same shape as the drawn one from published designs, where a night is
// regular enough for one: nothing played yet, everybody there all the time, free partners. A
// design for somewhat fewer people leaves the others on the bench, one for somewhat more loses the
// tables of those who do not exist; the search then makes the sit-outs fair.
func (s *search) fromDesigns(ctx context.Context, drawn *board) []*board {
	n, d := s.n, s.d
	if !regular(n, drawn) {
		return nil
	}
	people, games, rounds := n.People, len(drawn.shapes[0].Courts), len(drawn.shapes)
	if n.Side != nil {
		return fromMixed(n, drawn)
	}
	if tables, ok := design.Wheel(people, games, rounds); ok {
		return []*board{fromWheel(n, drawn, tables, d)}
	}
	boards := s.fromNear(ctx, drawn)
	if b := fromHalves(n, drawn, d); b != nil {
		boards = append(boards, b)
	}
	if b := s.fromSpare(drawn); b != nil {
		boards = append(boards, b)
	}
	for _, v := range designSizes(people, games) {
		if table, ok := design.Best(v, rounds); ok {
			boards = append(boards, fromTables(n, drawn, table, v, d))
		}
	}
	return boards
}

// regular tells whether all rounds of a board are alike and nobody is bound to anybody or to a court.
func regular(n *night.Night, drawn *board) bool {
	for _, shape := range drawn.shapes {
		if len(shape.Courts) != len(drawn.shapes[0].Courts) {
			return false
		}
	}
	return steady(n) && len(drawn.shapes) > 0 && len(drawn.shapes[0].Courts) > 0
}

// mayBeRegular tells whether boards of the night will be regular, before one is drawn.
func (s *search) mayBeRegular() bool {
	return steady(s.n) && !slices.ContainsFunc(s.most, func(most int) bool { return most != s.most[0] })
}

// steady tells whether nothing is played yet, everybody is there in every round, and nobody is bound to anybody or to a
// court.
func steady(n *night.Night) bool {
	if !n.Fresh() || n.Walls != nil || n.Problem.Format == night.Pairs {
		return false
	}
	return !slices.ContainsFunc(n.Mate, func(i night.Player) bool { return i != night.Nobody }) &&
		!slices.ContainsFunc(n.Here[n.First:], func(here []night.Player) bool { return len(here) != n.People })
}

// fromWheel makes a board from a plan that was found for just such a night.
func fromWheel(n *night.Night, drawn *board, rounds [][]design.Table, d *dice.Dice) *board {
	names := names(n, n.People, nil, d)
	b := drawn.blank()
	for r, tables := range rounds {
		copy(b.row(r), seatSpare(n, tables, names).seats)
	}
	b.recount()
	return b
}

// designSizes lists the sizes of designs worth a try: that of the people who play, that of all people,
// and those a little above the number of people, which lose a table for each person who does not exist.
func designSizes(people, games int) []int {
	sizes := []int{4 * games}
	if people%4 != 0 {
		sizes = append(sizes, people)
	}
	for v := (people + 3) / 4 * 4; v <= people+4; v += 4 {
		if v > 4*games && v/4-(v-people) >= games-1 {
			sizes = append(sizes, v)
		}
	}
	return sizes
}

// fromTables makes a board from a design for v people. People of the design beyond those of the night
// are chosen among those who never meet, so that each round loses as many tables as they are and
// everybody sits out once for each of them; the rounds are ordered so that few sit out twice running.
func fromTables(n *night.Night, drawn *board, rounds [][]design.Table, v int, d *dice.Dice) *board {
	ghosts := strangers(rounds, v, max(0, v-n.People))
	names := names(n, v, ghosts, d)
	if len(ghosts) > 0 {
		rounds = restOrder(rounds, names)
	}
	b := drawn.blank()
	outs, last := make([]int, n.People), make([]bool, n.People)
	for r, tables := range rounds {
		b.seatTables(r, tables, names, outs, last)
	}
	b.recount()
	b.substituteBest()
	return b
}

// fewOver is how many people beside the courts' seats are few enough to look at all substitutions.
const fewOver = 3

// substituteBest lets people on the bench play in others' stead, always where it costs least, as long as
// that makes the plan better: it gives those whom a design does not know their fair share.
func (b *board) substituteBest() {
	if b.shapes[0].Out() > fewOver {
		return
	}
	for b.rest > 0 {
		var best step
		least := 0
		for r, shape := range b.shapes {
			for s := range shape.Seats() {
				for t := shape.Seats(); t < shape.Here; t++ {
					row := b.row(r)
					if d := b.swapDelta(r, s, t) + b.benchDelta(row[s], r) + b.benchDelta(row[t], r); d < least {
						best, least = step{r, s, t}, d
					}
				}
			}
		}
		if least == 0 {
			return
		}
		b.swap(best.r, best.s, best.t, b.swapDelta(best.r, best.s, best.t))
	}
}

// blank is a board of the same shape with nobody seated.
func (b *board) blank() *board {
	c := *b
	c.seat = make([]int32, len(b.seat))
	c.where = make([]int32, len(b.where))
	c.state, c.outs, c.pair, c.margin = nil, nil, nil, nil
	return &c
}

// wholeTables returns who sits at the tables of a round at which nobody is missing.
func wholeTables(tables []design.Table, names []night.Player) (whole [][]night.Player) {
	for _, t := range tables {
		game := []night.Player{names[t[0]], names[t[1]], names[t[2]], names[t[3]]}
		if !slices.Contains(game, night.Nobody) {
			whole = append(whole, game)
		}
	}
	return whole
}

// seatTables seats round r by the tables that are complete, those first whose people sat out most, and
// fills what is left with people in the order of their sit-outs.
func (b *board) seatTables(r int, tables []design.Table, names []night.Player, outs []int, last []bool) {
	seats := b.shapes[r].Seats()
	urgency := func(i night.Player) int { return 2*outs[i] + night.One(last[i]) }
	whole := wholeTables(tables, names)
	slices.SortStableFunc(whole, func(x, y []night.Player) int {
		sx, sy := 0, 0
		for k := range x {
			sx, sy = sx+urgency(x[k]), sy+urgency(y[k])
		}
		return cmp.Compare(sy, sx)
	})
	row := b.row(r)[:0]
	plays := make([]bool, b.n.People)
	for _, game := range whole {
		for _, i := range game {
			if len(row) < seats {
				row = append(row, int32(i))
				plays[i] = true
			}
		}
	}
	rest := slices.DeleteFunc(b.n.Everybody(), func(i night.Player) bool { return plays[i] })
	slices.SortStableFunc(rest, func(x, y night.Player) int { return cmp.Compare(urgency(y), urgency(x)) })
	clear(last)
	for _, i := range rest {
		if row = append(row, int32(i)); len(row) > seats {
			outs[i]++
			last[i] = true
		}
	}
}

// fromMixed makes a board from the rotation of two groups, if the courts hold all that it seats.
func fromMixed(n *night.Night, drawn *board) []*board {
	var groups [2][]night.Player
	for i, side := range n.Side {
		groups[side] = append(groups[side], night.Player(i))
	}
	rounds, ok := design.MixedRotation(len(groups[0]), len(groups[1]))
	if !ok || len(rounds) < len(drawn.shapes) || len(rounds[0]) != len(drawn.shapes[0].Courts) {
		return nil
	}
	names := append(slices.Clone(groups[0]), groups[1]...)
	b := drawn.blank()
	outs, last := make([]int, n.People), make([]bool, n.People)
	for r := range drawn.shapes {
		if len(rounds[r]) != len(drawn.shapes[r].Courts) {
			return nil
		}
		b.seatTables(r, rounds[r], names, outs, last)
	}
	b.recount()
	return []*board{b}
}
