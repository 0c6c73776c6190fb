package search

import (
	"context"

	"club/quadrille/scheduler/design"
)

// mostNear is how many rounds a plan that was found for another night may have more or fewer than this one.
const mostNear = 4

// leaveOutShare is the part of the moves, one of so many, that goes at most into each choice of rounds to leave out.
const leaveOutShare = 16

// fromNear makes boards from plans that were found for nights of so many people and courts, but of a few rounds more
// or fewer. What is too many is left out; what is missing is searched for by itself, the rest of the plan as it stands.
func (s *search) fromNear(ctx context.Context, drawn *board) (boards []*board) {
	people, games, rounds := s.n.People, len(drawn.shapes[0].Courts), len(drawn.shapes)
	for more := 1; more <= mostNear; more++ {
		if plan, ok := design.Wheel(people, games, rounds+more); ok {
			if b := s.leaveOut(drawn, plan); b != nil {
				boards = append(boards, b)
			}
			break
		}
	}
	for fewer := 1; fewer <= min(mostNear, rounds-1); fewer++ {
		if plan, ok := design.Wheel(people, games, rounds-fewer); ok {
			boards = append(boards, s.extend(ctx, drawn, plan))
			break
		}
	}
	return boards
}

// leaveOut makes a board from a design of a few rounds too many: those stay with which sit-outs are fairest.
func (s *search) leaveOut(drawn *board, plan [][]design.Table) (best *board) {
	for try := range spareTries {
		t, ok := newSpare(s.n, drawn, plan, s.n.People, try, s.d)
		if !ok {
			return best
		}
		tried := t.share(s.d, s.moves/leaveOutShare/spareEffort)
		s.moves -= spareEffort * tried
		t.b.recount()
		if best == nil || t.b.rest+t.b.play < best.rest+best.play {
			best = t.b
		}
		if best.rest == 0 {
			break
		}
	}
	return best
}

// extend makes a board from a design of a few rounds too few: who sits out in the others follows from who did so before,
// and who meets is searched for in them alone, so that nothing of the design is lost.
func (s *search) extend(ctx context.Context, drawn *board, plan [][]design.Table) *board {
	n := s.n
	b, names := drawn.blank(), names(n, n.People, nil, s.d)
	outs, last := make([]int, n.People), make([]bool, n.People)
	for r := range b.shapes {
		if r < len(plan) {
			b.seatTables(r, plan[r], names, outs, last)
		} else {
			b.seatTables(r, nil, nil, outs, last)
		}
	}
	b.recount()
	a := newAnnealer(b, s.d, 0, 0)
	a.m.from(len(plan))
	s.moves -= a.run(ctx, s.moves/trials, hotFew, coldFew)
	a.restore()
	return b
}
