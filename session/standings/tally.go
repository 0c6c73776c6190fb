package standings

import (
	"slices"
	"strings"
)

// tally is what the results say about each person, and about each two who played against each
// other. Persons are numbered as they first appear, so that nothing is looked up by name twice.
type tally struct {
	number map[string]int
	rows   []Row
	met    map[[2]int]meeting
	parted map[string]Parting // why the row of that name stands above the next one
}

// meeting is what the first of two persons achieved against the second.
type meeting struct{ games, points, difference int }

func newTally(results []Result) *tally {
	t := &tally{number: map[string]int{}, met: make(map[[2]int]meeting, 8*len(results)), parted: map[string]Parting{}}
	var a, b [2]int
	for _, r := range results {
		us, them := t.numbers(a[:0], r.A), t.numbers(b[:0], r.B)
		t.side(us, them, r.ScoreA, r.ScoreB, -r.Winner)
		t.side(them, us, r.ScoreB, r.ScoreA, r.Winner)
	}
	for i := range t.rows {
		r := &t.rows[i]
		r.Difference = r.PointsFor - r.PointsAgainst
		r.WinShare = float64(r.points()) / float64(2*r.Games)
	}
	return t
}

// numbers appends the numbers of some names, new ones for names that are new.
func (t *tally) numbers(to []int, names []string) []int {
	for _, name := range names {
		i, ok := t.number[name]
		if !ok {
			i = len(t.rows)
			t.number[name] = i
			t.rows = append(t.rows, Row{Name: name})
		}
		to = append(to, i)
	}
	return to
}

// side counts a game for one team; won is 1 for a win, 0 for a draw, -1 for a loss.
func (t *tally) side(us, them []int, own, other, won int) {
	for _, i := range us {
		r := &t.rows[i]
		r.Games++
		r.PointsFor += own
		r.PointsAgainst += other
		switch won {
		case 1:
			r.Wins++
		case 0:
			r.Draws++
		default:
			r.Losses++
		}
		for _, j := range them {
			m := t.met[[2]int{i, j}]
			m.games++
			m.points += won + 1
			m.difference += own - other
			t.met[[2]int{i, j}] = m
		}
	}
}

// sorted lists the rows by name, so that nothing depends on the order of results.
func (t *tally) sorted() []Row {
	out := slices.Clone(t.rows)
	slices.SortFunc(out, func(a, b Row) int { return strings.Compare(a.Name, b.Name) })
	return out
}

// between is what one person achieved against another.
func (t *tally) between(a, b Row) meeting {
	return t.met[[2]int{t.number[a.Name], t.number[b.Name]}]
}

// against adds up what a person achieved against the others of a group.
func (t *tally) against(r Row, group []Row) meeting {
	var sum meeting
	for _, o := range group {
		m := t.between(r, o)
		sum.games += m.games
		sum.points += m.points
		sum.difference += m.difference
	}
	return sum
}

// comparable tells whether all two of a group met, and equally often.
func (t *tally) comparable(group []Row) bool {
	games := -1
	for i, a := range group {
		for _, b := range group[i+1:] {
			m := t.between(a, b)
			if m.games == 0 || games >= 0 && m.games != games {
				return false
			}
			games = m.games
		}
	}
	return games > 0
}
