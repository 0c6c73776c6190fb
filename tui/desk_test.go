package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/hold"
	"club/quadrille/tui/ui"
)

// TestANightOnTheDesk goes through a small night as the line "Next" leads.
func TestANightOnTheDesk(t *testing.T) {
	s := newStage(t).shows("No night is open", "Press n to open tonight").press("n").shows("Open tonight")
	s.press("Thursday", "down", "1", "enter").shows("[Door]", "Thursday", "0 here")
	for i, name := range []string{"Ada Lind", "Ben Rusk", "Cy Tamm", "Di Vale", "Eve Noll"} {
		s.press(name).shows(fmt.Sprintf("add %q as a guest", name)).press("enter").shows(fmt.Sprintf("%d here", i+1), "Saved: "+name)
	}
	s.press("ctrl+n").shows("[Courts]", "round 1 called", "Ada Lind")
	s.pass(12).press("117", "enter").shows("Saved: court 1").press("s").shows("Standings", "Ada Lind")
	s.press("n").shows("round 2 called").press("enter", strings.Repeat("a", 13)).shows("Game over: 11-0")
	for range 6 {
		s.press("n", "115", "enter")
	}
	s.press("n").shows("All that was planned is played").press("e").shows("in short").press("esc").shows("No night is open", "has had 1 night")
	if l := s.desk.Ledger(); len(l.Club().Night().Rounds) != 8 || l.Night() != nil {
		t.Errorf("%d rounds were called, and the night is open: %v", len(l.Club().Night().Rounds), l.Night() != nil)
	}
	checkReplay(t, s)
}

func TestTheDoor(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv").press("d").shows("16 here", "2 expected", "[ ] Quinn Ashby", "expected 19:40")
	s.press("enter").shows("16 here") // nobody is marked yet: an enter too many does nothing
	s.press("down").pass(45).shows("> [ ] Quinn Ashby").send(tickMsg{}).shows("late")
	s.press("enter").shows("17 here", "Saved: Quinn Ashby checked in")
	s.press("jonas", "enter").shows("! Jonas Reed is here already").press("right").shows("rest a while").press("r").shows("1 resting", "[~] Jonas Reed")
	s.press("enter").shows("17 here").hides("1 resting") // enter brings back who rests
	s.press("agnes", "right").shows("edit name").press("e").shows("Partner with")
	s.press("Agnes Valentin", "enter").shows("[x] Agnes Valentin", "Saved: ")
	s.press("ctrl+u", "agnes", "right", "t").shows("Leaves at").press("down", "2130", "enter").shows("!")
	s.press("ctrl+u", "21:30", "enter").shows("leaves 21:30")
	s.press("right", "i").shows("is here already").press("esc", "esc", "esc")
	if s.press("esc"); s.m.active != ui.Courts {
		t.Error("esc on an empty door does not lead to the courts")
	}
}

// TestTypingAtTheDoorStartsFromTheBestMatch, wherever the cursor was.
func TestTypingAtTheDoorStartsFromTheBestMatch(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv").press("d", "down", "down", "down", "down").shows("> [x] Bram Okoro")
	s.press("noll").shows("> [x] Edda Noll").press("down").shows("> [x] Finn Noll").press("backspace").shows("> [x] Edda Noll")
}

// TestTheDoorShowsWhatIsTyped on the smallest terminal too, where the counts give way.
// What cannot be a name is refused at the door in words, and what is joined stays joined.
func TestNamesAtTheDoorAreNeverCut(t *testing.T) {
	s := newStage(t).people(1, 4, nil).press("d").press(strings.Repeat("x", 81), "enter").shows("80 cells wide, and this one is 81: shorten")
	s.press("ctrl+u").send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("👩\u200d👧 Noll"), Paste: true})
	s.press("enter").shows("👩\u200d👧 Noll")
	if _, known := s.desk.Ledger().Club().Named("👩\u200d👧 Noll"); !known {
		t.Fatalf("the emoji fell apart:\n%s", s.m.View())
	}
}

func TestTheDoorShowsWhatIsTyped(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv")
	roll := s.night().Roll
	s.do(session.Leave{Person: roll[0].Person}, session.Rest{Person: roll[1].Person}).press("d", "agnes val")
	for _, width := range []int{minWidth, 60, 80, 120} {
		s.resize(width, 24).shows("Find or add: agnes val")
	}
}

