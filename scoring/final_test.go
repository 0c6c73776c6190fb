package scoring_test

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
)

var toEleven = scoring.Rules{To: 11, WinBy: 2}

func TestTypedFinalScores(t *testing.T) {
	capped := scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2, Cap: 17}
	handicap := scoring.Rules{To: 11, WinBy: 2, StartA: 4}
	for _, c := range []struct {
		rules scoring.Rules
		text  string
		want  string // [scoring.Final.String], or the part of the error that tells what to do
	}{
		{toEleven, "11-7", "11-7"},
		{toEleven, "11 7", "11-7"},
		{toEleven, "11:7", "11-7"},
		{toEleven, " 7 , 11 ", "7-11"},
		{toEleven, "12–10", "12-10"},
		{toEleven, "25-23", "25-23"},
		{toEleven, "9-6 timed", "9-6 timed"},
		{toEleven, "9-6 T", "9-6 timed"},
		{toEleven, "9-9 t", "9-9 timed"},
		{toEleven, "9-6 r", "9-6 retired"},
		{toEleven, "9-6 retired b", "9-6 retired"},
		{toEleven, "10-5 retired a", "10-5 retired, B won"},
		{toEleven, "4-4 r b", "4-4 retired, A won"},
		{toEleven, "walkover a", "11-0 walkover"},
		{toEleven, "w b", "0-11 walkover"},
		{toEleven, "void", "0-0 void"},
		{toEleven, "5-3 v", "5-3 void"},
		{capped, "17-16", "17-16"},
		{capped, "17-15", "17-15"},
		{handicap, "11-0", "11-0"},
		{handicap, "walkover b", "4-11 walkover"},
		{handicap, "void", "4-0 void"},

		{toEleven, "11-10", "12-10 or 11-9 would"},
		{toEleven, "10-11", "10-12 or 9-11 would"},
		{toEleven, "9-6", "add timed or retired"},
		{toEleven, "13-9", "cannot come up in a game to 11, win by 2: 13-11 or 12-10 or 11-9 would"},
		{toEleven, "11-7 timed", "enter the score alone"},
		{toEleven, "11-7 r", "enter the score alone"},
		{toEleven, "4-4 r", "4-4 retired a"},
		{toEleven, "w", "walkover a"},
		{toEleven, "11", "write 11-7"},
		{toEleven, "", "write 11-7"},
		{toEleven, "11-7-2", "write 11-7"},
		{toEleven, "11-7 a", "write 11-7"},
		{toEleven, "9-6 timed a", "write 11-7"},
		{toEleven, "9-6 retired b a", "write 11-7"},
		{toEleven, "1000-2", "points are 0 to 999"},
		{capped, "18-16", "cap 17: 17-16 would"},
		{handicap, "3-11", "4-11 would"},
		{scoring.Rules{}, "11-7", "11 is usual"},
	} {
		got, err := c.rules.ParseFinal(c.text)
		switch {
		case err == nil && got.String() != c.want:
			t.Errorf("%q under %v is %v, want %v", c.text, c.rules, got, c.want)
		case err != nil && !strings.Contains(err.Error(), c.want):
			t.Errorf("%q under %v is refused with %q, want %q", c.text, c.rules, err, c.want)
		case err != nil && !got.IsZero():
			t.Errorf("%q is refused and makes %v", c.text, got)
		}
	}
}

