package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

func TestClicksChooseScreensByTheirTabs(t *testing.T) {
	s := called(t, 4, 16)
	for i, tab := range tabs {
		s.clickOn(tab.name).shows("[" + tab.name + "]")
		if s.m.active != ui.ScreenID(i) {
			t.Errorf("a click on %s shows screen %d", tab.name, s.m.active)
		}
	}
	s.click(79, 1)
	if s.m.active != ui.History {
		t.Error("a click beside the tabs changes the screen")
	}
}

func TestClicksSelectCourts(t *testing.T) {
	s := called(t, 4, 16)
	s.clickOn("  3 ").shows("▌ 3 ").hides("▌ 1 ")
	s.press("117", "enter")
	if s.final(3) != "11-7" {
		t.Error("the score typed after a click on court 3 is not court 3's")
	}
	s.clickOn("  2 ╌").press("115").clickOn("  1 ╌").shows("▌ 1 ").hides("score: 115")
	s.clickOn("▌ 1 ").shows("Call:") // a second click opens what is selected
	s.clickOn("Call:").shows("Call:")
}

func TestClicksSelectRows(t *testing.T) {
	s := newStage(t).people(2, 12, nil)
	s.press("d").clickOn("Dario Vale").shows("> [x] Dario Vale").hides("here since")
	s.clickOn("Dario Vale").shows("Dario Vale  here since").press("esc").shows("> [x] Dario Vale")
	s.press("esc", "b").clickOn("Cleo Vale").shows("> Cleo Vale").clickOn("Cleo Vale").shows("Cleo Vale  here since").press("esc").shows("> Cleo Vale")
	s.press("h").clickOn("Bram Vale checked in").press("enter").shows("undo just this")
	s.clickOn("undo just this").hides("undo just this")
	if s.night().Count(session.Here) != 11 {
		t.Error("a click on an item does not take it")
	}
}

// TestAClickOnTheLineNextDoesIt where the line names a key for it, and nothing else; a second click calls nothing more.
func TestAClickOnTheLineNextDoesIt(t *testing.T) {
	s := newStage(t).people(2, 9, nil).clickOn("Next: press n").shows("round 1 called")
	before := s.desk.Ledger().Last()
	s.clickOn("Next: round 1").press("s").clickOn("Next: 2 scores to come")
	if s.desk.Ledger().Last() != before || s.m.active != ui.Standings || s.m.wrong != nil {
		t.Errorf("a click on a line without a key of its own did something:\n%s", s.m.View())
	}
	s = newStage(t).people(2, 9, nil).press("o").click(3, 20).hides("round 1 called")
	s.press("esc", "d", "esc", "d").clickOn("Next: press ctrl+n").shows("round 1 called")
}

// TestClicksGoNowhereBesideABox: what lies under it cannot be seen whole.
func TestClicksGoNowhereBesideABox(t *testing.T) {
	s := called(t, 4, 16).resize(80, 30).press("m").shows("close this court")
	before := s.m.View()
	s.clickOn("History").clickOn("  2 ╌").clickOn("  2 ╌").click(79, 12).click(0, 12)
	if s.m.View() != before {
		t.Errorf("clicks change\n%s\nto\n%s", before, s.m.View())
	}
}

func TestTheWheelMovesLikeTheArrows(t *testing.T) {
	s := called(t, 4, 16).press("h")
	wheel := func(b tea.MouseButton) { s.send(tea.MouseMsg{X: 3, Y: 8, Action: tea.MouseActionPress, Button: b}) }
	before := s.m.View()
	wheel(tea.MouseButtonWheelDown)
	if s.m.View() == before {
		t.Error("the wheel does nothing")
	}
	wheel(tea.MouseButtonWheelUp)
	if s.m.View() != before {
		t.Error("the wheel up does not take back the wheel down")
	}
}