// TestNextNamesKeysThatWork: where letters are text, the line of what is next names no letters.
func TestNextNamesKeysThatWork(t *testing.T) {
	s := newStage(t).people(2, 8, nil).shows("press n to call").press("d").shows("press ctrl+n to call")
	s.press("ctrl+n").shows("round 1 called").press("d").shows("press esc for the courts").press("esc").shows("[Courts]")
	s.press("b").shows("press c for the courts").press("!", "l", "esc").shows("Press ! for the hold").press("d").shows("Press ctrl+p for the hold")
	s.press("ctrl+p", "ctrl+p", "y").hides("PLAY HELD")
}

// TestNextIsAboutTheDialogThatIsOpen, where the night's own advice would name keys that do something
// else.
func TestNextIsAboutTheDialogThatIsOpen(t *testing.T) {
	for _, c := range []struct {
		keys []string
		says string
	}{
		{[]string{"o", "e"}, "Next: fill in"},
		{[]string{"m"}, "Next: choose"},
		{[]string{"f"}, "Next: type a few letters"},
		{[]string{"?"}, "Next: esc goes back"},
	} {
		s := called(t, 2, 8).shows("Next: round 1").press(c.keys...).shows(c.says).hides("Next: round 1")
		s.press("esc").shows("Next: round 1")
	}
}

// TestARefusedScoreSaysWhyAndTheWayOut in full on a usual terminal, and at least why on the smallest.
func TestARefusedScoreSaysWhyAndTheWayOut(t *testing.T) {
	s := called(t, 4, 16).press("11 10", "enter")
	final := s.night().Settings.Scoring
	_, err := final.Final(11, 10, scoring.Played)
	if err == nil {
		t.Fatal("11-10 is a final score")
	}
	panel := strings.Join(strings.Fields(s.m.View()), " ")
	if !strings.Contains(panel, "Court 1 score: 11-10_ ! "+err.Error()) {
		t.Errorf("the panel does not say %q in full:\n%s", err, s.m.View())
	}
	s.resize(minWidth, minHeight).shows("Court 1 score: 11-10_", "! ").press("esc", "11").shows("Court 1 score: 11_")
}

func TestFindAnswersWhereAndWhen(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv").press("n")
	g := s.night().Games[2]
	name := s.m.names.Full(g.B[0])
	s.press("f", strings.ToLower(name[:5])).shows(name, "court "+string(g.Court), "with "+s.m.names.Short(g.B[1]), "round 2 on court")
	s.press("enter").hides("Who?").shows("against " + s.m.names.Team(g.A)).press("enter").shows("▌ " + string(g.Court) + " ")
	s.press("f", "quinn").shows("not here yet").press("enter").shows("Quinn Ashby", "not here yet", "17 of 18").press("enter").shows("[Bench]")
}

func TestHistoryUndoesAnyActionAndCorrectsScores(t *testing.T) {
	s := called(t, 2, 9).press("117", "enter", "11 9", "enter", "h").shows("what was done, newest first")
	s.press("down", "enter").shows("undo just this", "correct this score").press("e").shows("Score").press("11-6", "enter")
	if got := s.final(1); got != "11-6" {
		t.Errorf("the corrected score is %q, want 11-6", got)
	}
	s.press("home", "down", "enter", "e", "11-10", "enter").shows("!").press("ctrl+u", "11-8", "enter")
	if got := s.final(2); got != "11-8" {
		t.Errorf("the corrected score is %q, want 11-8", got)
	}
	s.press("end", "enter", "u").shows("!").press("esc") // the night was opened: nothing can undo that
	s.press("home", "enter", "u").shows("Saved: undid: court 2: corrected")
	s.press("enter", "u").shows("! redo (U) takes an undo back")
	s.press("esc", "home", "down", "enter").shows("(undone already)")
}

// TestTheDeskOpensWhereTheNightIs: at the door while people come in, and on the courts afterwards.
func TestTheDeskOpensWhereTheNightIs(t *testing.T) {
	s := newStage(t).shows("No night is open")
	s.do(session.OpenNight{Name: "Night", Settings: session.DefaultSettings(1), Courts: 1})
	for i := range 4 {
		s.reopen().shows("[Door]").do(session.AddGuest{Name: inventedName(i)})
	}
	s.reopen().shows("[Courts]").press("n").do(session.Leave{Person: s.night().Roll[0].Person}).reopen().shows("[Courts]")
}

