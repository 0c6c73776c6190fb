package standings

import "fmt"

// Criterion is what parts two neighbours of the table.
type Criterion uint8

// The criteria, in the order in which they are tried.
const (
	Level            Criterion = iota // nothing parts them: they share the place
	ByWinShare                        // wins, and half of the draws, per game
	ByHeadToHead                      // the same in the games against each other
	ByDifference                      // point difference per game
	ByHeadDifference                  // point difference in the games against each other
	ByLot                             // a lot that was drawn
)

// Figures are what a criterion went by: games, the wins in them as halves, and the point difference.
type Figures struct{ Games, Points, Difference int }

// Parting is why a row stands above the next one.
type Parting struct {
	By    Criterion
	Among int     // how many were level before it
	Own   Figures // of the row
	Next  Figures // of the row below it
}

// figures are a row's own, over all games.
func (r Row) figures() Figures { return Figures{r.Games, r.points(), r.Difference} }

// figures are those of a meeting.
func (m meeting) figures() Figures { return Figures{m.games, m.points, m.difference} }

// Words say why a row stands above the one of that name, with figures: "before Wim: same wins, +12 points
// to +9".
func (p Parting) Words(next string) string {
	a, b := p.Own, p.Next
	own := "same wins"
	if a.Games != b.Games && p.By == ByDifference {
		own = "same win share"
	}
	switch p.By {
	case ByWinShare:
		return fmt.Sprintf("before %s: %s won to %s", next, a.of(), b.of())
	case ByHeadToHead:
		if p.Among > 2 {
			return fmt.Sprintf("before %s: %s won to %s among the %d who are level", next, a.of(), b.of(), p.Among)
		}
		return fmt.Sprintf("before %s: level, and won %s against each other", next, a.of())
	case ByDifference:
		if a.Games != b.Games {
			return fmt.Sprintf("before %s: %s, %+.1f points a game to %+.1f", next, own, a.perGame(), b.perGame())
		}
		return fmt.Sprintf("before %s: %s, %+d points to %+d", next, own, a.Difference, b.Difference)
	case ByHeadDifference:
		return fmt.Sprintf("before %s: level, %+d points to %+d against each other", next, a.Difference, b.Difference)
	case ByLot:
		return "before " + next + ": level, drawn by lot"
	}
	return "level with " + next
}

// of says how many of the games were won, a draw being half a win.
func (f Figures) of() string {
	wins := fmt.Sprint(f.Points / 2)
	if f.Points%2 == 1 {
		wins += ".5"
	}
	return fmt.Sprintf("%s of %d", wins, f.Games)
}

func (f Figures) perGame() float64 { return float64(f.Difference) / float64(max(1, f.Games)) }

// Partings say of each row of the table, in its order, why it stands above the next one. The last has none.
func Partings(results []Result, lots []string) []Parting {
	_, parted := Parted(results, lots)
	return parted
}

// Parted is [Table] and [Partings] in one.
func Parted(results []Result, lots []string) ([]Row, []Parting) {
	t := newTally(results)
	rows := t.table(lots)
	out := make([]Parting, len(rows))
	for i, r := range rows {
		out[i] = t.parted[r.Name]
	}
	return rows, out
}

// part notes what parts the last row above a gap from the first below it.
func (t *tally) part(above, below []Row, by Criterion, among int, figures func(Row) Figures) {
	if len(above) == 0 || len(below) == 0 {
		return
	}
	upper, lower := above[len(above)-1], below[0]
	t.parted[upper.Name] = Parting{By: by, Among: among, Own: figures(upper), Next: figures(lower)}
}
