package search

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// leveling is how a board weighs levels.
type leveling struct {
	of    []int // each person's level in tenths
	worth []int // what a game weighs by how far its teams are apart, as far as that goes; see [leveling.gap]
	gap   []int // at (round·width + first seat) / 4: how much better team A of a game is, in tenths
	bands []int // at person·courts + court: what it weighs that the person plays there; nil = no court prefers anybody
	sure  int   // what a game with a sure winner weighs
	wide  int   // the widest gap, in tenths, of a game without
	total int   // what all games weigh
	sures int   // how many games have a sure winner
}

// mostWorth is up to which gap in tenths a game's weight is looked up.
const mostWorth = 256

// newLeveling reads levels from the night, nil where nobody states one. A game with a sure winner weighs what it is
// worth in the step of the night.
func newLeveling(n *night.Night, w *measure.Weights) *leveling {
	step, _ := n.Problem.Even()
	return levelingAt(n, step, w)
}

// levelingAt is [newLeveling] with another step than the night's.
func levelingAt(n *night.Night, step night.Leveling, w *measure.Weights) *leveling {
	levels := n.Levels()
	if levels == nil {
		return nil
	}
	l := &leveling{of: levels, sure: sureWinner, wide: n.Widest}
	switch step {
	case night.GentleLevels:
		l.sure = measure.GentleOnesided
	case night.EvenLevels:
		l.sure = w[measure.Onesided]
	}
	l.worth = make([]int, mostWorth)
	for gap := range l.worth {
		l.worth[gap] = l.weigh(gap)
	}
	if n.Bands {
		for _, person := range n.Problem.People {
			for _, c := range n.Problem.Courts {
				l.bands = append(l.bands, outOfBand*night.One(!c.Suits(person.Level)))
			}
		}
	}
	return l
}

// sureWinner is what a sure winner weighs where nothing is to be paid for avoiding it.
const sureWinner = 8

// outOfBand is the cost of one person on a court whose preferred band is another.
const outOfBand = 8

// weigh is what a game weighs whose teams' levels differ by so many tenths.
func (l *leveling) weigh(gap int) int {
	w := gap * gap / 16
	if gap > l.wide {
		w += l.sure
	}
	return w
}

// apart is what a game weighs of which team A is so many tenths better.
func (l *leveling) apart(gap int) int {
	if gap = max(gap, -gap); gap < mostWorth {
		return l.worth[gap]
	}
	return l.weigh(gap)
}

// gapOf is by how much team A of the game of a seat is better.
func (l *leveling) gapOf(row []int32, s int) int {
	g := row[s&^3 : s&^3+4]
	return l.of[g[0]] + l.of[g[1]] - l.of[g[2]] - l.of[g[3]]
}

// measureAll notes the gaps of all games and what they and the bands weigh.
func (b *board) measureAll() {
	if b.leveling == nil {
		return
	}
	own := *b.leveling // boards that are copies of another keep their own
	l := &own
	b.leveling = l
	l.gap, l.total, l.sures = make([]int, len(b.seat)/4), 0, 0
	for r := range b.shapes {
		row := b.row(r)
		for s := 0; s < b.shapes[r].Seats(); s += 4 {
			gap := l.gapOf(row, s)
			l.gap[(r*b.width+s)>>2] = gap
			l.total += l.apart(gap)
			l.sures += l.isSure(gap)
			for k := s; k < s+4 && l.bands != nil; k++ {
				l.total += b.band(r, k, row[k])
			}
		}
	}
}

// band is what it weighs that somebody plays on the court of a seat.
func (b *board) band(r, s int, i int32) int {
	return b.leveling.bands[int(i)*len(b.n.Problem.Courts)+int(b.shapes[r].Courts[s>>2])]
}

// mostGain is what the games of two seats of round r weigh: no exchange can gain more in levels.
func (b *board) mostGain(r, s, t int) int {
	l, seats, at := b.leveling, b.shapes[r].Seats(), r*b.width
	most := 0
	if l.bands != nil {
		most = 2 * outOfBand
	}
	if s < seats {
		most += l.apart(l.gap[(at+s)>>2])
	}
	if t < seats && s>>2 != t>>2 {
		most += l.apart(l.gap[(at+t)>>2])
	}
	return most
}

// levelDelta is the change of the weight of levels if seats s and t of round r change occupants.
func (b *board) levelDelta(r, s, t int) int {
	l, row, seats, at := b.leveling, b.row(r), b.shapes[r].Seats(), r*b.width
	more := l.of[row[t]] - l.of[row[s]] // of seat s
	d := 0
	switch {
	case s>>2 == t>>2:
		gap := l.gap[(at+s)>>2]
		return l.apart(gap+2*more*sideOf(s)) - l.apart(gap)
	case s < seats && t < seats:
		g, h := l.gap[(at+s)>>2], l.gap[(at+t)>>2]
		d = l.apart(g+more*sideOf(s)) - l.apart(g) + l.apart(h-more*sideOf(t)) - l.apart(h)
	case s < seats:
		gap := l.gap[(at+s)>>2]
		d = l.apart(gap+more*sideOf(s)) - l.apart(gap)
	case t < seats:
		gap := l.gap[(at+t)>>2]
		d = l.apart(gap-more*sideOf(t)) - l.apart(gap)
	}
	if l.bands != nil {
		if s < seats {
			d += b.band(r, s, row[t]) - b.band(r, s, row[s])
		}
		if t < seats {
			d += b.band(r, t, row[s]) - b.band(r, t, row[t])
		}
	}
	return d
}

// sideOf is 1 for the seats of team A and -1 for those of team B.
func sideOf(s int) int { return 1 - s&2 }

// relevel brings what is noted of levels up to date before seats s and t of round r change occupants.
func (b *board) relevel(r, s, t int) {
	l, row, seats, at := b.leveling, b.row(r), b.shapes[r].Seats(), r*b.width
	l.total += b.levelDelta(r, s, t)
	more := l.of[row[t]] - l.of[row[s]]
	if s < seats {
		l.widen((at+s)>>2, more*sideOf(s))
	}
	if t < seats {
		l.widen((at+t)>>2, -more*sideOf(t))
	}
}

// widen changes the gap of a game.
func (l *leveling) widen(game, by int) {
	l.sures -= l.isSure(l.gap[game])
	l.gap[game] += by
	l.sures += l.isSure(l.gap[game])
}

// isSure is 1 for a gap with a sure winner.
func (l *leveling) isSure(gap int) int { return night.One(max(gap, -gap) > l.wide) }

// leveled is what levels weigh on the board.
func (b *board) leveled() int {
	if b.leveling == nil {
		return 0
	}
	return b.leveling.total
}

// blind is the board without levels, which are seen to later.
func (b *board) blind() *board {
	b.leveling = nil
	b.recount()
	return b
}
