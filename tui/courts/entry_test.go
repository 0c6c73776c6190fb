package courts

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
)

// typed is an entry after some keys.
func typed(t testing.TB, keys ...string) *entry {
	t.Helper()
	e := &entry{}
	for _, key := range keys {
		if !e.press(key) {
			t.Fatalf("the entry does not take %q", key)
		}
	}
	return e
}

// letters are the keys of a text, one by one.
func letters(text string) []string { return strings.Split(text, "") }

// allRules are the rules that clubs play by, to 11, 15 and 21.
func allRules() []scoring.Rules {
	var out []scoring.Rules
	for _, kind := range []scoring.Scoring{scoring.SideOut, scoring.RallyScoring} {
		for _, to := range []int{11, 15, 21} {
			for _, by := range []int{1, 2} {
				out = append(out, scoring.Rules{Scoring: kind, To: to, WinBy: by})
			}
		}
	}
	return out
}

// eachFinal calls check for each score up to 40 with which a game under some rules can end so.
func eachFinal(how scoring.How, check func(r scoring.Rules, a, b int, want scoring.Final)) {
	for _, r := range allRules() {
		for a := range 41 {
			for b := range 41 {
				if f, err := r.Final(a, b, how); err == nil {
					check(r, a, b, f)
				}
			}
		}
	}
}

// TestEveryFinalCanBeTyped: a score typed with a blank is always that score, and one typed without
// is that score or refused as readable in two ways; it is never taken for another one.
func TestEveryFinalCanBeTyped(t *testing.T) {
	for how, marks := range map[scoring.How][]string{scoring.Played: {""}, scoring.Timed: {"t"}, scoring.Retired: {"ra", "rb"}} {
		glued, all := 0, 0
		eachFinal(how, func(r scoring.Rules, a, b int, want scoring.Final) {
			mark := marks[0]
			if w, ok := want.Winner(); ok && w == scoring.A && len(marks) > 1 {
				mark = marks[1] // the team behind retired
			}
			all++
			parted := fmt.Sprintf("%d %d%s", a, b, mark)
			if got, err := typed(t, letters(parted)...).final(r); err != nil || got != want {
				t.Errorf("%v: %q is %v (%v), want %v", r, parted, got, err, want)
			}
			text := fmt.Sprintf("%d%d%s", a, b, mark)
			switch got, err := typed(t, letters(text)...).final(r); {
			case err == nil && got == want:
				glued++
			case err == nil:
				t.Errorf("%v: %q is taken for %v, but may be %v", r, text, got, want)
			case !errors.Is(err, errAmbiguous):
				t.Errorf("%v: %q is refused: %v", r, text, err)
			}
		})
		if how == scoring.Played && 10*glued < 8*all {
			t.Errorf("only %d of %d scores can be typed without a blank", glued, all)
		}
	}
}

// TestTheLeaderMayRetire: the score does not tell which team retired, so it is asked; a and b say it, at any
// score.
func TestTheLeaderMayRetire(t *testing.T) {
	eachFinal(scoring.Retired, func(r scoring.Rules, a, b int, _ scoring.Final) {
		text := fmt.Sprintf("%d %dr", a, b)
		if got, err := typed(t, letters(text)...).final(r); !errors.Is(err, errWhoRetired) {
			t.Errorf("%v: %q is %v (%v), and nobody said who retired", r, text, got, err)
		}
		for _, team := range []scoring.Team{scoring.A, scoring.B} {
			want, err := r.Retire(a, b, team)
			if err != nil {
				t.Fatal(err)
			}
			text := text + strings.ToLower(team.String())
			if got, err := typed(t, letters(text)...).final(r); err != nil || got != want {
				t.Errorf("%v: %q is %v (%v), want %v", r, text, got, err, want)
			}
		}
	})
}

// TestTabSwapsTheSides: with tab the first number is team B's, whenever it is pressed.
func TestTabSwapsTheSides(t *testing.T) {
	eachFinal(scoring.Played, func(r scoring.Rules, a, b int, want scoring.Final) {
		text := letters(fmt.Sprintf("%d %d", b, a))
		for at := range len(text) + 1 {
			keys := append(append(append([]string{}, text[:at]...), "tab"), text[at:]...)
			if got, err := typed(t, keys...).final(r); err != nil || got != want {
				t.Fatalf("%v: %q is %v (%v), want %v", r, keys, got, err, want)
			}
		}
	})
}

