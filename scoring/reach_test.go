package scoring_test

import (
	"fmt"
	"slices"
	"testing"

	"club/quadrille/scoring"
)

// beyond is how far past the target the endless tail of a game without a cap is followed.
const beyond = 5

// explored is what the engine comes to in all games under some rules.
type explored struct {
	ends, passes map[scoring.Score]bool
}

// explore plays every rally both ways from every state, up to the horizon.
func explore(r scoring.Rules, horizon int) explored {
	type spot struct {
		score   scoring.Score
		serving scoring.Side
		number  int
	}
	out := explored{map[scoring.Score]bool{}, map[scoring.Score]bool{}}
	seen := map[spot]bool{}
	var visit func(s scoring.State)
	visit = func(s scoring.State) {
		if s.Done {
			out.ends[s.Score] = true
			return
		}
		at := spot{s.Score, s.Serving, s.Number}
		if seen[at] || max(s.Score.A, s.Score.B) >= horizon {
			return
		}
		seen[at] = true
		out.passes[s.Score] = true
		visit(s.After(scoring.Rally{Won: scoring.A}))
		visit(s.After(scoring.Rally{Won: scoring.B}))
	}
	visit(scoring.Start(r, scoring.A))
	visit(scoring.Start(r, scoring.B))
	return out
}

// allRules is every rule to 21: target, lead, cap, scoring, singles, and handicap starts for the shorter
// games, where each kind of start comes up already.
func allRules(yield func(scoring.Rules)) {
	for to := 1; to <= 21; to++ {
		for winBy := 1; winBy <= 2; winBy++ {
			for _, limit := range []int{0, to, to + 1, to + 2, to + 3} {
				for kind := range 5 {
					r := scoring.Rules{To: to, WinBy: winBy, Cap: limit, Singles: kind%2 == 1}
					if kind >= 2 {
						r.Scoring = scoring.RallyScoring
						r.WinOnServe = kind >= 3
					}
					yield(r)
					if to > 5 && (kind > 0 || limit > to+1) {
						continue
					}
					for a := 0; a < to; a += 1 + to/4 {
						for b := 0; b < to; b += 1 + to/3 {
							r.StartA, r.StartB = a, b
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
				score := scoring.Score{A: a, B: b}
				if _, err := r.Final(a, b, scoring.Played); (err == nil) != reached.ends[score] {
					t.Fatalf("%v: %v ends the game: %v, and is accepted with error %v", r, score, reached.ends[score], err)
				}
				if _, err := r.Final(a, b, scoring.Timed); (err == nil) != reached.passes[score] {
					t.Fatalf("%v: %v comes up: %v, and is accepted as timed with error %v", r, score, reached.passes[score], err)
				}
			}
		}
	})
	t.Logf("%d rules explored", count)
}

func TestNearestScoresAreTheNearestOfAll(t *testing.T) {
	for _, r := range []scoring.Rules{
		{To: 11, WinBy: 2},
		{To: 11, WinBy: 1},
		{To: 15, WinBy: 2, Cap: 17},
		{To: 7, WinBy: 2, StartA: 3},
	} {
		var finals []scoring.Score
		for score := range explore(r, 30).ends {
			finals = append(finals, score)
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

func ExampleRules_Final() {
	r := scoring.Rules{To: 11, WinBy: 2}
	_, err := r.Final(11, 10, scoring.Played)
	fmt.Println(err)
	// Output: 11-10 does not end a game to 11, win by 2: 12-10 or 11-9 would; if play was stopped there, add timed or retired
}
