package tui

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/widget"
)

// onBoard is a stage with the game of court 1, Agnes and Dario against Bram and Cleo, on its board, and
// Edda on the bench.
func onBoard(t testing.TB) *stage {
	t.Helper()
	return called(t, 1, 5).press("enter").shows("Call: 0 - 0 - 2")
}

// sheet is the log of the first game as the session has it.
func (s *stage) sheet() []scoring.Entry {
	s.t.Helper()
	return s.desk.Ledger().Club().Night().Game(1).Sheet().Entries
}

// last is the newest entry of the first game.
func (s *stage) last() scoring.Entry {
	s.t.Helper()
	entries := s.sheet()
	if len(entries) == 0 {
		s.t.Fatal("nothing is noted")
	}
	return entries[len(entries)-1]
}

func TestFaultsAreAskedForOnlyWhenWanted(t *testing.T) {
	s := onBoard(t).press("left")
	if r := s.last().Rally; r != (scoring.Rally{Won: scoring.A}) {
		t.Fatalf("a rally without faults is noted as %+v", r)
	}
	s.press("F").shows("F no faults").press("left").shows("How did Bram & Cleo lose it?", "1 Bram  2 Cleo")
	if len(s.sheet()) != 1 {
		t.Fatal("the rally was noted before its fault was told")
	}
	s.press("n").shows("faults 0 and 1").hides("How did")
	if r := s.last().Rally; r != (scoring.Rally{Won: scoring.A, Fault: scoring.Net}) {
		t.Errorf("the ball in the net is noted as %+v", r)
	}
	s.press("F", "right")
	if r := s.last().Rally; r != (scoring.Rally{Won: scoring.B}) {
		t.Errorf("after faults are off a rally is noted as %+v", r)
	}
}

// TestEachFaultHasItsKey: the board and the engine know the same faults.
func TestEachFaultHasItsKey(t *testing.T) {
	keys := map[string]scoring.Fault{
		"o": scoring.Out, "n": scoring.Net, "s": scoring.SecondBounce, "k": scoring.Kitchen, "v": scoring.ServiceFault,
		"t": scoring.FootFault, "h": scoring.HitByBall, "x": scoring.Other, "enter": scoring.None,
	}
	if len(keys) != len(scoring.Faults())+1 {
		t.Fatalf("%d keys for %d faults", len(keys)-1, len(scoring.Faults()))
	}
	s := onBoard(t).press("F")
	for key, fault := range keys {
		s.press("right", key)
		if r := s.last().Rally; r != (scoring.Rally{Won: scoring.B, Fault: fault}) {
			t.Errorf("key %s is noted as %+v, want %v", key, r, fault)
		}
		s.press("backspace")
	}
}

func TestSayingWhoLostTheRally(t *testing.T) {
	s := onBoard(t).press("F", "right", "2").shows("[2 Dario]").press("k")
	if r := s.last().Rally; r != (scoring.Rally{Won: scoring.B, Fault: scoring.Kitchen, By: 2}) {
		t.Errorf("noted is %+v", r)
	}
	s.press("right", "1", "1").hides("[1").press("1", "left").shows("How did Bram & Cleo").hides("[1").press("esc")
	if len(s.sheet()) != 2 {
		t.Errorf("%d entries, want two: the next rally saves the one that was asked about, and esc drops the last question", len(s.sheet()))
	}
	s.press("right", "2", "enter")
	if r := s.last().Rally; r != (scoring.Rally{Won: scoring.B}) {
		t.Errorf("nobody can have made no fault, and noted is %+v", r)
	}
	s.press("m", "w").shows("Faults of tonight", "Court 1, Agnes & Dario: kitchen 1", "Court 1, Bram & Cleo: none noted", "Dario Vale")
}

