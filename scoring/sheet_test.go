package scoring_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
)

// noted is a sheet with rallies and further entries, none of which may be refused.
func noted(t *testing.T, r scoring.Rules, rallies string, entries ...scoring.Entry) scoring.Sheet {
	t.Helper()
	parsed, err := scoring.ParseRallies(rallies)
	if err != nil {
		t.Fatal(err)
	}
	sheet := scoring.Sheet{Rules: r}
	for _, rl := range parsed {
		entries = append([]scoring.Entry{}, entries...)
		sheet = add(t, sheet, scoring.Entry{Kind: scoring.RallyWon, Rally: rl})
	}
	for _, e := range entries {
		sheet = add(t, sheet, e)
	}
	return sheet
}

func add(t *testing.T, s scoring.Sheet, e scoring.Entry) scoring.Sheet {
	t.Helper()
	out, err := s.Add(e)
	if err != nil {
		t.Fatalf("entry %v: %v", e.Kind, err)
	}
	return out
}

func stateOf(t *testing.T, s scoring.Sheet) scoring.State {
	t.Helper()
	state, err := s.State()
	if err != nil {
		t.Fatal(err)
	}
	return state
}

func TestCorrectionsGiveTheGameThatWasPlayed(t *testing.T) {
	won := func(side scoring.Team) scoring.Rally { return scoring.Rally{Won: side} }
	for _, c := range []struct {
		name    string
		rallies string
		entry   scoring.Entry
		want    string
	}{
		{"a forgotten rally", "abba", scoring.Entry{Kind: scoring.RallyInserted, At: 2, Rally: won(scoring.A)}, "aabba"},
		{"a forgotten last rally", "ab", scoring.Entry{Kind: scoring.RallyInserted, At: 3, Rally: won(scoring.B)}, "abb"},
		{"a rally that never was", "abba", scoring.Entry{Kind: scoring.RallyRemoved, At: 4}, "abb"},
		{"a rally for the wrong side", "abba", scoring.Entry{Kind: scoring.RallyChanged, At: 1, Rally: won(scoring.B)}, "bbba"},
		{"a replayed rally", "abba", scoring.Entry{Kind: scoring.RallyReplayed}, "abba"},
		{"a wrong server, put right", "abba", scoring.Entry{Kind: scoring.Remark, Note: "A2 served out of turn"}, "abba"},
	} {
		t.Run(c.name, func(t *testing.T) {
			sheet := noted(t, toEleven, c.rallies, c.entry)
			rallies, err := sheet.Rallies()
			if err != nil || scoring.FormatRallies(rallies) != c.want {
				t.Fatalf("the rallies are %q, %v; want %q", scoring.FormatRallies(rallies), err, c.want)
			}
			if got, want := stateOf(t, sheet), scoring.Fold(toEleven, scoring.A, rallies); got != want {
				t.Errorf("the game stands at %q, want %q", got.Call(), want.Call())
			}
			if len(sheet.Entries) != len(c.rallies)+1 {
				t.Errorf("the sheet keeps %d entries, want %d", len(sheet.Entries), len(c.rallies)+1)
			}
		})
	}
}

