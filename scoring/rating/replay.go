package rating

import (
	"cmp"
	"fmt"
	"slices"
)

// Game is one result between two teams of people, who are named by any comparable value.
type Game[K comparable] struct {
	A, B  []K
	Share float64 // what A had of the result: see [Model.Share]
	Week  float64 // when it was played, in weeks from any fixed day, for [Model.Growth]; never falling
}

// Person is one line of a [Table].
type Person[K comparable] struct {
	Who K
	Rating
	Games int
	// Comparable tells whether the games connect this person to the main group of the table. The rating
	// of anybody else only compares people of the same group: show it as not yet comparable.
	Comparable bool
	// Group numbers the people whom the games compare with each other, from 0 in the order of the table.
	Group int
}

// Table is everybody's rating, best first; equal ones in the order in which they first played.
type Table[K comparable] []Person[K]

// Of is the line of one person, and false for somebody who did not play.
func (t Table[K]) Of(who K) (Person[K], bool) {
	for _, p := range t {
		if p.Who == who {
			return p, true
		}
	}
	return Person[K]{}, false
}

// Replay rates everybody by games in their order, as of the newest game: with [Model.Growth] who is away grows
// less sure until then. Who states a level or brings a rating along is in start, which
// may be nil; all others start as [Model.New]. The error names the game that cannot be.
func Replay[K comparable](m Model, start map[K]Rating, games []Game[K]) (Table[K], error) {
	if err := m.Validate(); err != nil {
		return nil, err
	}
	r := replay[K]{model: m, start: start, index: map[K]int{}}
	for i, g := range games {
		if err := r.add(g); err != nil {
			return nil, fmt.Errorf("game %d: %w", i+1, err)
		}
	}
	return r.table(), nil
}

// replay is a table in the making.
type replay[K comparable] struct {
	model  Model
	start  map[K]Rating
	index  map[K]int
	people []Person[K]
	weeks  []float64 // of each person's last game
	week   float64
	links  links
}

// add rates one more game.
func (r *replay[K]) add(g Game[K]) error {
	if len(g.A) == 0 || len(g.B) == 0 {
		return fmt.Errorf("a team has nobody: name one or two people a team")
	}
	if !(g.Share >= 0 && g.Share <= 1) {
		return fmt.Errorf("a team cannot have %v of the result: 0 to 1 is possible", g.Share)
	}
	if len(r.people) > 0 && !(g.Week >= r.week) {
		return fmt.Errorf("it comes after a later one: put the games in the order they were played")
	}
	r.week = g.Week
	var seats [4]int
	who := seats[:0]
	for _, k := range g.A {
		who = append(who, r.person(k))
	}
	for _, k := range g.B {
		who = append(who, r.person(k))
	}
	for i, p := range who {
		if slices.Contains(who[:i], p) {
			return fmt.Errorf("%v stands in it twice: correct one of the names", r.people[p].Who)
		}
	}
	r.rate(who, len(g.A), g.Share)
	r.links.add(who[:len(g.A)], who[len(g.A):])
	return nil
}

// rate updates the people of one game, the first of them team A.
func (r *replay[K]) rate(who []int, a int, share float64) {
	var seats [4]Rating
	ratings := seats[:0]
	for _, p := range who {
		ratings = append(ratings, r.model.Grown(r.people[p].Rating, r.week-r.weeks[p]))
	}
	r.model.Update(ratings[:a], ratings[a:], share)
	for i, p := range who {
		r.people[p].Rating = ratings[i]
		r.people[p].Games++
		r.weeks[p] = r.week
	}
}

// person is the index of somebody, who enters the table with the first game.
func (r *replay[K]) person(k K) int {
	i, known := r.index[k]
	if !known {
		i = len(r.people)
		r.index[k] = i
		rating, stated := r.start[k]
		if !stated {
			rating = r.model.New()
		}
		r.people = append(r.people, Person[K]{Who: k, Rating: rating})
		r.weeks = append(r.weeks, r.week)
	}
	return i
}

// table puts the people in order and tells who can be compared.
func (r *replay[K]) table() Table[K] {
	groups := r.links.groups()
	main := mainGroup(groups)
	for i := range r.people {
		r.people[i].Rating = r.model.Grown(r.people[i].Rating, r.week-r.weeks[i])
		r.people[i].Group = groups[i]
		r.people[i].Comparable = groups[i] == main
	}
	slices.SortStableFunc(r.people, func(x, y Person[K]) int { return cmp.Compare(y.Mu, x.Mu) })
	renumber := map[int]int{}
	for i, p := range r.people {
		n, known := renumber[p.Group]
		if !known {
			n = len(renumber)
			renumber[p.Group] = n
		}
		r.people[i].Group = n
	}
	return r.people
}

// mainGroup is the group with more people than any other, and -1 when no group is that: of two courts that
// never mixed neither is the measure of the other.
func mainGroup(groups []int) int {
	sizes := map[int]int{}
	for _, g := range groups {
		sizes[g]++
	}
	best, size, single := -1, 1, true
	for g := range sizes {
		switch {
		case sizes[g] > size:
			best, size, single = g, sizes[g], true
		case sizes[g] == size:
			single = false
		}
	}
	if !single {
		return -1
	}
	return best
}