// TestChangeOfEndsIsShownUntilDone: however many rallies later somebody remembers.
func TestChangeOfEndsIsShownUntilDone(t *testing.T) {
	s := onBoard(t).press("aaaaa").hides("Switch ends").press("a").shows("Switch ends now")
	s.press("ab").shows("Switch ends now; press e").press("e").hides("Switch ends").shows("Saved: court 1: ends switched")
	s.press("backspace").shows("Switch ends now").press("e", "e").shows("it is not time to switch ends")
}

func TestTimeOutsAreCountedDown(t *testing.T) {
	s := onBoard(t).press("a").shows("time-outs left 2 and 2")
	s.press("m", "t", "b").shows("time-outs left 2 and 1", "Time-out of Bram & Cleo until", "19:01:00.")
	s.press("m", "t", "b").shows("time-outs left 2 and 0").press("m", "t").shows("0 left (used up)").press("b").shows("! used up").press("esc")
	s.press("m", "m", "a").shows("Medical time-out of Agnes &", "19:15:00.", "get qualified people", "your venue decide")
	s.press("a").hides("Medical time-out of Agnes", "19:15:00", "qualified people")
	s.press("m", "m", "a").shows("team A has had its 1 medical time-out")
}

func TestCorrectionsAtTheBoard(t *testing.T) {
	for name, c := range map[string]struct {
		keys  []string
		kind  scoring.Kind
		shows string
	}{
		"one too many":     {[]string{"m", "r", "down", "left", "enter"}, scoring.RallyRemoved, "Call: 2 - 0 - 2"},
		"noted wrongly":    {[]string{"m", "r", "enter"}, scoring.RallyChanged, "Call: 3 - 0 - 2"},
		"forgotten":        {[]string{"m", "f", "enter"}, scoring.RallyInserted, "Call: 0 - 2 - 2"},
		"forgotten first":  {[]string{"m", "f", "right", "down", "1", "enter"}, scoring.RallyInserted, "Call: 0 - 0 - 2"},
		"set right":        {[]string{"m", "s", "5", "down", "4", "down", "right", "enter"}, scoring.SetRight, "Cleo serves from the left box"},
		"technical foul":   {[]string{"m", "p", "a"}, scoring.TechnicalFoul, "A technical foul of Agnes and Dario"},
		"organiser's stop": {[]string{"m", "o"}, scoring.RefereeTimeOut, "Referee time-out"},
		"note":             {[]string{"m", "n", "sun in the eyes", "enter"}, scoring.Remark, "note: sun in the eyes"},
	} {
		t.Run(name, func(t *testing.T) {
			s := onBoard(t).press("aab").press(c.keys...).shows(c.shows)
			if got := s.last().Kind; got != c.kind {
				t.Errorf("noted is %v, want %v", got, c.kind)
			}
			if s.press("m", "l").shows("The sheet, newest first", "  4  ").press("esc").press("backspace"); len(s.sheet()) != 3 {
				t.Errorf("%d entries after backspace, want the three rallies", len(s.sheet()))
			}
		})
	}
}

// TestAFormSaysWhatCannotBe: a correction that the rules refuse stays in its form.
func TestAFormSaysWhatCannotBe(t *testing.T) {
	s := onBoard(t).press("aa").press("m", "s", "40", "enter").shows("correct", "! ")
	s.press("esc").press("m", "r", "9", "enter").shows("no rally 9").press("esc").shows("Call: 2 - 0 - 2")
	if len(s.sheet()) != 2 {
		t.Errorf("%d entries, want the two rallies", len(s.sheet()))
	}
}

func TestASideGivesUpAtTheBoard(t *testing.T) {
	s := onBoard(t).press("aaa").press("m", "g", "a")
	if got := s.final(1); got != "3-0 retired, B won" {
		t.Errorf("the game ended as %q", got)
	}
	s.shows("Game over: 3-0 (a retired)").press("u")
	if got := s.final(1); got != "" {
		t.Errorf("after undo it ended as %q, want it to go on", got)
	}
}

