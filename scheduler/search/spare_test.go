package search

import (
	"fmt"
	"slices"
	"testing"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// Nights with fewer courts than a design has tables: the tables left out must be such that everybody
// sits out as often as is fair and never twice running, while still nobody meets twice.
func TestSpareTablesShareSitOuts(t *testing.T) {
	for _, c := range []struct{ people, courts, rounds int }{
		{48, 11, 15}, // one table of twelve to spare
		{41, 9, 13},  // one guest among forty, and one table of ten to spare
		{39, 8, 13},  // a design for forty without one of them, and a table to spare
	} {
		t.Run(fmt.Sprintf("%d-%d-%d", c.people, c.courts, c.rounds), func(t *testing.T) {
			p := nighttest.Club(c.people, c.courts, c.rounds)
			n := night.New(&p)
			s := &search{n: n, d: dice.New(1, 1), most: mostCourts(n), w: &measure.Strict, moves: defaultMoves}
			b := s.fromSpare(s.draw())
			if b == nil {
				t.Fatal("no board")
			}
			if got := b.score(); got[measure.Meetings] != 0 || got[measure.Unfair] != 0 || got[measure.Twice] != 0 {
				t.Errorf("meetings %d, unfair %d, benched twice %d; want none", got[measure.Meetings], got[measure.Unfair], got[measure.Twice])
			}
			for r := range b.shapes {
				row := slices.Clone(b.row(r))
				slices.Sort(row)
				if !slices.Equal(row, slices.Compact(slices.Clone(row))) || len(row) != c.people {
					t.Errorf("round %d seats somebody twice or not at all: %v", r+1, row)
				}
			}
		})
	}
	p := nighttest.Club(31, 4, 6)
	n := night.New(&p)
	s := &search{n: n, d: dice.New(1, 1), most: mostCourts(n), w: &measure.Strict, moves: defaultMoves}
	if s.fromSpare(s.draw()) != nil {
		t.Error("half of the people sit out, and still tables were chosen")
	}
}

// The search keeps the weight of sitting out step by step; it must be what a recount finds.
func TestSpareTablesKeepTheirWeight(t *testing.T) {
	p := nighttest.Club(39, 8, 12)
	n := night.New(&p)
	s := &search{n: n, d: dice.New(1, 1), most: mostCourts(n), w: &measure.Strict, moves: defaultMoves}
	plans := design.Unmet(40, 8, 12)
	if len(plans) == 0 {
		t.Fatal("no design for 40 people")
	}
	spare, ok := newSpare(n, s.draw(), plans[0], 40, 0, s.d)
	if !ok {
		t.Fatal("too few tables are complete")
	}
	spare.share(s.d, 1<<20)
	kept := spare.b.rest
	spare.b.recount()
	if spare.b.rest != kept {
		t.Errorf("rest weighs %d by steps and %d by a recount", kept, spare.b.rest)
	}
}

// TestSpareTablesOweNoMoves: sit-outs cannot come out fair where nobody may play nine games running, and the
// tries then take all moves, but none that there are not.
func TestSpareTablesOweNoMoves(t *testing.T) {
	p := nighttest.Club(64, 15, 20)
	p.MaxRun = 8
	for _, moves := range []int{1, 250_000} {
		n := night.New(&p)
		s := &search{n: n, d: dice.New(1, 1), most: mostCourts(n), w: &measure.Strict, moves: moves}
		if s.fromSpare(s.draw()) == nil {
			t.Fatal("no board")
		}
		if s.moves < 0 || s.moves >= moves {
			t.Errorf("of %d moves %d are left", moves, s.moves)
		}
	}
}
