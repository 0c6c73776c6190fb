package rating_test

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring/rating"
)

func TestRanksOfSmallDesigns(t *testing.T) {
	var file struct {
		Cases []struct {
			Case    string
			Players int
			Games   []struct{ A, B []int }
			Rank    int
			Whole   bool `json:"identifiable_up_to_constant"`
		} `json:"connectedness"`
	}
	readJSON(t, "design.json", &file)
	if len(file.Cases) == 0 {
		t.Fatal("no cases")
	}
	for _, c := range file.Cases {
		var d rating.Design
		for _, g := range c.Games {
			d.Add(g.A, g.B)
		}
		whole := true
		for _, group := range d.Groups() {
			whole = whole && group == 0
		}
		if d.Rank() != c.Rank || d.People() != c.Players || whole != c.Whole {
			t.Errorf("%s: rank %d of %d people, whole %v; want %d of %d, %v", c.Case, d.Rank(), d.People(), whole, c.Rank, c.Players, c.Whole)
		}
	}
}

// In strict mixed doubles men are compared with men and women with women, and nobody across.
func TestStrictMixedDoublesHasTwoGroups(t *testing.T) {
	var d rating.Design
	for x := range 4 {
		for y := range 4 {
			d.Add([]int{x, 4 + y}, []int{(x + 1) % 4, 4 + (y+1)%4})
			d.Add([]int{x, 4 + y}, []int{(x + 1) % 4, 4 + (y+2)%4})
		}
	}
	for p, group := range d.Groups() {
		if group != p/4 {
			t.Errorf("person %d is in group %d", p, group)
		}
	}
	if d.Comparable(0, 4) || !d.Comparable(0, 3) || !d.Comparable(5, 6) || d.Comparable(0, 99) {
		t.Error("the wrong people are comparable")
	}
	d.Add([]int{0, 1}, []int{4, 5})
	if !d.Comparable(0, 4) {
		t.Error("a game that breaks the pattern does not connect the groups")
	}
}

// modulus is a prime: ranks over its field are those over the rationals unless it divides a minor.
const modulus = 2147483629

// rankByElimination is the rank of the games by whole numbers, the slow way.
func rankByElimination(n int, games [][2][]int) int {
	rows := make([][]int64, len(games))
	for i, g := range games {
		rows[i] = make([]int64, n)
		for _, p := range g[0] {
			rows[i][p] = 1
		}
		for _, p := range g[1] {
			rows[i][p] = modulus - 1
		}
	}
	rank := 0
	for column := 0; column < n; column++ {
		pivot := rank
		for pivot < len(rows) && rows[pivot][column] == 0 {
			pivot++
		}
		if pivot == len(rows) {
			continue
		}
		rows[rank], rows[pivot] = rows[pivot], rows[rank]
		inverse := power(rows[rank][column], modulus-2)
		for _, row := range rows[rank+1:] {
			factor := row[column] * inverse % modulus
			for j := column; factor != 0 && j < n; j++ {
				row[j] = (row[j] + (modulus-factor)*rows[rank][j]) % modulus
			}
		}
		rank++
	}
	return rank
}

func power(base, exponent int64) int64 {
	result := int64(1)
	for ; exponent > 0; exponent >>= 1 {
		if exponent&1 == 1 {
			result = result * base % modulus
		}
		base = base * base % modulus
	}
	return result
}

// drawGames draws games among n people who only meet within courts of a few, so that all ranks come up.
func drawGames(t *rapid.T, n int) [][2][]int {
	rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	spread := rapid.IntRange(4, n).Draw(t, "people who mix")
	games := make([][2][]int, rapid.IntRange(1, 3*n).Draw(t, "games"))
	for i := range games {
		from := 0
		if n > spread {
			from = rng.IntN(n-spread+1) / 3 * 3
		}
		p := rng.Perm(min(spread, n-from))
		games[i] = [2][]int{{from + p[0], from + p[1]}, {from + p[2], from + p[3]}}
	}
	return games
}

func TestRankIsThatOfElimination(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(6, 60).Draw(t, "people")
		games := drawGames(t, n)
		var d rating.Design
		d.Add([]int{n - 1}, []int{0}) // everybody is known from the start
		for _, g := range games {
			d.Add(g[0], g[1])
		}
		all := append([][2][]int{{{n - 1}, {0}}}, games...)
		want := rankByElimination(n, all)
		if d.Rank() != want {
			t.Fatalf("the rank is %d, want %d", d.Rank(), want)
		}
		// Two people are comparable exactly when a game between them would tell nothing new.
		p, q := rapid.IntRange(0, n-1).Draw(t, "p"), rapid.IntRange(0, n-1).Draw(t, "q")
		if p == q {
			return
		}
		alike := rankByElimination(n, append(all, [2][]int{{p}, {q}})) == want
		if d.Comparable(p, q) != alike {
			t.Fatalf("%d and %d are comparable: %v, want %v", p, q, d.Comparable(p, q), alike)
		}
	})
}
