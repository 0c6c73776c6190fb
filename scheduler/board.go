package scheduler

import "slices"

// board is a plan in the making. Each round's seats are numbered: seats 4g to 4g+3 are game g, where
// seat^1 is the partner's and seat^2 and seat^3 are the opponents'; the seats from shape.seats() up
// are the bench.
type board struct {
	n      *night
	shapes []shape
	shares *shares
	width  int // seats kept for each round

	seat  []int32 // at round·width + seat: the person
	where []int32 // at round·people + person: the seat, or -1
	pair  []tally // at a·people + b, both ways: how often they met, all night
	state []uint8 // at person·total + round of the night: absent, playing or benched
	outs  []int32 // each person's sit-outs, all night

	levels  []int // each person's level in tenths; nil when nobody states one
	level   []int // what each game weighs for levels, at (round·width + first seat) / 4
	leveled int   // the sum of those
	margin  []margin
	play    int // weight of who plays with whom
	rest    int // weight of who sits out
}

// tally counts how often two people were partners and opponents.
type tally struct{ p, o uint16 }

const (
	absent uint8 = iota
	playing
	benched
)

// newBoard sets up a board from one lineup for each round.
func newBoard(n *night, lineups []lineup, s *shares, d *dice) *board {
	b := &board{n: n, shares: s}
	for r, l := range lineups {
		b.shapes = append(b.shapes, shape{courts: l.courts, here: len(n.here[n.first+r])})
		b.width = max(b.width, (len(n.here[n.first+r])+3)&^3)
	}
	b.seat = make([]int32, len(lineups)*b.width)
	b.where = make([]int32, len(lineups)*n.people)
	b.levels = n.levels()
	for r, l := range lineups {
		copy(b.seat[r*b.width:], n.arrange(l, d))
	}
	b.recount()
	return b
}

// recount works out everything that follows from who sits where.
func (b *board) recount() {
	b.pair = make([]tally, b.n.people*b.n.people)
	b.state = make([]uint8, b.n.people*b.n.p.total())
	b.outs = make([]int32, b.n.people)
	for i := range b.where {
		b.where[i] = -1
	}
	for _, g := range b.n.p.earlier() {
		countMeetings(b.pair, b.n.people, g.seats())
	}
	for r := range b.shapes {
		row := b.row(r)
		for s, i := range row {
			b.where[r*b.n.people+int(i)] = int32(s)
		}
		for s := 0; s < b.shapes[r].seats(); s += 4 {
			countMeetings(b.pair, b.n.people, [4]Player{Player(row[s]), Player(row[s+1]), Player(row[s+2]), Player(row[s+3])})
		}
	}
	b.countStates()
	b.margin = make([]margin, len(b.pair))
	for at := range b.margin {
		b.margin[at] = b.marginAt(at, b.pair[at])
	}
	b.level, b.leveled = make([]int, len(b.seat)/4), 0
	for r := range b.shapes {
		for s := 0; s < b.shapes[r].seats() && b.levels != nil; s += 4 {
			b.relevel(r, s)
		}
	}
	b.rest = b.restScore().weight()
	b.play = b.score().weight() - b.rest + b.leveled
}

// row returns who sits where in round r: the games, then the bench.
func (b *board) row(r int) []int32 {
	return b.seat[r*b.width : r*b.width+b.shapes[r].here]
}

// known tells whether the number stands for a person of the problem.
func (n *night) known(i Player) bool { return i >= 0 && int(i) < n.people }

// countStates notes who played and who sat out in each round of the night.
func (b *board) countStates() {
	total := b.n.p.total()
	for r := range total {
		for _, i := range b.n.here[r] {
			b.state[int(i)*total+r] = playing
		}
		for _, i := range b.benchOf(r) {
			b.state[int(i)*total+r] = benched
			b.outs[i]++
		}
	}
}

// benchOf returns who sat out in round r of the night, played or planned.
func (b *board) benchOf(r int) []Player {
	var out []Player
	if r < b.n.first {
		for _, i := range b.n.p.History[r].Out {
			if b.n.known(i) {
				out = append(out, i)
			}
		}
		return out
	}
	for _, i := range b.row(r - b.n.first)[b.shapes[r-b.n.first].seats():] {
		out = append(out, Player(i))
	}
	return out
}

// score adds up what the whole plan costs but for levels. The search changes its weight step by step;
// tests compare the two.
func (b *board) score() score {
	var s score
	for i := range b.n.people {
		for j := i + 1; j < b.n.people; j++ {
			t := b.pair[i*b.n.people+j]
			p, o := int(t.p), int(t.o)
			s.partners += pairsOf(p)
			s.opponent += pairsOf(o)
			s.meetings += pairsOf(p + o)
			if b.n.wishes != nil {
				s.add(b.n.wishes.cost(i*b.n.people+j, p, o))
			}
		}
	}
	s.add(b.restScore())
	return s
}

// pairsOf is C(k,2), the number of pairs among k things.
func pairsOf(k int) int { return k * (k - 1) / 2 }

// rounds translates the board back to rounds.
func (b *board) rounds() []Round {
	rounds := make([]Round, len(b.shapes))
	for r, shape := range b.shapes {
		row := b.row(r)
		for g, c := range shape.courts {
			s := row[4*g:]
			rounds[r].Games = append(rounds[r].Games, Game{
				c, Team{Player(s[0]), Player(s[1])}, Team{Player(s[2]), Player(s[3])},
			})
		}
		for _, i := range row[shape.seats():] {
			rounds[r].Out = append(rounds[r].Out, Player(i))
		}
		slices.Sort(rounds[r].Out)
	}
	return rounds
}
