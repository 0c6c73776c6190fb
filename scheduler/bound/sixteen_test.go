package bound

import (
	"testing"

	"club/quadrille/scheduler/night"
)

// TestSixteen tries what the argument for sixteen people says: one number of games of each kind is possible alone,
// and no graph of eight people with three neighbours each has three fours as it asks for.
func TestSixteen(t *testing.T) {
	for n0 := range 19 {
		for n1 := range 19 - n0 {
			for n2 := range 19 - n0 - n1 {
				n3 := 18 - n0 - n1 - n2
				if n1+2*n2+3*n3 == 40 && n2+3*n3 == 28 && [4]int{n0, n1, n2, n3} != [4]int{0, 2, 10, 6} {
					t.Errorf("%d, %d, %d, %d games are possible too", n0, n1, n2, n3)
				}
			}
		}
	}
	graphs, most := 0, 0
	var g [8][8]bool
	var degree [8]int
	var choose func(a, b int)
	choose = func(a, b int) {
		switch {
		case a == 8:
			graphs++
			most = max(most, almostAll(g))
			return
		case b == 8:
			if degree[a] == 3 {
				choose(a+1, a+2)
			}
			return
		}
		choose(a, b+1)
		if degree[a] < 3 && degree[b] < 3 {
			g[a][b], g[b][a] = true, true
			degree[a]++
			degree[b]++
			choose(a, b+1)
			degree[a]--
			degree[b]--
			g[a][b], g[b][a] = false, false
		}
	}
	choose(0, 1)
	if graphs != 19355 { // OEIS A002829
		t.Errorf("%d graphs, want 19355", graphs)
	}
	if most > 2 {
		t.Errorf("a graph has %d fours", most)
	}
}

// almostAll counts the sets of four of whom just two are no neighbours.
func almostAll(g [8][8]bool) (count int) {
	for a := range 8 {
		for b := range a {
			for c := range b {
				for d := range c {
					edges := 0
					for _, e := range [6]bool{g[a][b], g[a][c], g[a][d], g[b][c], g[b][d], g[c][d]} {
						edges += night.One(e)
					}
					count += night.One(edges == 5)
				}
			}
		}
	}
	return count
}

// TestSixteenPeople: the bound is there on the night of the argument and on no other.
func TestSixteenPeople(t *testing.T) {
	for _, tt := range []struct{ people, courts, rounds, want int }{{16, 3, 6, 1}, {16, 3, 5, 0}, {16, 4, 5, 0}, {17, 3, 6, 0}} {
		s := scopeFor(tt.people, tt.courts, tt.rounds)
		s.Rests = false
		if got := s.Bounds().Meetings; got != tt.want {
			t.Errorf("%d people, %d courts, %d rounds: %d, want %d", tt.people, tt.courts, tt.rounds, got, tt.want)
		}
		s.Low[0] = 0
		if got := s.sixteen(); got != 0 {
			t.Errorf("%d people with uneven sit-outs: %d", tt.people, got)
		}
	}
}
