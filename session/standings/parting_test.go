package standings

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

// TestReasonsByHand: each criterion, with its figures.
func TestReasonsByHand(t *testing.T) {
	for _, c := range []struct {
		name    string
		results []Result
		lots    []string
		want    []string // of the rows above the last
	}{
		{"wins", []Result{singles("ann", "bob", 11, 3)}, nil, []string{"before bob: 1 of 1 won to 0 of 1"}},
		{"draws are halves", []Result{singles("a", "b", 7, 7), singles("a", "c", 11, 0)}, nil, []string{
			"before b: 1.5 of 2 won to 0.5 of 1", "before c: 0.5 of 1 won to 0 of 1",
		}},
		{"head to head", []Result{
			singles("a", "b", 11, 9), singles("b", "c", 11, 0), singles("c", "a", 11, 0), singles("c", "d", 0, 11), singles("a", "d", 11, 0), singles("b", "d", 11, 0),
		}, nil, []string{"before b: level, and won 1 of 1 against each other", "before d: 2 of 3 won to 1 of 3", "before c: level, and won 1 of 1 against each other"}},
		{"difference", []Result{doubles("a", "b", "c", "d", 11, 9), doubles("a", "c", "b", "d", 11, 3), doubles("a", "d", "b", "c", 11, 2)}, nil, []string{
			"before d: 3 of 3 won to 1 of 3", "before c: same wins, -1 points to -3", "before b: same wins, -3 points to -15",
		}},
		{"level", []Result{doubles("a", "b", "c", "d", 11, 3)}, nil, []string{"level with b", "before c: 1 of 1 won to 0 of 1", "level with d"}},
		{"lot", []Result{doubles("a", "b", "c", "d", 11, 3)}, []string{"b"}, []string{
			"before a: level, drawn by lot", "before c: 1 of 1 won to 0 of 1", "level with d",
		}},
	} {
		rows, parted := Table(c.results, c.lots), Partings(c.results, c.lots)
		for i, want := range c.want {
			if got := parted[i].Words(rows[i+1].Name); got != want {
				t.Errorf("%s: %s stands %q, want %q", c.name, rows[i].Name, got, want)
			}
		}
	}
	few := Parting{By: ByDifference, Own: Figures{2, 2, 6}, Next: Figures{4, 4, 8}}
	if got := few.Words("Wim"); got != "before Wim: same win share, +3.0 points a game to +2.0" {
		t.Errorf("with unequal games: %q", got)
	}
	same := Parting{By: ByDifference, Own: Figures{4, 4, 12}, Next: Figures{4, 4, 9}}
	if got := same.Words("Wim"); got != "before Wim: same wins, +12 points to +9" {
		t.Errorf("with as many games: %q", got)
	}
}

// TestReasonsHold: over random results the figures of a reason are in favour of the upper row, and rows that
// share a place are called level.
func TestReasonsHold(t *testing.T) {
	names := []string{"a", "b", "c", "d", "e", "f", "g"}
	rapid.Check(t, func(t *rapid.T) {
		var results []Result
		for range rapid.IntRange(1, 14).Draw(t, "games") {
			p := rapid.Permutation(names).Draw(t, "who")
			results = append(results, doubles(p[0], p[1], p[2], p[3], rapid.IntRange(0, 11).Draw(t, "a"), rapid.IntRange(0, 11).Draw(t, "b")))
		}
		lots := rapid.SliceOfDistinct(rapid.SampledFrom(names), func(s string) string { return s }).Draw(t, "lots")
		rows, parted := Table(results, lots), Partings(results, lots)
		for i := range rows[:len(rows)-1] {
			p, level := parted[i], rows[i].Rank == rows[i+1].Rank
			if (p.By == Level) != level {
				t.Fatalf("%s and %s have places %d and %d, and are parted by %d", rows[i].Name, rows[i+1].Name, rows[i].Rank, rows[i+1].Rank, p.By)
			}
			more := map[Criterion]int{
				ByWinShare:       ratio{p.Own.Points, p.Own.Games}.compare(ratio{p.Next.Points, p.Next.Games}),
				ByHeadToHead:     ratio{p.Own.Points, p.Own.Games}.compare(ratio{p.Next.Points, p.Next.Games}),
				ByDifference:     ratio{p.Own.Difference, p.Own.Games}.compare(ratio{p.Next.Difference, p.Next.Games}),
				ByHeadDifference: ratio{p.Own.Difference, p.Own.Games}.compare(ratio{p.Next.Difference, p.Next.Games}),
				Level:            1,
				ByLot:            1,
			}[p.By]
			if more <= 0 {
				t.Fatalf("%s stands above %s although %s", rows[i].Name, rows[i+1].Name, fmt.Sprintf("%+v", p))
			}
			if p.By == ByWinShare && p.Own != rows[i].figures() {
				t.Fatalf("the figures of %s are %+v, and the table has %+v", rows[i].Name, p.Own, rows[i])
			}
		}
	})
}
