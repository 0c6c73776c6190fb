package session

import (
	"math"
	"slices"
	"sync"

	"club/quadrille/scoring/rating"
)

// leveled gives the levels by which a night balances teams: what people state or, if the night says so, what their games
// of the nights before say.
type leveled struct {
	mu     sync.Mutex
	nights []*Night // the nights before, and
	people []Person // the people of whom the levels are
	levels map[PersonID]float64
}

// levels are those of a night by ratings, nil where people's own count.
func (n *Night) levels(club *Club) map[PersonID]float64 {
	if !n.Settings.Rated {
		return nil
	}
	at := slices.IndexFunc(club.Nights, func(o *Night) bool { return o.ID == n.ID })
	before := club.Nights[:max(0, at)]
	if n.leveled == nil {
		return ratedLevels(before, club.People)
	}
	n.leveled.mu.Lock()
	defer n.leveled.mu.Unlock()
	if l := n.leveled; l.levels == nil || !slices.Equal(l.nights, before) || !samePeople(l.people, club.People) {
		l.nights, l.people, l.levels = before, club.People, ratedLevels(before, club.People)
	}
	return n.leveled.levels
}

// samePeople tells whether two lists are one: a fold copies what it changes.
func samePeople(a, b []Person) bool { return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) }

// ratedLevels rates everybody by some nights, and gives the levels that the ratings stand for, in tenths. Who has not played
// starts at the own level, and else in the middle of those who have; before anybody has played nobody has a level.
func ratedLevels(nights []*Night, people []Person) map[PersonID]float64 {
	m := rating.Club()
	table, err := Ratings(&Club{Nights: nights, People: people}, m)
	if err != nil || len(table) == 0 {
		return map[PersonID]float64{}
	}
	out, sum, played := map[PersonID]float64{}, 0.0, 0
	for _, p := range table {
		if p.Games > 0 {
			sum += p.Mu
			played++
		}
	}
	middle := 0.0
	if played > 0 {
		middle = inTenths(m.Stated(rating.Rating{Mu: sum / float64(played)}))
	}
	for _, p := range people {
		switch r, ok := table.Of(p.ID); {
		case ok && r.Games > 0:
			out[p.ID] = inTenths(m.Stated(r.Rating))
		case p.Level > 0:
			out[p.ID] = p.Level
		case middle > 0:
			out[p.ID] = middle
		}
	}
	return out
}

// inTenths is a level as it is stated, from 0.1 to 10.
func inTenths(level float64) float64 { return min(10, max(0.1, math.Round(10*level)/10)) }

// levelOf is the level of somebody for a draw.
func (d *draw) levelOf(p Person) float64 {
	if d.levels == nil {
		return p.Level
	}
	return d.levels[p.ID]
}
