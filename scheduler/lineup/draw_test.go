package lineup

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// mostFull is the most courts that can have four people each who may play there, by trying all.
func mostFull(n *night.Night, people []night.Player, free []int) int {
	if len(people) == 0 {
		full := 0
		for _, left := range free {
			if left != 0 && left != 4 {
				return -1 // half a game
			}
			full += night.One(left == 0)
		}
		return full
	}
	best := mostFull(n, people[1:], free)
	for c := range free {
		if free[c] > 0 && n.MayPlayOn(people[0], night.Court(c)) {
			free[c]--
			best = max(best, mostFull(n, people[1:], free))
			free[c]++
		}
	}
	return best
}

// TestDrawFillsWhatCanBeFilled: where people are bound to courts as many of two courts are full as can be, with people who may play
// there; whoever plays too long without a rest sits out; and everybody who is there plays or is out.
func TestDrawFillsWhatCanBeFilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.Club(rapid.IntRange(4, 9).Draw(t, "people"), 2, 3)
		for i := range p.People {
			p.People[i].Courts = [][]night.Court{nil, {0}, {1}}[rapid.IntRange(0, 2).Draw(t, "courts")]
		}
		n := night.New(&p)
		most := rapid.IntRange(0, 2).Draw(t, "most")
		l := Draw(n, 0, most, NewRecord(n), dice.New(1, 0))
		if want := min(most, mostFull(n, n.Here[0], []int{4, 4})); len(l.Courts) != want {
			t.Fatalf("%d courts full, %d can be", len(l.Courts), want)
		}
		seen := slices.Clone(l.Out)
		for k, units := range l.Units {
			if len(units) != 4 {
				t.Fatalf("%d people on a court", len(units))
			}
			for _, u := range units {
				seen = append(seen, u.A)
				if !n.MayPlayOn(u.A, l.Courts[k]) {
					t.Errorf("%d plays on court %d", u.A, l.Courts[k])
				}
			}
		}
		slices.Sort(seen)
		if !slices.Equal(seen, n.Here[0]) {
			t.Errorf("%v are there, %v in the line-up", n.Here[0], seen)
		}
	})
}

// TestDrawKeepsPartnersAndRests: two who only play together sit on one court or are both out, and after the longest run
// a person sits out.
func TestDrawKeepsPartnersAndRests(t *testing.T) {
	p := nighttest.Club(11, 2, 6)
	p.Together = []night.Pair{{A: 0, B: 7}, {A: 3, B: 4}}
	p.MaxRun = 2
	n := night.New(&p)
	l := NewRecord(n)
	for r := range 6 {
		x := Draw(n, r, 2, l, dice.New(uint64(r), 0))
		if len(x.Courts) == 0 {
			t.Fatalf("round %d: nobody plays", r)
		}
		for _, units := range x.Units {
			size := 0
			for _, u := range units {
				size += u.Size()
				if u.B == night.Nobody && n.Mate[u.A] != night.Nobody || u.B != night.Nobody && n.Mate[u.A] != u.B {
					t.Errorf("round %d: %+v", r, u)
				}
			}
			if size != 4 {
				t.Errorf("round %d: %d on a court", r, size)
			}
		}
		l.Enter(n, r, x.Out)
		if slices.Max(l.Run) > p.MaxRun {
			t.Errorf("round %d: runs %v", r, l.Run)
		}
	}
}

// TestRelieve: those who now may play take the places of those who sit out now, on mixed nights of their own group.
func TestRelieve(t *testing.T) {
	for _, mixed := range []bool{false, true} {
		p := nighttest.Club(8, 1, 1)
		if mixed {
			p.Format = night.Mixed
			for i := range p.People {
				p.People[i].Group = []string{"x", "y"}[i%2]
			}
		}
		n := night.New(&p)
		var units []Unit
		for i := range night.Player(4) {
			units = append(units, Unit{A: i, B: night.Nobody})
		}
		l := Lineup{Courts: []night.Court{0}, Units: [][]Unit{units}, Out: []night.Player{4, 5, 6, 7}}
		l.Relieve(n, []night.Player{0, 3, 6, 5})
		var play []night.Player
		for _, u := range l.Units[0] {
			play = append(play, u.A)
		}
		if want := []night.Player{4, 1, 2, 7}; !slices.Equal(play, want) {
			t.Errorf("mixed %v: %v play, want %v", mixed, play, want)
		}
		if !slices.Equal(l.Out, []night.Player{0, 3, 6, 5}) {
			t.Errorf("out %v", l.Out)
		}
	}
}
