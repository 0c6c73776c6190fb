package scoring_test

import (
	"testing"

	"club/quadrille/scoring"
)

func finals(t *testing.T, r scoring.Rules, texts ...string) []scoring.Final {
	t.Helper()
	var out []scoring.Final
	for _, text := range texts {
		f, err := r.ParseFinal(text)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, f)
	}
	return out
}

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		name    string
		bestOf  int
		games   []string
		a, b    int
		done    bool
		winner  scoring.Team
		decider bool
		first   scoring.Team
	}{
		{"nothing played", 3, nil, 0, 0, false, scoring.A, false, scoring.A},
		{"one game each way", 3, []string{"11-7", "9-11"}, 1, 1, false, scoring.A, true, scoring.A},
		{"two straight", 3, []string{"11-7", "11-9"}, 2, 0, true, scoring.A, false, scoring.A},
		{"what follows the end is not counted", 3, []string{"7-11", "7-11", "11-7"}, 0, 2, true, scoring.B, false, scoring.A},
		{"five games", 5, []string{"11-7", "7-11", "11-7", "7-11"}, 2, 2, false, scoring.A, true, scoring.A},
		{"a retirement ends it", 5, []string{"11-7", "10-5 r a"}, 1, 1, true, scoring.B, false, scoring.A},
		{"a retirement in the middle ends it, and nothing is left to decide", 3, []string{"11-7", "10-5 r a", "11-7"}, 1, 1, true, scoring.B, false, scoring.A},
		{"a draw on time counts for nobody", 3, []string{"6-6 t"}, 0, 0, false, scoring.A, false, scoring.B},
		{"one game is a match", 1, []string{"w b"}, 0, 1, true, scoring.B, false, scoring.B},
		{"the only game decides", 0, nil, 0, 0, false, scoring.A, true, scoring.A},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := scoring.Rules{To: 11, WinBy: 2, BestOf: c.bestOf}
			m := r.Match(scoring.A, finals(t, r, c.games...))
			if m.Games != [2]int{c.a, c.b} || m.Done != c.done || m.Winner != c.winner || m.Decider != c.decider || m.First != c.first {
				t.Errorf("got %+v", m)
			}
			if s := m.Start(); s.Serving != c.first || s.Rally != 0 {
				t.Errorf("the next game starts with %v", s.Serving)
			}
		})
	}
}

// Ends change after every game (5.B), whoever won it and if nobody did.
func TestEndsAndFirstServeChangeAfterEveryGame(t *testing.T) {
	r := scoring.Rules{To: 11, WinBy: 2, BestOf: 5}
	games := []string{"11-7", "6-6 t", "9-6 v", "7-11"}
	for n := range len(games) + 1 {
		m := r.Match(scoring.B, finals(t, r, games[:n]...))
		if m.Halves != (n%2 == 1) || (m.First == scoring.B) != (n%2 == 0) {
			t.Errorf("after %d games %v serves first, and the teams stand as at the beginning: %v", n, m.First, !m.Halves)
		}
	}
}

// Rule 12.B.1.a (2026: 21.B): of several games only the deciding one has a change of ends.
func TestEndsChangeInTheDecidingGameOnly(t *testing.T) {
	r := scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2, BestOf: 3}
	for _, c := range []struct {
		games []string
		want  bool
	}{{nil, false}, {[]string{"11-7"}, false}, {[]string{"11-7", "7-11"}, true}} {
		s := r.Match(scoring.A, finals(t, r, c.games...)).Start()
		changed := false
		for range 6 {
			s = s.After(scoring.Rally{Won: scoring.A})
			changed = changed || s.EndsChange()
		}
		if changed != c.want {
			t.Errorf("after %v ends change: %v, want %v", c.games, changed, c.want)
		}
	}
}

// Rule 12.B.1.a (2026: 21.B).
func TestScoresAtWhichEndsChange(t *testing.T) {
	for to, at := range map[int]int{7: 4, 11: 6, 15: 8, 21: 11} {
		if got := (scoring.Rules{To: to}).EndsAt(); got != at {
			t.Errorf("in a game to %d ends change at %d, want %d", to, got, at)
		}
	}
}