func TestTheClockStopsAGame(t *testing.T) {
	s := newStage(t).people(1, 4, func(s *session.Settings) { s.Scoring.Minutes = 9 }).press("n")
	s.press("home").shows("0 of 9′").pass(9).send(tickMsg{}).shows("time is up")
	s.press("enter").press("aab").press("m", "u")
	if got := s.final(1); got != "2-0 timed" {
		t.Errorf("the game ended as %q, want 2-0 timed", got)
	}
}

func TestSomebodyDoesNotCome(t *testing.T) {
	s := called(t, 1, 5).press("m").shows("a player did not come: 5 minutes of grace left")
	s.press("p", "2").shows("Dario Vale rests until back", "in 5 minutes, when the grace is over").press("w").shows("! in 5 minutes")
	s.press("esc", "z").hides("rests until back").pass(5).send(tickMsg{})
	s.press("m", "p", "2", "w")
	if got := s.final(1); got != "0-11 walkover" {
		t.Errorf("the game ended as %q, want a walkover to B", got)
	}
	if got := s.night().Count(session.Resting); got != 1 {
		t.Errorf("%d people rest, want Dario", got)
	}
	s.press("u", "y", "m", "p", "2", "x", "enter").shows("Agnes Vale & Edda Vale")
	if g := s.night().Game(1); !g.Running() || s.night().Count(session.Resting) != 1 {
		t.Errorf("the game goes on: %v, and %d rest; want it played with Edda and Dario at rest", g.Running(), s.night().Count(session.Resting))
	}
}

// TestWillItFit: from the rotation to the answer in one key, and on to the settings that it means.
func TestWillItFit(t *testing.T) {
	s := newStage(t).people(2, 8, nil).press("r", "p").shows("Will it fit?", "Games each < 8 >", "- 21:00 +", "It takes 8 more rounds", "longest that fits")
	s.press("left", "left").shows("Games each < 6 >", "It takes 6 more rounds").press("+").shows("- 21:15 +").press("-", "-").shows("- 20:45 +")
	for range 12 {
		s.press("left")
	}
	s.shows("Games each < 1 >").press("end").shows("> ").press("esc").hides("Will it fit?")
	s.press("p", "end").shows("minutes, then the score decides")
	s.press("enter").hides("Will it fit?")
	n := s.night().Settings
	if n.Scoring.Minutes == 0 || n.Rounds != 8 || n.Closing.IsZero() {
		t.Errorf("the settings are %+v, want 8 rounds by the clock", n)
	}
	s.press("p", "home", "enter") // and back to games without a clock
	if m := s.night().Settings.Scoring.Minutes; m != 0 {
		t.Errorf("%d minutes a game are left over", m)
	}
	s.press("p")
	for range 8 { // two hours earlier
		s.press("-")
	}
	s.shows("no time is left before 19:00").press("down", "enter").shows("! no time is left", "Will it fit?")
}

// TestTheBoardTakesAnyKeys: no keys make the board or its boxes show more than the terminal has, and none
// leaves a state that the log does not give.
func TestTheBoardTakesAnyKeys(t *testing.T) {
	keys := []string{
		"left", "right", "a", "b", "f", "f", "o", "n", "s", "k", "v", "t", "h", "x", "1", "2", "enter", "esc", "backspace",
		"m", "m", "e", "p", "g", "c", "l", "w", "u", "down", "up", "tab", "5", " ",
	}
	rapid.Check(t, func(rt *rapid.T) {
		s := onBoard(t)
		size := rapid.SampledFrom([][2]int{{80, 24}, {120, 36}, {40, 12}}).Draw(rt, "size")
		s.resize(size[0], size[1])
		for _, key := range rapid.SliceOfN(rapid.SampledFrom(keys), 1, 60).Draw(rt, "keys") {
			s.press(key)
			checkFrame(rt, s.m)
			s.quit = false
		}
		checkReplay(rt, s)
	})
}

