package tui

import (
	"strings"
	"testing"
)

// TestHeatAtTheDesk: what is typed as on the command line is kept with its time, shown with what to do, and reminds.
func TestHeatAtTheDesk(t *testing.T) {
	typed := func(text string) []string { return strings.Split(text, "") }
	s := called(t, 2, 9).press("o", "h").shows("Local rules, the venue and qualified people decide")
	s.press(typed("33")...).press("down").press(typed("60%")...).press("enter").shows("a temperature with its unit, such as 33C or 91F")
	s.press("up").press("end", "C", "enter")
	s.shows("it feels like 39.5 °C (103.1 °F)", "call the emergency", "Measured at 19:00", "Our rule, no", "qualified people decide")
	s.press("esc").shows("! heat: danger at 19:00; stop, unless a qualified person")
	s.pass(31).press("a", "x").hides("! heat")
	s.pass(31).send(tickMsg{}).shows("! heat", "measure again (our rule: every 30 min)")
	s.press("a", "enter").shows("Measured at 19:00").press("enter")
	s.press(typed("24C")...).press("down").press(typed("40")...).press("enter").shows("below all classes of caution").press("esc").hides("! heat")
	s.press("h").shows("heat: feels like 39.5 °C")
	checkReplay(t, s)
}

// TestHeatNeedsANight: without one nothing is kept.
func TestHeatNeedsANight(t *testing.T) {
	s := newStage(t)
	if s.m.heat(); s.m.dialog() != nil {
		t.Error("the heat of no night is asked for")
	}
}
