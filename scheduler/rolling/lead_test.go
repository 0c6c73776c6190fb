package rolling

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
)

// TestWhoIsPutFirstIsInTheNextFour, and who is pinned is there as partners, however short they have waited.
func TestWhoIsPutFirstIsInTheNextFour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := moment(rapid.IntRange(5, 40).Draw(t, "people"))
		r.ByWait = rapid.Bool().Draw(t, "by wait")
		r.Seed = rapid.Uint64().Draw(t, "seed")
		var ids []night.Player
		for _, w := range r.Waiting {
			ids = append(ids, w.Player)
		}
		who := rapid.Permutation(ids).Draw(t, "who")
		r.First = who[:rapid.IntRange(0, 2).Draw(t, "first")]
		pinned := rapid.Bool().Draw(t, "pinned")
		if pair := (night.Pair{A: who[2], B: who[3]}); pinned {
			r.Together = []night.Pair{{A: who[2], B: who[4], Times: 2}} // a wish waits for another game
			r.Pinned = []night.Pair{pair}
		}
		g, err := Next(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range r.First {
			if !slices.Contains(g.Players(), i) {
				t.Fatalf("%d was put first and is not in %v", i, g)
			}
		}
		if pinned && !g.Partners(who[2], who[3]) {
			t.Fatalf("%v and %v are no partners in %v", who[2], who[3], g)
		}
	})
}

// TestMorePutFirstThanOneGameHolds: those decided on earliest play, the others head the queue after that.
func TestMorePutFirstThanOneGameHolds(t *testing.T) {
	r := moment(12)
	n := len(r.Waiting)
	last := func(k int) night.Player { return r.Waiting[n-k].Player }
	r.Pinned = []night.Pair{{A: last(1), B: last(2)}}
	r.First = []night.Player{last(3), last(4), last(5)}
	g, err := Next(r)
	if err != nil {
		t.Fatal(err)
	}
	for k := 1; k <= 4; k++ {
		if !slices.Contains(g.Players(), last(k)) {
			t.Errorf("%d is not in %v", last(k), g)
		}
	}
}

// TestUnpinnableSaysWhy two people cannot be pinned, and then they are called as anybody.
func TestUnpinnableSaysWhy(t *testing.T) {
	r := moment(10)
	r.NeverMeet = []night.Pair{{A: 0, B: 1}}
	r.NeverPartner = []night.Pair{{A: 0, B: 2}}
	r.Together = []night.Pair{{A: 3, B: 4}}
	r.Waiting = slices.DeleteFunc(r.Waiting, func(w Waiting) bool { return w.Player == 9 })
	for _, c := range []struct {
		pair night.Pair
		want string
	}{
		{night.Pair{A: 0, B: 1}, "never meet"},
		{night.Pair{A: 0, B: 2}, "never be partners"},
		{night.Pair{A: 3, B: 5}, "always play together"},
		{night.Pair{A: 5, B: 9}, "does not wait"},
		{night.Pair{A: 5, B: 5}, "same person"},
		{night.Pair{A: 5, B: 99}, "not here"},
	} {
		if why := r.Unpinnable(c.pair); !strings.Contains(why, c.want) {
			t.Errorf("%v: %q, want %q", c.pair, why, c.want)
		}
		with := r
		with.Pinned = []night.Pair{c.pair}
		g, err := Next(r)
		h, same := Next(with)
		if err != nil || same != nil || g != h {
			t.Errorf("%v: %v %v and %v %v", c.pair, g, err, h, same)
		}
	}
}
