package standings

import (
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// doubles is a game that the first two lost or won by these points.
func doubles(a1, a2, b1, b2 string, a, b int) Result {
	r := Result{A: []string{a1, a2}, B: []string{b1, b2}, ScoreA: a, ScoreB: b}
	switch {
	case a > b:
		r.Winner = -1
	case b > a:
		r.Winner = 1
	}
	return r
}

func singles(a, b string, sa, sb int) Result {
	r := doubles(a, "", b, "", sa, sb)
	r.A, r.B = r.A[:1], r.B[:1]
	return r
}

func order(rows []Row) string {
	var names []string
	for _, r := range rows {
		names = append(names, r.Name)
	}
	return strings.Join(names, " ")
}

func TestTableByHand(t *testing.T) {
	rows := Table([]Result{
		doubles("ann", "bob", "cat", "dan", 11, 4),
		doubles("ann", "cat", "bob", "dan", 11, 9),
		doubles("ann", "dan", "bob", "cat", 7, 11),
	}, nil)
	// ann 2 of 3 +5, bob 2 of 3 +9, cat 2 of 3 -1, dan 0 of 3 -13
	ann, bob, cat := rows[1], rows[0], rows[2]
	if order(rows) != "bob ann cat dan" {
		t.Fatalf("order %s", order(rows))
	}
	if ann.Games != 3 || ann.Wins != 2 || ann.PointsFor != 29 || ann.PointsAgainst != 24 || ann.Difference != 5 {
		t.Errorf("ann %+v", ann)
	}
	if bob.Rank != 1 || cat.Rank != 3 || rows[3].Rank != 4 {
		t.Errorf("ranks %d %d %d", bob.Rank, cat.Rank, rows[3].Rank)
	}
}

func TestUnequalGamesGoByShare(t *testing.T) {
	rows := Table([]Result{
		singles("many", "x", 11, 0), singles("many", "y", 11, 0), singles("many", "z", 0, 11),
		singles("few", "w", 11, 9),
	}, nil)
	if rows[0].Name != "few" && rows[1].Name != "few" {
		t.Errorf("one win of one stands behind two of three: %s", order(rows))
	}
}

func TestTwoLevelGoHeadToHead(t *testing.T) {
	rows := Table([]Result{
		singles("a", "b", 11, 9), singles("b", "c", 11, 0), singles("a", "c", 0, 11), singles("b", "d", 11, 0), singles("c", "d", 0, 11),
		singles("d", "a", 0, 11),
	}, nil)
	// a and b have two wins of three; b's difference is far better, but a beat b.
	if order(rows)[:3] != "a b" || !strings.Contains(rows[0].Why, "head to head against b") {
		t.Errorf("order %s because %q", order(rows), rows[0].Why)
	}
}

func TestThreeInARingPassOnToTheDifference(t *testing.T) {
	rows := Table([]Result{singles("a", "b", 11, 9), singles("b", "c", 11, 2), singles("c", "a", 11, 5)}, nil)
	// each beat one and lost to one: a -4, b +7, c -3
	if order(rows) != "b c a" || !strings.Contains(rows[0].Why, "difference per game") {
		t.Errorf("order %s because %q", order(rows), rows[0].Why)
	}
}

func TestLevelInEverythingSharesTheRankUntilALotIsDrawn(t *testing.T) {
	results := []Result{doubles("a", "b", "c", "d", 11, 3)}
	rows := Table(results, nil)
	if rows[0].Rank != 1 || rows[1].Rank != 1 || rows[2].Rank != 3 {
		t.Errorf("ranks %d %d %d", rows[0].Rank, rows[1].Rank, rows[2].Rank)
	}
	rows = Table(results, []string{"b"})
	if rows[0].Name != "b" || rows[0].Rank != 1 || rows[1].Rank != 2 || rows[0].Why != "drawn by lot" {
		t.Errorf("after the lot %+v", rows[:2])
	}
}

func TestDrawsCountHalf(t *testing.T) {
	rows := Table([]Result{singles("a", "b", 7, 7), singles("a", "c", 11, 0)}, nil)
	if rows[0].Name != "a" || rows[0].Draws != 1 || rows[0].WinShare != 0.75 {
		t.Errorf("%+v", rows[0])
	}
}

// The table does not depend on the order of results, ranks never fall, and win share never rises.
func TestTableIsAWellFormedOrder(t *testing.T) {
	names := []string{"a", "b", "c", "d", "e", "f", "g"}
	rapid.Check(t, func(t *rapid.T) {
		var results []Result
		for range rapid.IntRange(1, 14).Draw(t, "games") {
			p := rapid.Permutation(names).Draw(t, "who")
			results = append(results, doubles(p[0], p[1], p[2], p[3], rapid.IntRange(0, 11).Draw(t, "a"), rapid.IntRange(0, 11).Draw(t, "b")))
		}
		rows := Table(results, nil)
		rand.New(rand.NewPCG(1, rapid.Uint64().Draw(t, "seed"))).Shuffle(len(results), func(i, j int) { results[i], results[j] = results[j], results[i] })
		again := Table(results, nil)
		for i, r := range rows {
			if again[i] != r {
				t.Fatalf("shuffled results give %+v at place %d, not %+v", again[i], i, r)
			}
			if i > 0 && (r.Rank < rows[i-1].Rank || r.WinShare > rows[i-1].WinShare) {
				t.Fatalf("%+v stands behind %+v", r, rows[i-1])
			}
		}
	})
}

func BenchmarkTableOf200(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var results []Result
	for range 600 {
		p := r.Perm(200)
		name := func(i int) string { return string(rune('a'+p[i]/26)) + string(rune('a'+p[i]%26)) }
		results = append(results, doubles(name(0), name(1), name(2), name(3), 11, r.IntN(10)))
	}
	b.ReportAllocs()
	for b.Loop() {
		Table(results, nil)
	}
}
