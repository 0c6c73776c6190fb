package drill_test

import (
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
)

var toEleven = scoring.Rules{To: 11, WinBy: 2}

func lesson(t *testing.T, seed uint64, r scoring.Rules) drill.Lesson {
	t.Helper()
	l, err := drill.New(seed, r)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// engine answers a question by playing the rally, without looking at what is expected.
func engine(q drill.Question) drill.Answer {
	s := q.Before.After(scoring.Rally{Won: q.Won})
	if s.Done {
		return drill.Answer{Over: true}
	}
	a := drill.Answer{Call: s.Call(), Server: s.Server, Box: s.At(s.Server)}
	if strings.Contains(q.Text(), "game point") {
		a.Ends = s.EndsChange()
		_, a.GamePoint = s.GamePoint()
	}
	return a
}

func TestTheEngineAnswersEverythingRight(t *testing.T) {
	for seed := range uint64(20) {
		for _, r := range []scoring.Rules{
			toEleven,
			{Scoring: scoring.RallyScoring, To: 15, WinBy: 1},
			{Singles: true, To: 7, WinBy: 2, Cap: 9},
		} {
			l := lesson(t, seed, r)
			for range 30 {
				answer, err := drill.ParseAnswer(engine(l.Question()).String())
				if err != nil {
					t.Fatal(err)
				}
				l, _ = l.Answer(answer)
			}
			if l.Right != 30 || l.Asked != 30 || l.Level != drill.EveryScoring {
				t.Errorf("seed %d, %v: %v", seed, r, l)
			}
		}
	}
}

// With server numbers left out answers are right only where two numbers are the call.
func TestAnswersWithoutServerNumbersAreRightWhereThereAreNone(t *testing.T) {
	two, three := 0, 0
	for n := range 200 {
		l := lesson(t, 1, toEleven)
		l.Level, l.Asked = drill.EveryScoring, n
		q := l.Question()
		if q.After().Done {
			continue
		}
		a := engine(q)
		numbers := strings.Count(a.Call, "-") + 1
		parts := strings.Split(a.Call, "-")
		a.Call = strings.Join(parts[:2], "-")
		_, v := l.Answer(a)
		if v.Right != (numbers == 2) {
			t.Errorf("%s\n%v is right: %v, of %v", q.Text(), a, v.Right, v.Expected)
		}
		if numbers == 2 {
			two++
		} else {
			three++
		}
	}
	if two == 0 || three == 0 {
		t.Errorf("%d questions have two numbers and %d three", two, three)
	}
}

func TestLessonsGetHarderWithRightAnswersOnly(t *testing.T) {
	l := lesson(t, 3, toEleven)
	for _, step := range []struct {
		right bool
		level drill.Level
	}{
		{true, drill.SideOuts},
		{true, drill.SideOuts},
		{false, drill.SideOuts},
		{true, drill.SideOuts},
		{true, drill.SideOuts},
		{true, drill.SecondServers},
		{false, drill.SecondServers},
		{true, drill.SecondServers},
		{true, drill.SecondServers},
		{true, drill.Endings},
		{true, drill.Endings},
		{true, drill.Endings},
		{true, drill.EveryScoring},
		{true, drill.EveryScoring},
		{true, drill.EveryScoring},
		{true, drill.EveryScoring},
	} {
		a := engine(l.Question())
		if !step.right {
			a.Server = a.Server.Partner()
		}
		var v drill.Verdict
		if l, v = l.Answer(a); v.Right != step.right || l.Level != step.level {
			t.Fatalf("after %d answers: %v at level %v, want %v", l.Asked, v, l.Level, step.level)
		}
	}
	if l.String() != "14 of 16 right, every scoring" {
		t.Errorf("%v", l)
	}
}

func TestLevelsAskWhatTheyAreAbout(t *testing.T) {
	count := func(level drill.Level, about func(scoring.State) bool) int {
		n := 0
		for seed := range uint64(100) {
			l := lesson(t, seed, toEleven)
			l.Level = level
			if about(l.Question().After()) {
				n++
			}
		}
		return n
	}
	for _, c := range []struct {
		name  string
		level drill.Level
		about func(scoring.State) bool
		least int
		most  int
	}{
		{"side outs", drill.SideOuts, func(s scoring.State) bool { return s.What == scoring.ServeOver }, 40, 80},
		{"no second server yet", drill.SideOuts, func(s scoring.State) bool { return s.What == scoring.SecondServer }, 0, 0},
		{"no end yet", drill.SecondServers, func(s scoring.State) bool { return s.Done || s.EndsChange() }, 0, 0},
		{"second servers", drill.SecondServers, func(s scoring.State) bool { return s.What == scoring.SecondServer }, 50, 100},
		{"changes of ends", drill.Endings, scoring.State.EndsChange, 10, 40},
		{"games that end", drill.Endings, func(s scoring.State) bool { return s.Done }, 10, 40},
		{"calls of two numbers", drill.EveryScoring, func(s scoring.State) bool { return s.Number == 0 }, 50, 95},
	} {
		if n := count(c.level, c.about); n < c.least || n > c.most {
			t.Errorf("%s: in %d of 100 questions, want %d to %d", c.name, n, c.least, c.most)
		}
	}
}

func TestTheSameSeedAsksTheSame(t *testing.T) {
	same, other := 0, 0
	for n := range 50 {
		a, b, c := lesson(t, 7, toEleven), lesson(t, 7, toEleven), lesson(t, 8, toEleven)
		a.Asked, b.Asked, c.Asked = n, n, n
		if a.Question() == b.Question() {
			same++
		}
		if a.Question() != c.Question() {
			other++
		}
	}
	if same != 50 || other < 40 {
		t.Errorf("of 50 questions %d are the same with the same seed, and %d differ with another", same, other)
	}
}

func TestRulesThatCannotBePlayedAreNoLesson(t *testing.T) {
	if _, err := drill.New(1, scoring.Rules{}); err == nil {
		t.Error("accepted")
	}
}

func TestVerdictsSayWhatWasWrong(t *testing.T) {
	before := scoring.Fold(toEleven, scoring.A, []scoring.Rally{{Won: scoring.A}})
	q := drill.Question{Level: drill.SideOuts, Before: before, Won: scoring.B}
	level := drill.Question{Level: drill.SideOuts, Before: scoring.Fold(toEleven, scoring.A, []scoring.Rally{{Won: scoring.A}, {Won: scoring.B}}), Won: scoring.B}
	single := drill.Question{Level: drill.SideOuts, Before: scoring.Start(scoring.Rules{To: 11, WinBy: 2, Singles: true}, scoring.A), Won: scoring.B}
	over := drill.Question{Level: drill.Endings, Before: scoring.Start(scoring.Rules{To: 1, WinBy: 1}, scoring.A), Won: scoring.A}
	point := drill.Question{Level: drill.Endings, Before: scoring.Start(scoring.Rules{To: 2, WinBy: 1}, scoring.A), Won: scoring.A}
	for _, c := range []struct {
		question drill.Question
		answer   string
		want     string
	}{
		{q, "0-1-1 B1 right", "Right. Team A lost"},
		{q, "0-1 B1 right", "the call is 0-1-1: the number of the server comes last. Team A lost"},
		{q, "1-0-1 B1 right", "the serving team's score comes first"},
		{q, "0-1-2 B1 right", "Wrong: the call is 0-1-1. "},
		{level, "1-1 B1 left", "the number of the server comes last"},
		{q, "0-2-1 B1 right", "Wrong: the call is 0-1-1. "},
		{q, "0-1-1 B2 left", "Wrong: B1 serves; it is the right box. "},
		{q, "game", "the game goes on"},
		{level, "1-1-2 B1 left", "Wrong: the call is 1-1-1. "}, // turned round it is the same
		{single, "0-0-1 B1 right", "the call is 0-0: servers have no number here"},
		{over, "game", "Right. "},
		{over, "1-0-2 A1 left", "the game is over"},
		{point, "1-0-2 A1 left", "the teams switch ends; it is game point"},
		{point, "1-0-2 A1 left ends point", "Right. "},
	} {
		a, err := drill.ParseAnswer(c.answer)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.question.Check(a).String(); !strings.Contains(got, c.want) {
			t.Errorf("%q: %s\nwant %s", c.answer, got, c.want)
		}
	}
}

func TestAnswersAsPeopleTypeThem(t *testing.T) {
	for text, want := range map[string]string{
		"1-0-2 A1 left":            "1-0-2 A1 left",
		"1 0 2 a1 l":               "1-0-2 A1 left",
		"left, A1, 1-0-2":          "1-0-2 A1 left",
		"6-2-1 b2 right ends":      "6-2-1 B2 right ends",
		"10-2 b1 r game point":     "10-2 B1 right point",
		"10-2 b1 r switch ends":    "10-2 B1 right ends",
		"10-2 b1 r change ends":    "10-2 B1 right ends",
		"game over":                "game",
		"10-2-1 b1 r ends, point ": "10-2-1 B1 right ends point",
	} {
		got, err := drill.ParseAnswer(text)
		if err != nil || got.String() != want {
			t.Errorf("%q is read as %v, %v; want %v", text, got, err, want)
		}
	}
	for text, reason := range map[string]string{
		"":                  "the call is missing",
		"1-0-2 left":        "the server is missing",
		"1-0-2 A1":          "the box is missing",
		"1-0-2 C1 left":     `"c1" is no part`,
		"1-0-2-3 A1 left":   `"3" is no part`,
		"1-0-300 A1 left":   `"300" is no part`,
		"1-0-2 A1 left, eh": `"eh" is no part`,
	} {
		if got, err := drill.ParseAnswer(text); err == nil || !strings.Contains(err.Error(), reason) {
			t.Errorf("%q is read as %v, %v; want %q", text, got, err, reason)
		}
	}
}

func FuzzParseAnswer(f *testing.F) {
	for _, seed := range []string{"1-0-2 A1 left", "game", "10-9 b1 r ends point", "007-1 a1 l", "1-0-2 A1 \xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := drill.ParseAnswer(text)
		if err != nil {
			return
		}
		if back, err := drill.ParseAnswer(a.String()); err != nil || back != a {
			t.Errorf("%q is read as %v, and that as %v, %v", text, a, back, err)
		}
	})
}