// TestTheEndOfAGameIsTakenBackOnTheBoard: while the result is shown, u does what the line Next says.
func TestTheEndOfAGameIsTakenBackOnTheBoard(t *testing.T) {
	s := onBoard(t).press("aaaaaaaaaaa").shows("Game over: 11-0", "u takes its")
	s.press("ctrl+p", "l", "esc") // something else happens since, and u is still about this game
	s.press("u").shows("Call: 10 - 0 - 2")
	if got := s.final(1); got != "" {
		t.Errorf("after u the game has ended as %q, want it to go on", got)
	}
	if s.night().Hold == nil {
		t.Error("u took the hold back, which came after the game")
	}
}

// TestEndsSwitchedSwapsTheDrawing: once the teams have changed ends, the left arrow and a click on the left
// half are about the team that is on the left now, and so is the picture.
func TestEndsSwitchedSwapsTheDrawing(t *testing.T) {
	for _, size := range append(sizes, [2]int{minWidth, minHeight}) {
		s := onBoard(t).resize(size[0], size[1]).press("aaaaaa", "e")
		if !s.before("Bram & Cleo", "Agnes & Dario") {
			t.Fatalf("at %v the teams are not drawn with their ends changed:\n%s", size, s.m.View())
		}
		s.press("right") // Agnes and Dario, who serve, are on the right now
		if got := s.night().Game(1).State.Score; got != (scoring.Score{A: 7}) {
			t.Errorf("at %v the right arrow gives %v, want a point to the team on the right", size, got)
		}
		s.clickOn("Bram & Cleo").clickOn("Bram & Cleo") // side out, and a point
		if got := s.night().Game(1).State.Score; got != (scoring.Score{A: 7, B: 1}) {
			t.Errorf("at %v two clicks on the left half give %v, want 7-1", size, got)
		}
		s.press("a")
		if got := s.last().Rally.Won; got != scoring.A {
			t.Errorf("a is about team %v, want the same team always", got)
		}
		s.press("F", "left").shows("How did Agnes & Dario lose it?")
	}
}

// TestTheBoardIsMirrored for whoever looks from the other side of the hall, for all games of tonight.
func TestTheBoardIsMirrored(t *testing.T) {
	s := called(t, 2, 8).press("home", "enter")
	if !s.before("Agnes & Dario", "Bram & Cleo") {
		t.Fatalf("the teams are not in their order:\n%s", s.m.View())
	}
	if s.press("v"); !s.before("Bram & Cleo", "Agnes & Dario") {
		t.Fatalf("v does not mirror the court:\n%s", s.m.View())
	}
	s.press("right").shows("Call: 1 - 0 - 2").press("esc", "right", "enter").shows("Court 2 ")
	if !s.before("Finn & Greta", "Edda & Hugo") {
		t.Errorf("the next board does not look from the same side:\n%s", s.m.View())
	}
	if s.press("v"); !s.before("Edda & Hugo", "Finn & Greta") {
		t.Errorf("v does not mirror back:\n%s", s.m.View())
	}
}

// before tells whether a text stands before another on the screen, read line by line.
func (s *stage) before(first, second string) bool {
	view := s.m.View()
	view = view[:strings.Index(view, "Next:")]
	i, j := strings.Index(view, first), strings.Index(view, second)
	return i >= 0 && i < j
}

// TestTheCallStandsInLargeDigits, and the final score after it.
func TestTheCallStandsInLargeDigits(t *testing.T) {
	s := onBoard(t).press("aaabbba").shows("Call: 2 - 3 - 2")
	rows := widget.Digits("2-3-2", false)
	s.shows(rows[:]...)
	s = onBoard(t).press("aaaaaaaaaaa")
	rows = widget.Digits("11-0", false)
	s.shows(rows[:]...)
}

// TestTheRunOfTheGame shows rally by rally who scored.
func TestTheRunOfTheGame(t *testing.T) {
	s := onBoard(t).press("aabba").shows("rallies 1-5", "Agnes & Dario  ■■", "Agnes & Dario  ■■  ·", "Bram & Cleo      ·■ ")
	s.press("backspace").shows("rallies 1-4").hides("■■  ·").press("m", "p", "a").shows("Agnes & Dario  ■■  −")
}