// TestScoresAreForGamesOnly: digits on a free court are refused at once, not after the enter.
func TestScoresAreForGamesOnly(t *testing.T) {
	s := called(t, 2, 8).press("117", "enter", "left").shows("over; type a score to correct it").press("119").shows("corrected to: 119_").press("enter")
	if got := s.final(1); got != "11-9" {
		t.Errorf("the corrected score is %q, want 11-9", got)
	}
	s = newStage(t).people(2, 8, nil).press("c", "1").shows("! court 1 has no game to score").hides("score: 1_")
	s.press("x").shows("! court 1 has no game: there is nobody")
}

func TestHoldsAndCourts(t *testing.T) {
	s := called(t, 2, 9).press("!").shows("Hold play: why?").press("l").shows("minutes of the 30 are left", "30 minutes").press("esc").shows("PLAY HELD")
	s.press("n").shows("play may go on").press("!", "y").hides("PLAY HELD")
	s.press("m", "x").shows("who comes out?").press("1").shows("Who is the sub for").press("enter").shows(" in for ")
	s.press("m", "a").shows("walkover").press("m", "c").shows("closed")
	if s.final(1) == "" {
		t.Error("a walkover ends no game")
	}
	s.press("right", "m", "s").shows("void")
	s.press("n").shows("round 2 called").press("m", "+").shows("  3 ")
	s.press("esc", "m").shows("─ Court 2").press("esc")
}

// TestEveryHoldHasItsCaution: each reason that the desk offers says what to do, and all leave the
// last word to the venue or to qualified people.
func TestEveryHoldHasItsCaution(t *testing.T) {
	seen := map[string]string{}
	for _, c := range []struct{ key, says string }{
		{"l", "30 minutes"}, {"h", "Shade, water, rest"}, {"i", "qualified help"}, {"w", "wet court"}, {"o", "venue's rules"},
	} {
		s := called(t, 2, 8).press("!", c.key).shows("Told to stop: 0 of 2")
		text := hold.Caution(s.night().Hold.Why)
		if !strings.Contains(text, c.says) {
			t.Errorf("held for %s the desk says %q", s.night().Hold.Why, text)
		}
		if other, ok := seen[text]; ok {
			t.Errorf("%s and %s have the same caution", s.night().Hold.Why, other)
		}
		seen[text] = s.night().Hold.Why
	}
	for _, why := range []string{"Thunder nearby", "Hitze", ""} {
		if hold.Caution(why) == "" {
			t.Errorf("%q has no caution", why)
		}
	}
}

