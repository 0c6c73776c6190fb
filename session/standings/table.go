// Package standings makes a table out of the results of games: who leads, and why.
//
// Partners rotate, so the table is about single persons (or about set pairs, if the caller gives
// each pair one name). People play unequal numbers of games; the table therefore goes by rates.
// The order of criteria follows the governing body's round robin (USA Pickleball Official Rulebook
// 2025, 12.C.4.b-e: matches won, head to head, point difference, head-to-head difference), as far
// as it applies to persons; see [Order] for where it does not.
package standings

import (
	"cmp"
	"slices"
)

// Result is one finished game.
type Result struct {
	A, B           []string // who played on each team: one or two names
	ScoreA, ScoreB int
	Winner         int // -1 team A, 0 neither (a timed game that ended level), 1 team B
}

// Row is one line of the table.
type Row struct {
	Rank          int     `json:"rank"` // equal people share one
	Name          string  `json:"name"`
	Games         int     `json:"games"`
	Wins          int     `json:"wins"`
	Draws         int     `json:"draws,omitempty"` // timed games that ended level
	Losses        int     `json:"losses"`
	PointsFor     int     `json:"points_for"`
	PointsAgainst int     `json:"points_against"`
	Difference    int     `json:"difference"`
	WinShare      float64 `json:"win_share"` // wins, and half of the draws, per game; 0 to 1
	Why           string  `json:"why"`       // what put this row above the next one with as many wins
}

// PerGame is the point difference per game.
func (r Row) PerGame() float64 {
	if r.Games == 0 {
		return 0
	}
	return float64(r.Difference) / float64(r.Games)
}

// points counts a win as two and a draw as one, so that shares can be compared without rounding.
func (r Row) points() int { return 2*r.Wins + r.Draws }

// Order says in words how the table is sorted, for printing under it.
//
// The rulebook's criteria are about fixed pairs who all meet. For persons, head to head is used
// when exactly two are level and have played against each other; when three or more are level,
// only if all of them have met equally often, since anything else would depend on the draw. The
// rulebook's last criterion (difference against the next higher pair) has no counterpart for
// persons and is left out. Who is level after all criteria shares the rank, unless a lot was drawn.
const Order = "win share; head to head (if all who are level met); point difference per game; head-to-head difference; lot"

// Table sorts the results. Lots, which may be nil, are names in the order in which they were drawn
// and decide what nothing else does. The table is the same for any order of results.
func Table(results []Result, lots []string) []Row {
	return newTally(results).table(lots)
}

// table sorts the rows, and notes what parts each from the next one.
func (t *tally) table(lots []string) []Row {
	rows := t.sorted()
	groups := split(rows, func(r Row) ratio { return ratio{r.points(), 2 * r.Games} })
	rank := 1
	var out []Row
	for _, g := range groups {
		ordered := t.order(g, lots)
		t.part(out, ordered[0], ByWinShare, len(rows), Row.figures)
		for _, level := range ordered {
			for _, r := range level {
				r.Rank = rank
				out = append(out, r)
			}
			rank += len(level)
		}
	}
	return out
}

// ratio is a fraction of whole numbers, compared exactly. With nothing below the line it is 0.
type ratio struct{ num, den int }

func (a ratio) compare(b ratio) int {
	if a.den == 0 {
		a = ratio{0, 1}
	}
	if b.den == 0 {
		b = ratio{0, 1}
	}
	return cmp.Compare(a.num*b.den, b.num*a.den)
}

// split sorts rows by a value, highest first, into groups of equal value. Rows of one group keep
// their order.
func split(rows []Row, value func(Row) ratio) [][]Row {
	rows = slices.Clone(rows)
	slices.SortStableFunc(rows, func(a, b Row) int { return value(b).compare(value(a)) })
	var out [][]Row
	for i, r := range rows {
		if i > 0 && value(rows[i-1]).compare(value(r)) == 0 {
			out[len(out)-1] = append(out[len(out)-1], r)
			continue
		}
		out = append(out, []Row{r})
	}
	return out
}
