package standings

import (
	"slices"
	"strings"
)

// tally is what the results say about each person, and about each two who played against each
// other.
type tally struct {
	rows map[string]*Row
	met  map[[2]string]*meeting
}

// meeting is what the first of two persons achieved against the second.
type meeting struct{ games, points, difference int }

func newTally(results []Result) *tally {
	t := &tally{rows: map[string]*Row{}, met: map[[2]string]*meeting{}}
	for _, r := range results {
		t.side(r.A, r.B, r.ScoreA, r.ScoreB, -r.Winner)
		t.side(r.B, r.A, r.ScoreB, r.ScoreA, r.Winner)
	}
	for _, r := range t.rows {
		r.Difference = r.PointsFor - r.PointsAgainst
		r.WinShare = float64(r.points()) / float64(2*r.Games)
	}
	return t
}

// side counts a game for one side; won is 1 for a win, 0 for a draw, -1 for a loss.
func (t *tally) side(us, them []string, own, other, won int) {
	for _, name := range us {
		r := t.rows[name]
		if r == nil {
			r = &Row{Name: name}
			t.rows[name] = r
		}
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
		for _, opponent := range them {
			m := t.met[[2]string{name, opponent}]
			if m == nil {
				m = &meeting{}
				t.met[[2]string{name, opponent}] = m
			}
			m.games++
			m.points += won + 1
			m.difference += own - other
		}
	}
}

// sorted lists the rows by name, so that nothing depends on the order of a map.
func (t *tally) sorted() []Row {
	out := make([]Row, 0, len(t.rows))
	for _, r := range t.rows {
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b Row) int { return strings.Compare(a.Name, b.Name) })
	return out
}

// against adds up what a person achieved against the others of a group.
func (t *tally) against(name string, group []Row) meeting {
	var sum meeting
	for _, o := range group {
		if m := t.met[[2]string{name, o.Name}]; m != nil && o.Name != name {
			sum.games += m.games
			sum.points += m.points
			sum.difference += m.difference
		}
	}
	return sum
}

// comparable tells whether all two of a group met, and equally often.
func (t *tally) comparable(group []Row) bool {
	games := -1
	for i, a := range group {
		for _, b := range group[i+1:] {
			m := t.met[[2]string{a.Name, b.Name}]
			if m == nil || games >= 0 && m.games != games {
				return false
			}
			games = m.games
		}
	}
	return games > 0
}