// TestSettingsAreRead with a sentence about each thing that is wrong.
func TestSettingsAreRead(t *testing.T) {
	before := session.DefaultSettings(3)
	fields := settingsFields(before, evening)
	values := func(label, value string) []string {
		var out []string
		for _, f := range fields {
			if f.Label == label {
				f.Value = value
			}
			out = append(out, f.Value)
		}
		return out
	}
	if got, err := readSettings(before, values("", ""), nil, evening); err != nil || got != before {
		t.Errorf("settings that nobody changed become %+v (%v)", got, err)
	}
	odd := before
	odd.Balance = 0.8 // as a roster may ask, and the form does not
	if got, err := readSettings(odd, values("Even levels", "even"), nil, evening); err != nil || got != odd {
		t.Errorf("a chance that nobody changed becomes %+v (%v)", got, err)
	}
	for label, value := range map[string]string{"Flow": "rolling", "Format": "ladder", "Scoring": "rally", "Even levels": "gentle", "Left-over two": "play singles", "Walkovers": "count", "Cap": "15", "Start score": "3", "Rest after": "4", "Time limit": "12", "Levels from": "ratings", "Nights before": "forgotten", "Bench": "strict", "Free courts": "by wait"} {
		got, err := readSettings(before, values(label, value), nil, evening)
		if err != nil || got == before {
			t.Errorf("%s %q changes nothing (%v)", label, value, err)
			continue
		}
		again := settingsFields(got, evening)
		if i := slices.IndexFunc(again, func(f dialog.Field) bool { return f.Label == label }); again[i].Value != value {
			t.Errorf("%s %q is then shown as %q", label, value, again[i].Value)
		}
	}
	rally := before
	rally.Scoring.Scoring = scoring.RallyScoring
	served := settingsFields(rally, evening)
	var typed []string
	for _, f := range served {
		if f.Label == "Last point" {
			f.Value = "on serve"
		}
		typed = append(typed, f.Value)
	}
	if got, err := readSettings(rally, typed, nil, evening); err != nil || !got.Scoring.WinOnServe {
		t.Errorf("the last point on serve is not read: %+v (%v)", got, err)
	}
	for _, c := range []struct{ label, value, wrong string }{
		{"Game to", "eleven", "no whole number"},
		{"Game to", "0", "1 point or more"},
		{"Game to", "200", "at most 99"},
		{"Rounds", "0", "1 to 60 rounds"},
		{"Rounds", "", "no whole number"},
		{"Minutes a round", "1", "3 to 120 minutes"},
		{"Closing time", "late", "21:30"},
		{"Closing time", "25:00", "21:30"},
	} {
		if _, err := readSettings(before, values(c.label, c.value), nil, evening); err == nil || !strings.Contains(err.Error(), c.wrong) {
			t.Errorf("%s %q: %v, want a sentence about %q", c.label, c.value, err, c.wrong)
		}
	}
	for _, c := range []struct {
		typed string
		want  time.Time
	}{
		{"21:30", evening.Add(150 * time.Minute)},
		{"", time.Time{}},
		{"0:30", evening.Add(330 * time.Minute)}, // past midnight
	} {
		got, err := readSettings(before, values("Closing time", c.typed), nil, evening)
		if err != nil || !got.Closing.Equal(c.want) {
			t.Errorf("closing at %q is %v (%v), want %v", c.typed, got.Closing, err, c.want)
		}
	}
}

// TestEveryKeyIsToldAndMeansOneThing: the help page is made from the bindings, and no key of the
// desk hides a tab or another key.
func TestEveryKeyIsToldAndMeansOneThing(t *testing.T) {
	seen := map[string]string{"tab": "tab", "shift+tab": "tab", "esc": "esc"}
	claim := func(k, name string) {
		if other, ok := seen[k]; ok {
			t.Errorf("key %q is for %s and for %s", k, other, name)
		}
		seen[k] = name
	}
	for _, tab := range tabs {
		claim(tab.key, tab.name)
		if !strings.EqualFold(tab.key, tab.name[:1]) {
			t.Errorf("key %q is not the first letter of %s", tab.key, tab.name)
		}
	}
	s := called(t, 2, 8).resize(120, 72).press("?")
	for _, d := range deskKeys() {
		for _, keys := range [][]string{d.letters, d.always} {
			for _, k := range keys {
				claim(k, d.explain)
			}
			s.shows(keys[0])
		}
		for _, k := range d.always {
			if len(k) == 1 {
				t.Errorf("key %q is a letter, which is text at the door", k)
			}
		}
	}
	s.shows("kitchen (non-volley zone)") // its full name, once in help
}

// TestTheReadmeListsTheKeys of the desk, each with the key that works where letters are text.
func TestTheReadmeListsTheKeys(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, d := range deskKeys() {
		want = append(want, fmt.Sprintf("| `%s` or `%s` |", d.letters[0], d.always[0]))
	}
	for row := range strings.Lines(string(text)) {
		if keys, _, ok := strings.Cut(row, "` | "); ok && strings.Contains(keys, "` or `") {
			got = append(got, keys+"` |")
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("the README lists %q, want %q", got, want)
	}
}

// TestStandingsAndHistoryStayAfterTheNight: what was played can be read when it is over.
func TestStandingsAndHistoryStayAfterTheNight(t *testing.T) {
	s := called(t, 1, 4).press("117", "enter").do(session.EndNight{}).press("s").shows("Agnes Vale")
	s.press("h").shows("night ended").press("d").shows("No night is open").press("c").shows("No night is open")
	s.press("f").shows("! no night is open").press("esc", "!").shows("! no night is open")
}
