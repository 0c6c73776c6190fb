package scheduler

import "testing"

// TestEveryBeginningIsFair plans nights whose best plans leave room for it, and looks at the sit-outs
// after each round.
func TestEveryBeginningIsFair(t *testing.T) {
	for _, c := range []struct{ people, courts, rounds int }{{18, 4, 9}, {37, 7, 12}, {10, 2, 10}, {22, 5, 8}} {
		p := club(c.people, c.courts, c.rounds)
		rounds := mustPlan(t, p, Budget{})
		n := newNight(&p)
		o := n.newOrder(rounds)
		_, uneven := o.cost(rounds)
		n.orderRounds(rounds)
		if twice, after := o.cost(rounds); twice > 0 || after > uneven {
			t.Errorf("%v: ordering again makes it worse: %d benched twice, %d after %d", c, twice, after, uneven)
		}
		t.Logf("%v: off by %d over all beginnings", c, uneven)
		if uneven > c.people {
			t.Errorf("%v: sit-outs on the way are off their fair share by %d", c, uneven)
		}
	}
}