func TestWinnerOfAFinal(t *testing.T) {
	for _, c := range []struct {
		text   string
		winner scoring.Team
		won    bool
	}{
		{"11-7", scoring.A, true},
		{"7-11", scoring.B, true},
		{"9-6 t", scoring.A, true},
		{"6-6 t", scoring.A, false},
		{"9-6 r", scoring.A, true},
		{"9-6 r a", scoring.B, true},
		{"w b", scoring.B, true},
		{"9-6 v", scoring.A, false},
		{"6-9 v", scoring.A, false}, // the zero value, so that equal results are equal
	} {
		f, err := toEleven.ParseFinal(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if winner, won := f.Winner(); winner != c.winner || won != c.won {
			t.Errorf("%q is won by %v, %v; want %v, %v", c.text, winner, won, c.winner, c.won)
		}
	}
}

// Rule 12.F: the example of the book is a leader who retires at 10-5.
func TestRetiredSideKeepsItsPointsAndTheOtherGetsTheFewestThatWin(t *testing.T) {
	for text, want := range map[string]scoring.Score{
		"10-5 r a":  {A: 10, B: 12},
		"10-5 r b":  {A: 11, B: 5},
		"0-0 r b":   {A: 11, B: 0},
		"12-13 r b": {A: 15, B: 13},
		"11-7":      {A: 11, B: 7},
		"9-6 t":     {A: 9, B: 6},
	} {
		f, err := toEleven.ParseFinal(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := toEleven.Credit(f); got != want {
			t.Errorf("%q counts as %v, want %v", text, got, want)
		}
	}
}

// With a cap the fewest points that win can be the cap.
func TestRetirementsAreCreditedUpToTheCap(t *testing.T) {
	capped := scoring.Rules{To: 11, WinBy: 2, Cap: 13}
	for text, want := range map[string]scoring.Score{
		"12-11 r a": {A: 12, B: 13},
		"10-9 r b":  {A: 11, B: 9},
	} {
		if got := capped.Credit(finals(t, capped, text)[0]); got != want {
			t.Errorf("%q counts as %v, want %v", text, got, want)
		}
	}
}

func TestFinalJSON(t *testing.T) {
	for text, want := range map[string]string{
		"11-7":     `{"a":11,"b":7,"how":"played"}`,
		"9-6 t":    `{"a":9,"b":6,"how":"timed"}`,
		"10-5 r a": `{"a":10,"b":5,"how":"retired","won":"b"}`,
		"10-5 r b": `{"a":10,"b":5,"how":"retired"}`,
		"3-3 r b":  `{"a":3,"b":3,"how":"retired","won":"a"}`,
		"w b":      `{"a":0,"b":11,"how":"walkover"}`,
		"9-6 v":    `{"a":9,"b":6,"how":"void"}`,
	} {
		f, err := toEleven.ParseFinal(text)
		if err != nil {
			t.Fatal(err)
		}
		got, err := json.Marshal(f)
		if err != nil || string(got) != want {
			t.Errorf("%q is written %s, %v; want %s", text, got, err, want)
		}
		var back scoring.Final
		if err := json.Unmarshal(got, &back); err != nil || back != f {
			t.Errorf("%s is read as %v, %v; want %v", got, back, err, f)
		}
	}
}

func TestImpossibleFinalJSONIsRefused(t *testing.T) {
	for _, text := range []string{
		`{"a":11,"b":7}`,
		`{"a":11,"b":7,"how":"won"}`,
		`{"a":-1,"b":7,"how":"played"}`,
		`{"a":7,"b":7,"how":"played"}`,
		`{"a":7,"b":7,"how":"walkover"}`,
		`{"a":7,"b":7,"how":"retired"}`,
		`{"a":7,"b":6,"how":"retired","won":"c"}`,
		`[11,7]`,
	} {
		var f scoring.Final
		if err := json.Unmarshal([]byte(text), &f); err == nil || !f.IsZero() {
			t.Errorf("%s is read as %v, %v", text, f, err)
		}
	}
}

// A result whose winner does not follow from its score was made under no rules.
func TestAResultIsCheckedForItsWinnerToo(t *testing.T) {
	handicap := scoring.Rules{To: 11, WinBy: 2, StartB: 3}
	walkover := handicap.Walkover(scoring.A)
	if err := handicap.Check(walkover); err != nil {
		t.Errorf("a walkover under its own rules: %v", err)
	}
	if err := toEleven.Check(walkover); err == nil {
		t.Error("a walkover of a game with a start is one of a game without")
	}
	high := scoring.Rules{To: 11, WinBy: 2, StartB: 10}
	if err := high.Check(finals(t, toEleven, "w b")[0]); err != nil {
		t.Errorf("B wins by walkover from a start of 10: %v", err)
	}
}

func TestResultsFromAFileAreCheckedAgainstTheRules(t *testing.T) {
	for text, sound := range map[string]bool{
		`{"a":11,"b":7,"how":"played"}`:            true,
		`{"a":11,"b":10,"how":"played"}`:           false,
		`{"a":9,"b":6,"how":"timed"}`:              true,
		`{"a":9,"b":6,"how":"retired","won":"b"}`:  true,
		`{"a":11,"b":6,"how":"retired","won":"b"}`: false,
		`{"a":11,"b":0,"how":"walkover"}`:          true,
		`{"a":15,"b":0,"how":"walkover"}`:          false,
		`{"a":12,"b":12,"how":"void"}`:             true,
		`{"a":15,"b":12,"how":"void"}`:             false,
		`null`:                                     false,
	} {
		var f scoring.Final
		if err := json.Unmarshal([]byte(text), &f); err != nil {
			t.Fatal(err)
		}
		if err := toEleven.Check(f); (err == nil) != sound {
			t.Errorf("%s under %v: %v", text, toEleven, err)
		}
	}
}

func TestEveryGamePlayedToTheEndHasAFinal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawRules().Draw(t, "rules")
		s := scoring.Fold(r, scoring.A, drawRallies().Draw(t, "rallies"))
		how := scoring.Timed
		if s.Done {
			how = scoring.Played
		}
		f, err := r.Final(s.Score.A, s.Score.B, how)
		if err != nil {
			t.Fatal(err)
		}
		if winner, _ := f.Winner(); s.Done && winner != s.Winner {
			t.Fatalf("%v was won by %v and is recorded for %v", s.Score, s.Winner, winner)
		}
		if err := r.Check(f); err != nil {
			t.Fatal(err)
		}
	})
}

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