func TestRefusedEntries(t *testing.T) {
	shutout := strings.Repeat("a", 11)
	timeOut := scoring.Entry{Kind: scoring.TimeOut, Team: scoring.B}
	medical := scoring.Entry{Kind: scoring.MedicalTimeOut}
	setting := scoring.Start(toEleven, scoring.A).Setting()
	setting.Score = scoring.Score{A: 13, B: 9}
	for _, c := range []struct {
		name   string
		sheet  scoring.Sheet
		entry  scoring.Entry
		reason string
	}{
		{"rally after the game", noted(t, toEleven, shutout), scoring.Entry{Kind: scoring.RallyWon}, "the game is over"},
		{"time-out after the game", noted(t, toEleven, shutout), timeOut, "the game is over"},
		{"third time-out", noted(t, toEleven, "ab", timeOut, timeOut), timeOut, "2 time-outs"},
		{"second medical time-out", noted(t, toEleven, "ab", medical), medical, "1 medical time-out"},
		{"removing what is not there", noted(t, toEleven, "ab"), scoring.Entry{Kind: scoring.RallyRemoved, At: 3}, "no rally 3"},
		{"inserting far beyond", noted(t, toEleven, "ab"), scoring.Entry{Kind: scoring.RallyInserted, At: 4}, "no rally 4"},
		{"a rally before all", noted(t, toEleven, "ab"), scoring.Entry{Kind: scoring.RallyInserted}, "no rally 0"},
		{"a rally that ends the game early", noted(t, toEleven, shutout), scoring.Entry{Kind: scoring.RallyInserted, At: 1}, "remove what comes after"},
		{"absent after playing", noted(t, toEleven, "a"), scoring.Entry{Kind: scoring.NoShow, Waited: 20}, "note that it retired"},
		{"absent within the grace", noted(t, toEleven, ""), scoring.Entry{Kind: scoring.NoShow, Waited: 7, Grace: 10}, "3 minutes of grace"},
		{"play after a retirement", noted(t, toEleven, "a", scoring.Entry{Kind: scoring.TeamRetired}), scoring.Entry{Kind: scoring.RallyWon}, "only a remark"},
		{"a score that cannot be", noted(t, toEleven, "a"), scoring.Entry{Kind: scoring.SetRight, Setting: setting}, "13-9 cannot come up"},
		{"no kind", noted(t, toEleven, "a"), scoring.Entry{}, "needs a kind"},
	} {
		t.Run(c.name, func(t *testing.T) {
			after, err := c.sheet.Add(c.entry)
			if err == nil || !strings.Contains(err.Error(), c.reason) {
				t.Fatalf("the error is %v, want %q", err, c.reason)
			}
			if !reflect.DeepEqual(after, c.sheet) {
				t.Errorf("the refused entry changed the sheet")
			}
			broken := c.sheet
			broken.Entries = append(broken.Entries[:len(broken.Entries):len(broken.Entries)], c.entry)
			if broken.Check() == nil {
				t.Errorf("a sheet with the refused entry passes the check")
			}
		})
	}
}

func TestEntryAfterTheEndIsRecognised(t *testing.T) {
	sheet := noted(t, toEleven, strings.Repeat("a", 11))
	if _, err := sheet.Add(scoring.Entry{Kind: scoring.RallyWon}); !errors.Is(err, scoring.ErrOver) {
		t.Errorf("the error is %v", err)
	}
}

func TestWaysToEndAGame(t *testing.T) {
	for _, c := range []struct {
		name    string
		rallies string
		entry   scoring.Entry
		want    string
	}{
		{"played out", strings.Repeat("a", 10), scoring.Entry{Kind: scoring.RallyWon}, "11-0"},
		{"time is up", "aaa", scoring.Entry{Kind: scoring.TimeUp}, "3-0 timed"},
		{"the leader retires", "aaa", scoring.Entry{Kind: scoring.TeamRetired}, "3-0 retired, B won"},
		{"nobody came", "", scoring.Entry{Kind: scoring.NoShow, Team: scoring.B, Waited: 10, Grace: 10}, "11-0 walkover"},
		{"not yet", "aaa", scoring.Entry{Kind: scoring.RefereeTimeOut}, "no result"},
	} {
		f, over, err := noted(t, toEleven, c.rallies, c.entry).Final()
		if err != nil || f.String() != c.want || over == f.IsZero() {
			t.Errorf("%s: %v, %v, %v; want %v", c.name, f, over, err, c.want)
		}
	}
}

// Rule 10.A: two time-outs in games to 11 and 15, three in games to 21.
func TestTimeOutsLeft(t *testing.T) {
	for to, want := range map[int]int{11: 1, 15: 1, 21: 2} {
		r := scoring.Rules{To: to, WinBy: 2}
		sheet := noted(t, r, "ab", scoring.Entry{Kind: scoring.TimeOut, Team: scoring.B}, scoring.Entry{Kind: scoring.RefereeTimeOut})
		left, err := sheet.TimeOutsLeft(scoring.B)
		if err != nil || left != want {
			t.Errorf("in a game to %d %d time-outs are left, %v; want %d", to, left, err, want)
		}
	}
}

