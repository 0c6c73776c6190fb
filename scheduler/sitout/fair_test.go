package sitout

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// benches calls yield with every way to choose who sits out of one court in each round.
func benches(n *night.Night, r int, out [][]night.Player, yield func([][]night.Player)) {
	if r == len(n.Here) {
		yield(out)
		return
	}
	here := n.Here[r]
	for set := range 1 << len(here) {
		var bench []night.Player
		for k, i := range here {
			if set>>k&1 == 1 {
				bench = append(bench, i)
			}
		}
		if len(bench) == len(here)-4 {
			benches(n, r+1, append(out, bench), yield)
		}
	}
}

// unfairness is the sum of squared deviations from what is owed, and the difference among those who are there throughout.
func unfairness(n *night.Night, owed []float64, out [][]night.Player) (sum float64, spread int) {
	count := n.PastOuts()
	for _, bench := range out {
		for _, i := range bench {
			count[i]++
		}
	}
	var always []int
	for i, k := range count {
		sum += math.Pow(float64(k)-owed[i], 2)
		if p := n.Problem.People[i]; p.Arrive == 0 && p.Leave == 0 {
			always = append(always, k)
		}
	}
	if len(always) > 0 {
		spread = slices.Max(always) - slices.Min(always)
	}
	return sum, spread
}

// TestFairestOfAll tries every way to sit out on tiny nights with people who come late or leave early: none is fairer
// than what chains of exchanges find, whatever they begin with, unless it leaves somebody without a game.
func TestFairestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.Club(rapid.IntRange(5, 6).Draw(t, "people"), 1, rapid.IntRange(1, 3).Draw(t, "rounds"))
		if p.Rounds > 1 && rapid.Bool().Draw(t, "late") {
			p.People[0].Arrive = 1
		}
		if p.Rounds > 1 && len(p.People) > 5 && rapid.Bool().Draw(t, "leaves") {
			p.People[1].Leave = p.Rounds - 1
		}
		if p.People[0].Arrive == 0 && rapid.Bool().Draw(t, "history") { // 0 sat out before, and a round more is to come
			p.History = []night.Round{{Games: []night.Game{{A: night.Team{1, 2}, B: night.Team{3, 4}}}}}
			for i := range night.Player(len(p.People)) {
				if i == 0 || i > 4 {
					p.History[0].Out = append(p.History[0].Out, i)
				}
			}
			if p.People[1].Leave > 0 {
				p.People[1].Leave++
			}
		}
		n := night.New(&p)
		var all [][][]night.Player
		benches(n, n.First, nil, func(out [][]night.Player) { all = append(all, slices.Clone(out)) })
		start := all[rapid.IntRange(0, len(all)-1).Draw(t, "start")]
		out := make([][]night.Player, len(start))
		for r := range start {
			out[r] = slices.Clone(start[r])
		}
		shapes := make([]night.Shape, p.Rounds)
		for r := range shapes {
			shapes[r] = night.Shape{Courts: []night.Court{0}, Here: len(n.Here[n.First+r])}
		}
		shares := FairShares(n, shapes)
		Fairest(n, shares, out)
		sum, spread := unfairness(n, shares.Owed, out)
		for r, bench := range out {
			if len(bench) != len(n.Here[n.First+r])-4 {
				t.Fatalf("round %d: %v on the bench", r, bench)
			}
		}
		idle := func(out [][]night.Player) (none bool) {
			for i := range night.Player(n.People) {
				played := n.First - n.PastOuts()[i]
				for r, bench := range out {
					played += night.One(slices.Contains(n.Here[n.First+r], i) && !slices.Contains(bench, i))
				}
				none = none || played == 0
			}
			return none
		}
		for _, other := range all {
			s, w := unfairness(n, shares.Owed, other)
			if !idle(other) && (s < sum-1e-9 || s < sum+1e-9 && w < spread) {
				t.Fatalf("%v: %g and %d, but %v has %g and %d", out, sum, spread, other, s, w)
			}
		}
	})
}

// TestSharesByHand: what is owed is rounded to the numbers beside it, and whole numbers stay, whatever rounding left.
func TestSharesByHand(t *testing.T) {
	third := 1.0 / 3
	s := (&Shares{Owed: []float64{0, third + third + third, 1.25, 2 - 1e-12}}).Rounded()
	if !slices.Equal(s.Low, []int{0, 1, 1, 2}) || !slices.Equal(s.High, []int{0, 1, 2, 2}) {
		t.Errorf("%v to %v", s.Low, s.High)
	}
	for _, c := range []struct{ i, outs, want int }{{0, 1, 1}, {1, 0, 1}, {2, 1, 0}, {2, 2, 0}, {2, 0, 1}, {2, 4, 2}} {
		if got := s.Excess(int32(c.i), c.outs); got != c.want {
			t.Errorf("%d sit-outs of somebody who owes %g: off by %d, want %d", c.outs, s.Owed[c.i], got, c.want)
		}
	}
}
