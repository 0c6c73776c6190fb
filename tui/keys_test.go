package tui

import (
	"errors"
	"testing"

	"club/quadrille/tui/config"
)

// TestKeysAreAsSomebodyWantsThem: matched, drawn in footer and help, and found, while ctrl+c quits all the same.
func TestKeysAreAsSomebodyWantsThem(t *testing.T) {
	c, wrong := config.Parse([]byte("[keys]\nhelp = [\"j\", \"f3\"]\nquit = \"ctrl+q\"\nhold-play = \"J\"\n"), Keys())
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	s := called(t, 2, 9)
	s.m = New(s.desk, Options{Theme: s.theme, Keys: c.Keys})
	s.plan()
	s.resize(80, 24).shows("j help").press("?").hides("─ Keys ").press("j", "/", "all keys").shows("j or f3").press("esc", "esc", "f3").shows("─ Keys ").press("esc")
	s.press("J").shows("Hold play").press("esc", ":", "hold").shows("J")
	if s.press("esc", "ctrl+c"); !s.quit {
		t.Error("ctrl+c does not quit")
	}
}

// TestAKeyOfTheScreenStaysTheScreens, whatever the desk's keys are, and the help says so.
func TestAKeyOfTheScreenStaysTheScreens(t *testing.T) {
	c, wrong := config.Parse([]byte("[keys]\nhold-play = \"m\"\n"), Keys())
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	s := called(t, 2, 9)
	s.m = New(s.desk, Options{Theme: s.theme, Keys: c.Keys})
	s.plan()
	s.resize(200, 60).press("c", "m").shows("close this court").press("esc", "?").hides("m or ctrl+p").press("esc", "b", "m").shows("Hold play")
}

// TestWarningsAreToldWhenTheDeskOpens.
func TestWarningsAreToldWhenTheDeskOpens(t *testing.T) {
	s := called(t, 2, 9)
	s.m = New(s.desk, Options{Theme: s.theme, Warnings: []error{errors.New("first"), errors.New("desk.toml, line 2")}})
	s.resize(80, 24).shows("! desk.toml, line 2", "(esc; 1 before)").press("esc").hides("desk.toml")
}