// Rule 2026: 21.B: a missed change of ends is made when it is noticed.
func TestMissedEndChangeStaysDue(t *testing.T) {
	sheet := noted(t, toEleven, "aaaaaa")
	for _, step := range []struct {
		entry scoring.Entry
		due   bool
	}{
		{scoring.Entry{Kind: scoring.Remark}, true},
		{scoring.Entry{Kind: scoring.RallyWon}, true},
		{scoring.Entry{Kind: scoring.EndsSwitched}, false},
		{scoring.Entry{Kind: scoring.RallyWon}, false},
	} {
		sheet = add(t, sheet, step.entry)
		if due, err := sheet.EndsDue(); err != nil || due != step.due {
			t.Errorf("after %v the change is due: %v, %v", step.entry.Kind, due, err)
		}
	}
}

// A sheet with an entry that the rules don't allow says so, whatever it is asked.
func TestASheetThatCannotBeReadSaysSo(t *testing.T) {
	out := scoring.Entry{Kind: scoring.TimeOut}
	sheet := scoring.Sheet{Rules: toEleven, Entries: []scoring.Entry{out, out, out}}
	if due, err := sheet.EndsDue(); err == nil || due {
		t.Errorf("a switch is due: %v, %v", due, err)
	}
	if left, err := sheet.TimeOutsLeft(scoring.A); err == nil || left != 0 {
		t.Errorf("%d time-outs are left, %v", left, err)
	}
	if _, err := sheet.State(); err == nil {
		t.Error("it has a state")
	}
}

// A game that is over needs no switch any more.
func TestNoSwitchIsDueOnceTheGameIsOver(t *testing.T) {
	sheet := noted(t, toEleven, strings.Repeat("a", 10))
	if due, err := sheet.EndsDue(); err != nil || !due {
		t.Fatalf("at 10-0 a switch is due: %v, %v", due, err)
	}
	if due, err := add(t, sheet, scoring.Entry{Kind: scoring.RallyWon}).EndsDue(); err != nil || due {
		t.Errorf("after the game a switch is due: %v, %v", due, err)
	}
}

// A game that was over, and goes on because it was set right, can have its first rallies corrected too.
func TestRalliesBeforeASettingCanBeCorrected(t *testing.T) {
	sheet := noted(t, toEleven, strings.Repeat("a", 11))
	set := stateOf(t, sheet).Setting()
	set.Score = scoring.Score{A: 9, B: 9}
	sheet = add(t, sheet, scoring.Entry{Kind: scoring.SetRight, Setting: set})
	sheet = add(t, sheet, scoring.Entry{Kind: scoring.RallyChanged, At: 11, Rally: scoring.Rally{Won: scoring.A, Fault: scoring.Out}})
	if s := stateOf(t, sheet); s.Score != (scoring.Score{A: 9, B: 9}) || s.Done {
		t.Errorf("it stands %v, over: %v", s.Score, s.Done)
	}
}

// Rule 2026: 22.E, with the case worked out for it: A leads 5-3, A1 serves first from the right. After a
// foul of A everybody moves, A1 serves on from the left, and the call is 4-3-1.
func TestTechnicalFoulMovesEverybodyButNotTheServe(t *testing.T) {
	set := scoring.Start(toEleven, scoring.A).Setting()
	set.Score = scoring.Score{A: 5, B: 3}
	set.Number = 1
	set.Right = [2]scoring.Seat{{Team: scoring.A, Index: 0}, {Team: scoring.B, Index: 1}}
	sheet := noted(t, toEleven, "", scoring.Entry{Kind: scoring.SetRight, Setting: set})
	if s := stateOf(t, sheet); s.Call() != "5-3-1" || s.Box != scoring.Right || s.Receiver.String() != "B2" {
		t.Fatalf("before the foul: %q from the %v to %v", s.Call(), s.Box, s.Receiver)
	}
	sheet = add(t, sheet, scoring.Entry{Kind: scoring.TechnicalFoul, Team: scoring.A})
	s := stateOf(t, sheet)
	if s.Call() != "4-3-1" || s.Server.String() != "A1" || s.Box != scoring.Left || s.Receiver.String() != "B1" {
		t.Errorf("after the foul: %q, %v from the %v to %v", s.Call(), s.Server, s.Box, s.Receiver)
	}
	if s.What != scoring.Penalty || !strings.Contains(s.Why(), "technical foul") {
		t.Errorf("it is called %v: %s", s.What, s.Why())
	}
}

