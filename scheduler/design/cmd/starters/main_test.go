package main

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scheduler/design"
)

func TestListsEveryStarter(t *testing.T) {
	var out strings.Builder
	if err := (options{}).run(&out); err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Count(out.String(), "\n"), len(design.Starters())+len(design.Wheels()); got != want {
		t.Errorf("%d lines for %d starters and wheels", got, want)
	}
}

// TestFindsStartersAgain searches some of each kind; anneal stops only at price 0, and the price is
// checked against the design in TestStoredStartersAreRight.
func TestFindsStartersAgain(t *testing.T) {
	for _, people := range []int{12, 20, 48, 57, 93} {
		var out strings.Builder
		o := options{people: people, seed: 1, tries: 40, moves: 1_000_000}
		if err := o.run(&out); err != nil {
			t.Errorf("%d people: %v", people, err)
		}
	}
	var out strings.Builder
	if err := (options{matrix: 12, seed: 1, tries: 10, moves: 1_000_000}).run(&out); err != nil {
		t.Error(err)
	}
}

// TestStoredStartersAreRight puts each stored starter into the puzzle: nothing may be wrong with it,
// and something must be with a disturbed one.
func TestStoredStartersAreRight(t *testing.T) {
	for _, s := range design.Starters() {
		rng := rand.New(rand.NewPCG(1, 1))
		p := newPuzzle(s, rng)
		if p.cost == 0 {
			t.Errorf("%s %d: a random arrangement costs nothing", s.Kind, s.People)
		}
		for i := range p.tables {
			p.count(i, -1)
		}
		p.tables = nil
		for round, tables := range s.Bases {
			for _, seats := range tables {
				p.tables = append(p.tables, table{seats, images(s, round, seats), round})
				p.count(len(p.tables)-1, 1)
			}
		}
		if p.cost != 0 {
			t.Errorf("%s %d: the stored starter costs %d", s.Kind, s.People, p.cost)
		}
	}
}

// images is how many tables, translations apart, a base round's symmetry makes of one.
func images(s design.Starter, round int, seats design.Table) int {
	if s.Period != nil {
		return 1
	}
	sorted := func(t design.Table) design.Table {
		slices.Sort(t[:])
		return t
	}
	n := 1
	for t := s.Turn(round, seats); sorted(t) != sorted(seats); t = s.Turn(round, t) {
		n++
	}
	return n
}

func TestSearchThatFailsSaysSo(t *testing.T) {
	var out strings.Builder
	o := options{people: 57, seed: 1, tries: 1, moves: 1}
	if err := o.run(&out); err == nil || !strings.Contains(err.Error(), "no whist starter for 57 people in 1 tries") {
		t.Errorf("error %v", err)
	}
	if err := (options{matrix: 3}).run(&out); err == nil {
		t.Error("a matrix of order 3 is no error")
	}
}
