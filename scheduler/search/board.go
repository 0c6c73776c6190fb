package search

import (
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// board is a plan in the making. Each round's seats are numbered: seats 4g to 4g+3 are game g, where
// seat^1 is the partner's and seat^2 and seat^3 are the opponents'; the seats from Shape.Seats up
// are the bench.
type board struct {
	n      *night.Night
	shapes []night.Shape
	fair   *sitout.Fair
	w      *measure.Weights
	width  int // seats kept for each round

	seat  []int32       // at round·width + seat: the person
	where []int32       // at round·people + person: the seat, or -1
	pair  []night.Tally // at a·people + b, both ways: how often they met, all night
	state []uint8       // at person·total + round of the night: absent, playing or benched
	outs  []int32       // each person's sit-outs, all night

	twice  []int32 // how often each person sits out right after a sit-out, all night
	atOnce []int32 // how many do in each round of the night
	may    int     // how often a person may without its being too often
	priced bool    // sitting out twice running has a price

	leveling *leveling // nil where nobody states a level, or they are left out of sight
	margin   []margin
	again    int // how many times at least somebody partners again, all night
	opposed  int // Σ C(o,2) over pairs, all night
	held     *held
	play     int // weight of who plays with whom
	rest     int // weight of who sits out
}

const (
	absent uint8 = iota
	playing
	benched
)

// newBoard sets up a board from one lineup for each round.
func newBoard(n *night.Night, lineups []lineup.Lineup, f *sitout.Fair, w *measure.Weights, d *dice.Dice) *board {
	b := emptyBoard(n, lineupShapes(n, lineups), f, w)
	for r, l := range lineups {
		copy(b.row(r), arrange(n, l, d))
	}
	b.recount()
	return b
}

// lineupShapes are the shapes of lineups.
func lineupShapes(n *night.Night, lineups []lineup.Lineup) []night.Shape {
	shapes := make([]night.Shape, len(lineups))
	for r, l := range lineups {
		shapes[r] = night.Shape{Courts: l.Courts, Here: len(n.Here[n.First+r])}
	}
	return shapes
}

// emptyBoard is a board with nobody seated and nothing counted.
func emptyBoard(n *night.Night, shapes []night.Shape, f *sitout.Fair, w *measure.Weights) *board {
	b := &board{n: n, shapes: shapes, fair: f, w: w, priced: w[measure.TwiceMore] > 0}
	for _, shape := range shapes {
		b.width = max(b.width, (shape.Here+3)&^3)
	}
	b.may = mayTwice(n, shapes)
	b.seat = make([]int32, len(shapes)*b.width)
	b.where = make([]int32, len(shapes)*n.People)
	b.leveling = newLeveling(n, w)
	return b
}

// recount works out everything that follows from who sits where.
func (b *board) recount() {
	b.pair = make([]night.Tally, b.n.People*b.n.People)
	b.state = make([]uint8, b.n.People*b.n.Problem.TotalRounds())
	b.outs = make([]int32, b.n.People)
	for i := range b.where {
		b.where[i] = -1
	}
	for _, g := range b.n.Problem.Earlier() {
		night.CountMeetings(b.pair, b.n.People, g.Seats())
	}
	for r := range b.shapes {
		row := b.row(r)
		for s, i := range row {
			b.where[r*b.n.People+int(i)] = int32(s)
		}
		for s := 0; s < b.shapes[r].Seats(); s += 4 {
			night.CountMeetings(b.pair, b.n.People, [4]night.Player{night.Player(row[s]), night.Player(row[s+1]), night.Player(row[s+2]), night.Player(row[s+3])})
		}
	}
	b.countStates()
	b.countTwice()
	b.margin = make([]margin, len(b.pair))
	for at := range b.margin {
		b.margin[at] = b.marginAt(at, b.pair[at])
	}
	b.measureAll()
	sums := measure.SumPairs(b.pair, b.n.People)
	b.again, b.opposed = sums.Repeats, sums.Opponents
	rest, all := b.restScore(), b.score()
	b.rest = rest.Weight(b.w)
	b.play = all.Weight(b.w) - b.rest + b.leveled()
}

// row returns who sits where in round r: the games, then the bench.
func (b *board) row(r int) []int32 {
	return b.seat[r*b.width : r*b.width+b.shapes[r].Here]
}

// countStates notes who played and who sat out in each round of the night.
func (b *board) countStates() {
	total := b.n.Problem.TotalRounds()
	for r := range total {
		for _, i := range b.n.Here[r] {
			b.state[int(i)*total+r] = playing
		}
		for _, i := range b.benchOf(r) {
			b.state[int(i)*total+r] = benched
			b.outs[i]++
		}
	}
}

// benchOf returns who sat out in round r of the night, played or planned.
func (b *board) benchOf(r int) []night.Player {
	var out []night.Player
	if r < b.n.First {
		for _, i := range b.n.Problem.History[r].Out {
			if b.n.Known(i) {
				out = append(out, i)
			}
		}
		return out
	}
	for _, i := range b.row(r - b.n.First)[b.shapes[r-b.n.First].Seats():] {
		out = append(out, night.Player(i))
	}
	return out
}

// score adds up what the whole plan costs but for levels. The search changes its weight step by step;
// tests compare the two.
func (b *board) score() measure.Score {
	var s measure.Score
	for i := range b.n.People {
		for j := i + 1; j < b.n.People; j++ {
			t := b.pair[i*b.n.People+j]
			p, o := int(t.P), int(t.O)
			s[measure.Partners] += measure.Pairs(p)
			s[measure.Opponents] += measure.Pairs(o)
			s[measure.Meetings] += measure.Pairs(p + o)
			if b.n.Wishes != nil {
				s.Add(wishScore(b.n.Wishes, i*b.n.People+j, p, o))
			}
		}
	}
	s.Add(b.restScore())
	return s
}

// rounds translates the board back to rounds.
func (b *board) rounds() []night.Round {
	rounds := make([]night.Round, len(b.shapes))
	for r, shape := range b.shapes {
		row := b.row(r)
		for g, c := range shape.Courts {
			s := row[4*g:]
			rounds[r].Games = append(rounds[r].Games, night.Game{
				Court: c, A: night.Team{night.Player(s[0]), night.Player(s[1])}, B: night.Team{night.Player(s[2]), night.Player(s[3])},
			})
		}
		for _, i := range row[shape.Seats():] {
			rounds[r].Out = append(rounds[r].Out, night.Player(i))
		}
		slices.Sort(rounds[r].Out)
	}
	return rounds
}
