package tui

import (
	"strings"
	"testing"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// TestAttentionStandsOnEveryScreen in one line with a count, and in a list by one key.
func TestAttentionStandsOnEveryScreen(t *testing.T) {
	s := called(t, 2, 9).pass(30).send(tickMsg{})
	for _, tab := range tabs {
		key := "a"
		if tab.key == "d" {
			key = "ctrl+a"
		}
		s.press("esc", tab.key).shows("! court 1 has played for 30 min", "+3, "+key+" lists them")
		s.press(key).shows("─ Attention ", "court 2 has played").press("esc")
	}
	s.press("b", "a", "down", "enter").shows("[Courts]", "▌ 2 ")
	called(t, 2, 9).press("a").shows("> called and not read out yet: courts 1, 2", "read it out").press("x").shows("Nothing wants your attention")
}

// TestAMatterIsPutAsideUntilItChanges: minutes alone do not bring it back, another game does.
func TestAMatterIsPutAsideUntilItChanges(t *testing.T) {
	s := called(t, 1, 4).pass(30).send(tickMsg{}).press("a", "x").shows("Nothing wants").press("esc").hides("has played")
	s.pass(5).send(tickMsg{}).hides("has played")
	s.press("117", "enter").shows("round 1 is complete").press("n").hides("round 1 is complete")
	s.pass(90).send(tickMsg{}).shows("court 1 has played for 90 min")
}

// TestEnterDoesWhatAMatterNeeds.
func TestEnterDoesWhatAMatterNeeds(t *testing.T) {
	s := called(t, 1, 4).press("117", "enter", "s", "a", "enter").shows("round 2 called")
	s.press("!", "h", "esc", "a", "enter").shows("Told to stop").press("!", "y").hides("PLAY HELD")
}

// TestTheFileIsTheFirstMatter while something is not saved.
func TestTheFileIsTheFirstMatter(t *testing.T) {
	s, disk := troubled(t)
	s.press("117", "enter").shows(" ! not saved: ").press("a").shows("ctrl+r saves it")
	disk.full = false
	s.press("enter").hides(" ! not saved")
	if s.final(1) != "11-7" {
		t.Error("it is not saved")
	}
}

// TestTheBellRingsOnce for a round that is complete, a time limit and a hold, and for nothing else; and only
// when it is wanted.
func TestTheBellRingsOnce(t *testing.T) {
	rings := 0
	s := newStage(t).people(1, 5, func(set *session.Settings) { set.Scoring.Minutes = 12 })
	s.m.options.Bell = func() { rings++ }
	expect := func(moment string, want int) {
		t.Helper()
		if rings != want {
			t.Errorf("%s the bell has rung %d times, want %d", moment, rings, want)
		}
	}
	s.press("n")
	expect("after the call", 0)
	s.pass(12).press("b")
	expect("at the time limit", 1)
	s.pass(3).press("b", "c")
	expect("a little later", 1)
	s.press("96t", "enter")
	expect("with the round complete", 2)
	s.press("!", "l")
	expect("on hold", 3)
	s.m.options.Bell = nil
	s.press("!", "y", "!", "h").press("esc")
	expect("without a bell", 3)
	s.m.options.Bell = func() { rings++ }
	s.m.active = ui.Courts
	s.press("b")
	expect("later", 3)
}

func TestAttentionFitsTheSmallestTerminal(t *testing.T) {
	s := called(t, 2, 9).pass(30).send(tickMsg{}).resize(minWidth, minHeight)
	checkFrame(t, s.m)
	if l := s.lines()[2]; !strings.Contains(l, "court 1") || !strings.Contains(l, "lists them") {
		t.Errorf("the line says %q", l)
	}
}
