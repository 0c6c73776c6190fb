package bound

import (
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
	"club/quadrille/scheduler/sitout"
)

// scopeFor is the scope of a night of so many people, courts and rounds on which all are there all the time.
func scopeFor(people, courts, rounds int) *Scope {
	p := nighttest.Club(people, courts, rounds)
	n := night.New(&p)
	games, shapes := make([]int, rounds), make([]night.Shape, rounds)
	for r := range games {
		games[r] = courts
		shapes[r] = night.Shape{Courts: make([]night.Court, courts), Here: people}
	}
	s := NewScope(n, n.Here, games)
	s.FairGames(sitout.FairShares(n, shapes), n.PastOuts())
	s.Rests = true
	return s
}

// TestTenPeople: five games of ten people, each twice, repeat five meetings at least if neighbouring games share nobody.
func TestTenPeople(t *testing.T) {
	s := scopeFor(10, 1, 5)
	if got := s.between(); got != 5 {
		t.Errorf("by rounds %d, want 5", got)
	}
	if got := s.Bounds().Meetings; got != 5 {
		t.Errorf("in all %d, want 5", got)
	}
	s.High[0]++
	if got := s.between(); got != 0 {
		t.Errorf("%d where somebody may have a game more", got)
	}
}

// TestSpreadIsLeast compares with all ways to send units.
func TestSpreadIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := rapid.IntRange(2, 3).Draw(t, "rounds")
		f := newSpread(rounds)
		most := rapid.IntRange(1, 6).Draw(t, "units")
		var arcs [][2]int
		for r := range rounds {
			f.left[r], f.right[r] = most, most
			for q := range rounds {
				if f.cells[r][q] = rapid.IntRange(0, 3).Draw(t, "cells"); f.cells[r][q] > 0 {
					arcs = append(arcs, [2]int{r, q})
				}
			}
		}
		left, right := append([]int(nil), f.left...), append([]int(nil), f.right...)
		bestUnits, best := 0, 0
		var walk func(k, units, cost int)
		walk = func(k, units, cost int) {
			if k == len(arcs) {
				if units > bestUnits || units == bestUnits && cost < best {
					bestUnits, best = units, cost
				}
				return
			}
			r, q := arcs[k][0], arcs[k][1]
			for x := range min(left[r], right[q]) + 1 {
				left[r], right[q] = left[r]-x, right[q]-x
				walk(k+1, units+x, cost+measure.LeastPairs(x, f.cells[r][q]))
				left[r], right[q] = left[r]+x, right[q]+x
			}
		}
		walk(0, 0, 0)
		if got := f.least(); got != best {
			t.Fatalf("%d, want %d for %d units", got, best, bestUnits)
		}
	})
}