func TestOnlyPressesOfTheLeftButtonClick(t *testing.T) {
	s := called(t, 4, 16)
	for _, e := range []tea.MouseMsg{
		{X: 1, Y: 1, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft},
		{X: 1, Y: 1, Action: tea.MouseActionMotion, Button: tea.MouseButtonLeft},
		{X: 1, Y: 1, Action: tea.MouseActionPress, Button: tea.MouseButtonRight},
		{X: 1, Y: 1, Action: tea.MouseActionPress, Button: tea.MouseButtonMiddle},
	} {
		if s.send(e).shows("[Courts]"); s.m.active != ui.Courts {
			t.Errorf("%v changes the screen", e)
		}
	}
}

// TestClicksTakeWhatBoxesShow, at three sizes of terminal: items of menus, people, fields and options of forms,
// and what the palette finds.
func TestClicksTakeWhatBoxesShow(t *testing.T) {
	for _, size := range sizes {
		s := called(t, 2, 9).resize(size[0], size[1])
		s.press("c", "x").clickOn("3  Bram Vale").shows("Who is the sub for Bram Vale?").clickOn("> Iris Vale")
		if s.night().Playing(s.night().Roll[8].Person) == nil {
			t.Errorf("at %v a click puts nobody in", size)
		}
		s.press("o", "e").clickOn("Format").clickOn("Format").press("enter")
		if got := s.night().Settings.Format; got == called(t, 1, 4).night().Settings.Format {
			t.Errorf("at %v clicks on options change nothing: %v", size, got)
		}
		s.press(":", "bench who").clickOn("> Bench").shows("[Bench]")
	}
}

// TestClicksPressTheKeysOfTheFooter, of screens, boxes and the desk.
func TestClicksPressTheKeysOfTheFooter(t *testing.T) {
	s := called(t, 2, 9).clickOn("m more").shows("close this court").clickOn("esc back").hides("close this court")
	s.clickOn("? help").shows("─ Keys ").clickOn("/ filter").shows("Filter:").clickOn("enter back").hides("─ Keys ")
	s.clickOn(": all").shows("─ Do ").press("esc")
	if s.clickOn("q quit"); !s.quit {
		t.Error("a click on quit does not quit")
	}
	s = called(t, 2, 9).press("home")
	before := s.trace()
	if s.clickOn("arrows court").clickOn("  q quit"); s.trace() != before || s.quit {
		t.Error("a click on keys that do different things, or between two keys, does something")
	}
}

// TestClicksOnTheHalvesOfTheBoardScoreRallies, in every size of the board.
func TestClicksOnTheHalvesOfTheBoardScoreRallies(t *testing.T) {
	for _, size := range append(sizes, [2]int{minWidth, minHeight}) {
		s := called(t, 1, 4).resize(size[0], size[1]).press("enter").clickOn("Agnes & Dario").clickOn("Bram & Cleo").clickOn("Bram & Cleo")
		if got := s.night().Game(1).State.Score; got.A != 1 || got.B != 1 {
			t.Errorf("at %v a rally to the left and two to the right, after a side out, give %v\n%s", size, got, s.m.View())
		}
	}
	s := called(t, 1, 4).press("enter")
	last := s.desk.Ledger().Last()
	if s.clickOn("time-outs left").clickOn("Call:").click(79, 14); s.desk.Ledger().Last() != last {
		t.Error("a click beside the court scores a rally")
	}
}

// TestTheWheelScrollsBoxes and never closes one.
func TestTheWheelScrollsBoxes(t *testing.T) {
	wheel := func(s *stage, b tea.MouseButton) {
		s.send(tea.MouseMsg{X: 20, Y: 8, Action: tea.MouseActionPress, Button: b})
	}
	s := called(t, 2, 9).press("?")
	before := s.m.View()
	if wheel(s, tea.MouseButtonWheelDown); s.m.View() == before {
		t.Error("the wheel does not scroll the keys")
	}
	s = called(t, 2, 9).press("k").shows("Who plays where")
	wheel(s, tea.MouseButtonWheelDown)
	s.shows("Who plays where")
}

func TestAClickOnTheMostUrgentMatterListsAll(t *testing.T) {
	called(t, 2, 9).pass(30).send(tickMsg{}).clickOn("court 1 has played").shows("─ Attention ").clickOn("court 2 has played").clickOn("court 2 has played").shows("▌ 2 ")
}
