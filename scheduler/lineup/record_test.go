package lineup

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestRecordOfRounds keeps the books of six people on one court, of whom one comes late and one leaves.
func TestRecordOfRounds(t *testing.T) {
	p := nighttest.Club(6, 1, 4)
	p.People[4].Arrive, p.People[0].Leave = 1, 2
	n := night.New(&p)
	l := NewRecord(n)
	for r, out := range [][]night.Player{{5}, {5, 4}, {1}, {2}} {
		l.Enter(n, r, out)
	}
	if want := []int{0, 1, 0, 4, 2, 2}; !slices.Equal(l.Run, want) {
		t.Errorf("games running %v, want %v", l.Run, want)
	}
	if want := []int{0, 1, 1, 0, 1, 2}; !slices.Equal(l.outs, want) {
		t.Errorf("sit-outs %v, want %v", l.outs, want)
	}
	sum := 0.0
	for i := range night.Player(6) {
		sum += l.Behind(i)
	}
	if sum > 1e-9 || sum < -1e-9 {
		t.Errorf("all together are %g sit-outs behind", sum)
	}
	if d := l.Behind(5); d < 0.8 {
		t.Errorf("who sat out twice of five times is behind by %g", d)
	}
}

// TestQueueOrder: who sat out just now plays first, then who sat out beyond a fair share, then who rested last.
func TestQueueOrder(t *testing.T) {
	p := nighttest.Club(7, 1, 6)
	n := night.New(&p)
	for name, c := range map[string]struct {
		outs  [][]night.Player
		first []night.Player // in this order
		last  []night.Player // in any
	}{
		"out just now":             {[][]night.Player{{0, 1, 2}, {3, 4, 5}}, nil, []night.Player{6}},
		"more than a share":        {[][]night.Player{{0, 1, 2}, {0, 1, 3}, {4, 5, 6}}, []night.Player{4, 5, 6}, []night.Player{2, 3}},
		"equal shares, rest later": {[][]night.Player{{0, 1, 2}, {3, 4, 5}, {6, 0, 1}}, []night.Player{0, 1, 6}, []night.Player{2}},
	} {
		l := NewRecord(n)
		for r, out := range c.outs {
			l.Enter(n, r, out)
		}
		var order []night.Player
		for _, u := range queue(n, len(c.outs), l, dice.New(3, 0)) {
			if u.Size() != 1 {
				t.Fatalf("%s: %+v is of two", name, u)
			}
			order = append(order, u.A)
		}
		head := slices.Clone(order[:len(c.first)])
		slices.Sort(head)
		if !slices.Equal(head, c.first) {
			t.Errorf("%s: %v, want %v first", name, order, c.first)
		}
		for _, i := range order[len(order)-len(c.last):] {
			if !slices.Contains(c.last, i) {
				t.Errorf("%s: %v, want %v last", name, order, c.last)
			}
		}
	}
}

// TestQuantum: debts that differ by rounding alone are equal, and others keep their order.
func TestQuantum(t *testing.T) {
	if third := 1.0 / 3; quantum(third+third+third-1) != quantum(0) || quantum(1-2*third) != quantum(third) {
		t.Error("rounding tells")
	}
	if quantum(0.34) <= quantum(0.33) || quantum(-0.1) >= quantum(0) {
		t.Error("a debt is lost")
	}
}