func TestTechnicalFoulOfASideWithoutPointsIsAPointForTheOther(t *testing.T) {
	start := scoring.Start(scoring.Rules{To: 11, WinBy: 2, StartB: 2}, scoring.A)
	s := start.Penalise(scoring.B)
	if s.Score != (scoring.Score{A: 1, B: 2}) || s.Number != 2 || s.Server.String() != "A1" || s.Box != scoring.Left {
		t.Errorf("%v, %v number %d from the %v", s.Score, s.Server, s.Number, s.Box)
	}
	if after := s.After(scoring.Rally{Won: scoring.B}); !strings.Contains(after.Why(), "only one server") {
		t.Errorf("the opening turn is forgotten: %s", after.Why())
	}
}

func TestTechnicalFoulCanEndTheGame(t *testing.T) {
	sheet := noted(t, toEleven, strings.Repeat("a", 10), scoring.Entry{Kind: scoring.TechnicalFoul, Team: scoring.B})
	f, over, err := sheet.Final()
	if err != nil || !over || f.String() != "11-0" {
		t.Errorf("%v, %v, %v", f, over, err)
	}
	if s := stateOf(t, sheet); !strings.Contains(s.Why(), "ends the game") || s.Penalise(scoring.A) != s {
		t.Errorf("%s", s.Why())
	}
}

func TestSettingAGameAsItStandsChangesNothingButTheReason(t *testing.T) {
	everyRally(t, func(t *rapid.T, _, s scoring.State, won scoring.Team) {
		set, err := s.Set(s.Setting())
		if err != nil {
			t.Fatal(err)
		}
		if set.Setting() != s.Setting() || set.Call() != s.Call() || set.Receiver != s.Receiver || set.Box != s.Box || set.Done != s.Done {
			t.Fatalf("%+v becomes %+v", s, set)
		}
		a, b := s.After(scoring.Rally{Won: won}), set.After(scoring.Rally{Won: won})
		if a.Setting() != b.Setting() || a.Call() != b.Call() {
			t.Fatalf("after one more rally %q becomes %q", a.Call(), b.Call())
		}
	})
}

func TestSwappedPartnersStaySwapped(t *testing.T) {
	s := scoring.Start(toEleven, scoring.A)
	set := s.Setting()
	set.Right[scoring.B] = scoring.Seat{Team: scoring.B, Index: 1}
	s, err := s.Set(set)
	if err != nil {
		t.Fatal(err)
	}
	if s.Receiver.String() != "B2" {
		t.Errorf("%v receives", s.Receiver)
	}
	if s = s.After(scoring.Rally{Won: scoring.B}); s.Server.String() != "B2" || s.Box != scoring.Right {
		t.Errorf("%v serves from the %v", s.Server, s.Box)
	}
	if s = s.After(scoring.Rally{Won: scoring.B}); s.Server.String() != "B2" || s.Box != scoring.Left {
		t.Errorf("%v serves from the %v after a point", s.Server, s.Box)
	}
	same, err := s.Set(s.Setting())
	if err != nil || same.Setting() != s.Setting() || same.Box != s.Box {
		t.Errorf("a correction that changes nothing moves them to %+v: %v", same.Setting(), err)
	}
}

