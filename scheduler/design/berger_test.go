package design

import (
	"strconv"
	"testing"
)

func TestBergerTablesAsPrinted(t *testing.T) {
	var printed map[string][][][2]int
	load(t, "berger.json", &printed)
	for name, want := range printed {
		n, err := strconv.Atoi(name)
		if err != nil {
			t.Fatal(err)
		}
		got := Berger(n)
		if len(got) != len(want) {
			t.Fatalf("Berger(%d) has %d rounds, printed are %d", n, len(got), len(want))
		}
		for r := range want {
			if len(got[r]) != len(want[r]) {
				t.Fatalf("Berger(%d), round %d has %d games, printed are %d", n, r+1, len(got[r]), len(want[r]))
			}
			for i, g := range want[r] {
				if got[r][i] != [2]int{g[0] - 1, g[1] - 1} {
					t.Errorf("Berger(%d), round %d, game %d is %v, printed is %v (from 1)", n, r+1, i+1, got[r][i], g)
				}
			}
		}
	}
}

func TestBergerMeetsEverybodyOnce(t *testing.T) {
	for n := 0; n <= 60; n++ {
		met := map[[2]int]int{}
		home := make([]int, n)
		for r, round := range Berger(n) {
			busy := make([]bool, n)
			for _, g := range round {
				if busy[g[0]] || busy[g[1]] || g[0] == g[1] {
					t.Errorf("Berger(%d), round %d: %v while busy", n, r+1, g)
				}
				busy[g[0]], busy[g[1]] = true, true
				met[[2]int{min(g[0], g[1]), max(g[0], g[1])}]++
				home[g[0]]++
			}
		}
		if want := n * (n - 1) / 2; len(met) != want {
			t.Errorf("Berger(%d): %d pairs meet, not %d", n, len(met), want)
		}
		for pair, times := range met {
			if times != 1 {
				t.Errorf("Berger(%d): %v meet %d times", n, pair, times)
			}
		}
		for c, h := range home {
			if d := 2*h - (n - 1); d < -1 || d > 1 {
				t.Errorf("Berger(%d): contestant %d is at home %d times of %d", n, c, h, n-1)
			}
		}
	}
}
