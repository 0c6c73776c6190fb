package search

import (
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestEveryBeginningIsFair plans nights whose best plans leave room for it, and looks at the sit-outs
// after each round.
func TestEveryBeginningIsFair(t *testing.T) {
	for _, c := range []struct{ people, courts, rounds int }{{18, 4, 9}, {37, 7, 12}, {10, 2, 10}, {22, 5, 8}} {
		p := nighttest.Club(c.people, c.courts, c.rounds)
		rounds := Rounds(t.Context(), p, UsualMoves(&p))
		n := night.New(&p)
		o := newOrder(n, rounds)
		_, uneven := o.cost(rounds)
		orderRounds(n, rounds)
		if twice, after := o.cost(rounds); twice > 0 || after > uneven {
			t.Errorf("%v: ordering again makes it worse: %d benched twice, %d after %d", c, twice, after, uneven)
		}
		t.Logf("%v: off by %d over all beginnings", c, uneven)
		if uneven > c.people {
			t.Errorf("%v: sit-outs on the way are off their fair share by %d", c, uneven)
		}
	}
}