func TestEntriesAsPeopleTypeThem(t *testing.T) {
	to11 := scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}
	for _, c := range []struct{ keys, want string }{
		{"117", "11-7"},
		{"711", "7-11"},
		{"11-7", "11-7"},
		{"11:7", "11-7"},
		{"11/7", "11-7"},
		{"1210", "12-10"},
		{"1012", "10-12"},
		{"110", "11-0"},
		{"011", "0-11"},
		{"11 1", "11-1"},
		{"1 11", "1-11"},
		{"96t", "9-6 timed"},
		{"9t6", "9-6 timed"},
		{"99t", "9-9 timed"},
		{"96r", "! say which team retired: a or b"},
		{"96rb", "9-6 retired"},
		{"96ra", "9-6 retired, B won"},
		{"96rab", "9-6 retired"},
		{"88ra", "8-8 retired, B won"},
		{"96rr", "!"},
		{"96rar", "!"},
		{"117rr", "11-7"},
		{"96ra<", "! say which team retired: a or b"},
		{"96rt", "9-6 timed"},
		{"117tt", "11-7"}, // t again takes the mark back
		{"1178<", "11-7"},
		{"117<<<<115", "11-5"},
		{"111", "! 111 can be 1-11 or 11-1: put a blank between the two numbers"},
		{"11", "!"},
		{"1", "! type both numbers, such as 11 7"},
		{"1110", "! "},
		{"96", "! "},
		{"77", "! "},
		{"00", "! "},
		{"117t", "! "},
		{"777777777", "! "},
	} {
		e := &entry{}
		for _, key := range letters(c.keys) {
			e.press(strings.Replace(key, "<", "backspace", 1))
		}
		got, err := e.final(to11)
		text := got.String()
		if err != nil {
			text = "! " + err.Error()
		}
		if strings.HasPrefix(c.want, "!") && len(c.want) < 3 {
			if err == nil {
				t.Errorf("%q is taken for %s", c.keys, text)
			}
			continue
		}
		if text != c.want {
			t.Errorf("%q gives %q, want %q", c.keys, text, c.want)
		}
	}
}

// TestAnyKeysLeaveAnEntryThatCanBeRead: whatever is typed, the line stays short, has at most one
// blank and not in front, and backspace takes all of it back.
func TestAnyKeysLeaveAnEntryThatCanBeRead(t *testing.T) {
	keys := []string{"0", "1", "2", "7", "9", " ", "-", ":", "t", "r", "a", "b", "tab", "backspace", "x", "enter"}
	rapid.Check(t, func(r *rapid.T) {
		e := &entry{}
		for _, key := range rapid.SliceOfN(rapid.SampledFrom(keys), 0, 30).Draw(r, "keys") {
			e.press(key)
		}
		if len(e.text) > maxEntry+1 || strings.Count(e.text, " ") > 1 || strings.HasPrefix(e.text, " ") {
			r.Fatalf("the entry is %q", e.text)
		}
		for _, p := range e.pairs() {
			if p.a < 0 || p.b < 0 || p.a > 99 || p.b > 99 {
				r.Fatalf("%q is read as %v", e.text, p)
			}
		}
		for range maxEntry + 3 {
			e.press("backspace")
		}
		if !e.empty() || e.press("backspace") {
			r.Fatalf("backspace leaves %+v", e)
		}
	})
}

// TestAScoreIsWrittenAsItIsRead: what a form is filled in with is the score that it gives back.
func TestAScoreIsWrittenAsItIsRead(t *testing.T) {
	r := scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2}
	var all []scoring.Final
	for _, how := range []scoring.How{scoring.Played, scoring.Timed} {
		for a := range 14 {
			for b := range 14 {
				if f, err := r.Final(a, b, how); err == nil {
					all = append(all, f)
				}
				for _, team := range []scoring.Team{scoring.A, scoring.B} {
					if f, err := r.Retire(a, b, team); err == nil {
						all = append(all, f)
					}
				}
			}
		}
	}
	void, err := r.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(all, r.Walkover(scoring.A), r.Walkover(scoring.B), void) {
		if got, err := ParseScore(r, ScoreText(f)); err != nil || got != f {
			t.Errorf("%v is written %q and read %v (%v)", f, ScoreText(f), got, err)
		}
	}
	for _, text := range []string{"9-6 retired", "9-6 r", "9 6 RETIRED", "96r"} {
		if got, err := ParseScore(r, text); err == nil || !strings.Contains(err.Error(), "say which team retired") && text != "96r" {
			t.Errorf("%q is %v (%v)", text, got, err)
		}
	}
}

// TestAZeroInFront: it is read where it is plain which digits the number has, and nowhere else.
func TestAZeroInFront(t *testing.T) {
	rules := scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}
	for text, want := range map[string]string{"1109": "11-9", "0911": "9-11", "11 09": "11-9", "1100": "11-0", "0011": "0-11", "07 11": "7-11"} {
		if got, err := typed(t, letters(text)...).final(rules); err != nil || got.String() != want {
			t.Errorf("%q is %v (%v), want %s", text, got, err, want)
		}
	}
	if got, err := typed(t, letters("1110")...).final(rules); err == nil {
		t.Errorf("1110 is %v, and no game ends so", got)
	}
}
