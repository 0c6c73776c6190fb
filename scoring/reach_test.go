package scoring_test

import (
	"os"
	"slices"
	"testing"

	"club/quadrille/scoring"
)

const (
	// beyond is how far past the target the endless tail of a game without a cap is followed.
	beyond = 5
	edge   = 21 + beyond
)

// explored is what the engine comes to in all games under some rules, by the scores of A and of B.
type explored struct {
	ends, passes [edge + 1][edge + 1]bool
	seen         [edge][edge][2][3]bool
}

// explore plays every rally both ways from every state, up to the horizon.
func explore(r scoring.Rules, horizon int) *explored {
	out := &explored{}
	out.visit(scoring.Start(r, scoring.A), horizon)
	out.visit(scoring.Start(r, scoring.B), horizon)
	return out
}

func (e *explored) visit(s scoring.State, horizon int) {
	if s.Done {
		e.ends[s.Score.A][s.Score.B] = true
		return
	}
	if max(s.Score.A, s.Score.B) >= horizon {
		return
	}
	seen := &e.seen[s.Score.A][s.Score.B][s.Serving][s.Number]
	if *seen {
		return
	}
	*seen = true
	e.passes[s.Score.A][s.Score.B] = true
	e.visit(s.After(scoring.Rally{Won: scoring.A}), horizon)
	e.visit(s.After(scoring.Rally{Won: scoring.B}), horizon)
}

// starts are the handicap starts that allRules tries: every one with QUADRILLE_LONG=1, which takes ten seconds, and else
// some of each kind.
func starts(r scoring.Rules) (stepA, stepB int) {
	switch {
	case os.Getenv("QUADRILLE_LONG") == "1":
		return 1, 1
	case r.To > 5 && (r.Scoring != scoring.SideOut || r.Singles || r.Cap > r.To+1):
		return r.To, r.To // only 0-0
	}
	return 1 + r.To/4, 1 + r.To/3
}

// allRules is every rule to 21: target, lead, cap, scoring, win on serve, singles, and handicap starts.
func allRules(yield func(scoring.Rules)) {
	for to := 1; to <= 21; to++ {
		for winBy := 1; winBy <= 2; winBy++ {
			for _, limit := range []int{0, to, to + 1, to + 2, to + 3} {
				for kind := range 6 {
					r := scoring.Rules{To: to, WinBy: winBy, Cap: limit, Singles: kind%2 == 1}
					if kind >= 2 {
						r.Scoring = scoring.RallyScoring
						r.WinOnServe = kind >= 4
					}
					stepA, stepB := starts(r)
					for r.StartA = 0; r.StartA < to; r.StartA += stepA {
						for r.StartB = 0; r.StartB < to; r.StartB += stepB {
							yield(r)
						}
					}
				}
			}
		}
	}
}

func TestFinalScoresAreExactlyThoseTheEngineComesTo(t *testing.T) {
	count := 0
	allRules(func(r scoring.Rules) {
		count++
		horizon := r.To + beyond
		reached := explore(r, horizon)
		for a := range horizon {
			for b := range horizon {
				if got := scoring.Ends(r, a, b); got != reached.ends[a][b] {
					t.Fatalf("%v: %d-%d ends the game: %v, by the closed form %v", r, a, b, reached.ends[a][b], got)
				}
				if got := scoring.Passes(r, a, b); got != reached.passes[a][b] {
					t.Fatalf("%v: %d-%d comes up: %v, by the closed form %v", r, a, b, reached.passes[a][b], got)
				}
			}
		}
		if r.StartA == 0 && r.StartB == 0 {
			checkFinals(t, r, reached, horizon)
		}
	})
	t.Logf("%d rules explored", count)
}

// checkFinals makes every final score, or sees it refused.
func checkFinals(t *testing.T, r scoring.Rules, reached *explored, horizon int) {
	t.Helper()
	for a := range horizon {
		for b := range horizon {
			if _, err := r.Final(a, b, scoring.Played); (err == nil) != reached.ends[a][b] {
				t.Fatalf("%v: %d-%d ends the game: %v, and as final score the error is %v", r, a, b, reached.ends[a][b], err)
			}
			if _, err := r.Final(a, b, scoring.Timed); (err == nil) != reached.passes[a][b] {
				t.Fatalf("%v: %d-%d comes up: %v, and as timed the error is %v", r, a, b, reached.passes[a][b], err)
			}
		}
	}
}

func TestNearestScoresAreTheNearestOfAll(t *testing.T) {
	for _, r := range []scoring.Rules{
		{To: 11, WinBy: 2},
		{To: 11, WinBy: 1},
		{To: 15, WinBy: 2, Cap: 17},
		{To: 7, WinBy: 2, StartA: 3},
	} {
		var finals []scoring.Score
		reached := explore(r, edge)
		for a := range edge + 1 {
			for b := range edge + 1 {
				if reached.ends[a][b] {
					finals = append(finals, scoring.Score{A: a, B: b})
				}
			}
		}
		for a := range 20 {
			for b := range 20 {
				checkNearest(t, r, finals, a, b)
			}
		}
	}
}

// checkNearest compares Nearest with a look at every final score of the engine.
func checkNearest(t *testing.T, r scoring.Rules, finals []scoring.Score, a, b int) {
	t.Helper()
	distance := func(s scoring.Score) int { return max(s.A-a, a-s.A) + max(s.B-b, b-s.B) }
	best := distance(slices.MinFunc(finals, func(x, y scoring.Score) int { return distance(x) - distance(y) }))
	near := r.Nearest(a, b)
	if len(near) == 0 || len(near) > 3 {
		t.Fatalf("%v: %d scores near %d-%d", r, len(near), a, b)
	}
	for _, s := range near {
		if !slices.Contains(finals, s) || distance(s) != best {
			t.Errorf("%v: %v is offered for %d-%d, at %d points; the nearest is at %d", r, s, a, b, distance(s), best)
		}
	}
}
