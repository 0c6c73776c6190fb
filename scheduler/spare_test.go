package scheduler

import (
	"fmt"
	"testing"

	"club/quadrille/scheduler/design"
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
			p := club(c.people, c.courts, c.rounds)
			n := newNight(&p)
			s := &search{n: n, d: newDice(1, 1), most: n.mostCourts(), moves: defaultMoves}
			b := s.fromSpare(s.draw())
			if b == nil {
				t.Fatal("no board")
			}
			if got := b.score(); got.meetings != 0 || got.unfair != 0 || got.twice != 0 {
				t.Errorf("meetings %d, unfair %d, benched twice %d; want none", got.meetings, got.unfair, got.twice)
			}
			if wrong := Audit(p, b.rounds()); len(wrong) > 0 {
				t.Error(wrong[0].Text)
			}
		})
	}
	p := club(31, 4, 6)
	n := newNight(&p)
	s := &search{n: n, d: newDice(1, 1), most: n.mostCourts(), moves: defaultMoves}
	if s.fromSpare(s.draw()) != nil {
		t.Error("half of the people sit out, and still tables were chosen")
	}
}

// The search keeps the weight of sitting out step by step; it must be what a recount finds.
func TestSpareTablesKeepTheirWeight(t *testing.T) {
	p := club(39, 8, 12)
	n := newNight(&p)
	s := &search{n: n, d: newDice(1, 1), most: n.mostCourts(), moves: defaultMoves}
	plans := design.Unmet(40, 8, 12)
	if len(plans) == 0 {
		t.Fatal("no design for 40 people")
	}
	spare, ok := n.newSpare(s.draw(), plans[0], 40, 0, s.d)
	if !ok {
		t.Fatal("too few tables are complete")
	}
	spare.share(s.d)
	kept := spare.b.rest
	spare.b.recount()
	if spare.b.rest != kept {
		t.Errorf("rest weighs %d by steps and %d by a recount", kept, spare.b.rest)
	}
}

// TestSpareTablesOweNoMoves: sit-outs cannot come out fair where nobody may play nine games running, and the
// tries then take all moves, but none that there are not.
func TestSpareTablesOweNoMoves(t *testing.T) {
	p := club(64, 15, 20)
	p.MaxRun = 8
	for _, moves := range []int{1, 250_000} {
		n := newNight(&p)
		s := &search{n: n, d: newDice(1, 1), most: n.mostCourts(), moves: moves}
		if s.fromSpare(s.draw()) == nil {
			t.Fatal("no board")
		}
		if s.moves < 0 || s.moves >= moves {
			t.Errorf("of %d moves %d are left", moves, s.moves)
		}
	}
}
