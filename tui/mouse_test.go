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
	s.clickOn("undo just this").shows("undo just this") // a menu takes no clicks
	if s.night().Count(session.Here) != 12 {
		t.Error("a click has done something")
	}
}

// TestClicksGoNowhereWhileADialogIsOpen: what lies under a box cannot be seen whole.
func TestClicksGoNowhereWhileADialogIsOpen(t *testing.T) {
	s := called(t, 4, 16).press("m").shows("close this court")
	before := s.m.View()
	s.clickOn("History").clickOn("  2 ╌").clickOn("  2 ╌").clickOn("close this court")
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