func TestSettingsThatCannotBe(t *testing.T) {
	doubles := scoring.Start(toEleven, scoring.A)
	singles := scoring.Start(scoring.Rules{To: 11, WinBy: 2, Singles: true}, scoring.A)
	for name, c := range map[string]struct {
		state  scoring.State
		change func(*scoring.Setting)
	}{
		"server of the other side":  {doubles, func(s *scoring.Setting) { s.Server.Team = scoring.B }},
		"no third player":           {doubles, func(s *scoring.Setting) { s.Server.Index = 2 }},
		"third server":              {doubles, func(s *scoring.Setting) { s.Number = 3 }},
		"server without a number":   {doubles, func(s *scoring.Setting) { s.Number = 0 }},
		"number in singles":         {singles, func(s *scoring.Setting) { s.Number = 1 }},
		"partner in singles":        {singles, func(s *scoring.Setting) { s.Server.Index = 1 }},
		"opponent in the right box": {doubles, func(s *scoring.Setting) { s.Right[0].Team = scoring.B }},
		"negative score":            {doubles, func(s *scoring.Setting) { s.Score.A = -1 }},
		"unreachable score":         {doubles, func(s *scoring.Setting) { s.Score = scoring.Score{A: 20, B: 3} }},
	} {
		set := c.state.Setting()
		c.change(&set)
		if after, err := c.state.Set(set); err == nil || after != c.state {
			t.Errorf("%s: accepted", name)
		}
	}
}

func TestSheetsSurviveJSON(t *testing.T) {
	set := scoring.Start(toEleven, scoring.A).Setting()
	set.Score = scoring.Score{A: 4, B: 2}
	sheet := noted(t, toEleven, "aab",
		scoring.Entry{Kind: scoring.RallyWon, Rally: scoring.Rally{Won: scoring.B, Fault: scoring.Kitchen, By: 2}},
		scoring.Entry{Kind: scoring.SetRight, Setting: set, Note: "both teams agree"},
		scoring.Entry{Kind: scoring.TeamRetired, Team: scoring.B})
	data, err := json.Marshal(sheet)
	if err != nil {
		t.Fatal(err)
	}
	var back scoring.Sheet
	if err := json.Unmarshal(data, &back); err != nil || !reflect.DeepEqual(back, sheet) {
		t.Errorf("%s is read as %+v, %v", data, back, err)
	}
}

// Whatever entries come, a sheet that took them folds, and folding is the same as adding one by one.
func TestSheetsThatWereNotRefusedFold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := scoring.Sheet{Rules: drawRules().Draw(t, "rules")}
		for range rapid.IntRange(0, 60).Draw(t, "entries") {
			e := scoring.Entry{
				Kind:  scoring.Kind(rapid.SampledFrom([]int{1, 1, 1, 1, 1, 2, 3, 4, 5, 7, 8, 9, 10, 11, 15}).Draw(t, "kind")),
				Rally: scoring.Rally{Won: drawSide().Draw(t, "won")},
				Team:  drawSide().Draw(t, "side"),
				At:    rapid.IntRange(0, 20).Draw(t, "at"),
			}
			after, err := sheet.Add(e)
			if (err == nil) != (len(after.Entries) == len(sheet.Entries)+1) {
				t.Fatalf("%v: %d entries after %d, %v", e.Kind, len(after.Entries), len(sheet.Entries), err)
			}
			sheet = after
			if err := sheet.Check(); err != nil {
				t.Fatal(err)
			}
		}
		state, _ := sheet.State()
		final, over, err := sheet.Final()
		if err != nil || over != state.Done || over && final.Score() != state.Score {
			t.Fatalf("%v is recorded as %v, %v", state.Score, final, err)
		}
	})
}

// The lengths of the stops, with their rules beside the constants.
func TestHowLongStopsLast(t *testing.T) {
	for got, want := range map[time.Duration]time.Duration{
		scoring.TimeOutLength: 60 * time.Second, scoring.MedicalLength: 900 * time.Second, scoring.BetweenGames: 120 * time.Second,
	} {
		if got != want {
			t.Errorf("%v, want %v", got, want)
		}
	}
	if scoring.EndChangeLength != scoring.TimeOutLength {
		t.Errorf("a change of ends lasts %v", scoring.EndChangeLength)
	}
	for to, want := range map[int]int{11: 2, 15: 2, 21: 3} {
		if got := (scoring.Rules{To: to}).TimeOuts(); got != want {
			t.Errorf("%d time-outs in a game to %d, want %d", got, to, want)
		}
	}
}
