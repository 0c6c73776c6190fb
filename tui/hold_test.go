package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/tui/widget"
)

// minutesLeft demands the large digits of the minutes that are left of the 30.
func (s *stage) minutesLeft(want int) *stage {
	s.t.Helper()
	for _, row := range widget.Big(fmt.Sprint(want), false) {
		s.shows(strings.TrimRight(row, " "))
	}
	return s
}

// TestAHoldTakesTheScreen with the reason, the time, what to do and who was told, at once and when the desk is
// opened anew.
func TestAHoldTakesTheScreen(t *testing.T) {
	s := called(t, 3, 14).press("!", "l")
	says := func() {
		t.Helper()
		for _, row := range widget.Big("PLAY HELD", false) {
			s.shows(strings.TrimRight(row, " "))
		}
		s.shows("lightning or thunder · since 19:00", "Go indoors", "Your venue decides", "Told to stop: 0 of 3 courts").hides("[Courts]")
	}
	says()
	s.reopen()
	says()
}

// TestThunderIsOneKey: each begins the 30 minutes anew, is saved, and is taken back like anything else.
func TestThunderIsOneKey(t *testing.T) {
	s := called(t, 2, 9).press("!", "l").minutesLeft(30).shows("since the hold began, 19:00")
	s.pass(12).send(tickMsg{}).minutesLeft(18).press("t").minutesLeft(30).shows("since the last thunder, 19:12", "Saved: thunder heard")
	s.pass(1).press("t").pass(4).send(tickMsg{}).minutesLeft(26).press("u").minutesLeft(25)
	s.reopen().minutesLeft(25)
	checkReplay(t, s)
}

// TestAHoldNeverEndsByItself: with the 30 minutes over it waits for a person, whom it asks.
func TestAHoldNeverEndsByItself(t *testing.T) {
	rings := 0
	s := called(t, 2, 9).press("!", "l").pass(29).send(tickMsg{}).press("!").shows("Only 29 of 30 minutes are over").press("s")
	s.m.options.Bell = func() { rings++ }
	s.pass(200).press("z").shows("minutes are left of the 30", "nothing starts by itself")
	if s.night().Hold == nil || rings != 1 {
		t.Fatalf("after the 30 minutes the hold is %v and the bell rang %d times, want it held and once", s.night().Hold, rings)
	}
	s.press("!").shows("May play go on?", "decides for your venue", "its own rules").press("enter")
	if s.night().Hold == nil {
		t.Fatal("an enter ends the hold without an answer")
	}
	if s.press("y").hides("May play go on?", "Told to stop"); s.night().Hold != nil {
		t.Error("y does not end the hold")
	}
}

// TestTheHallUnderAHold: esc shows it with a line that stays, a finished game's score is taken, and one key
// leads back.
func TestTheHallUnderAHold(t *testing.T) {
	s := called(t, 2, 9).press("!", "l", "esc").shows("[Courts]", "PLAY HELD", "! play is held: lightning or thunder")
	s.press("home", "117", "enter").shows("! play is held")
	if s.final(1) != "11-7" {
		t.Error("the score of a finished game is not taken during a hold")
	}
	for _, tab := range tabs {
		s.press("esc", tab.key).shows("! play is held")
	}
	s.press("esc", "!").shows("Told to stop: 0 of 1 courts")
}

// TestWhoWasToldIsNoted court by court, or of all at once.
func TestWhoWasToldIsNoted(t *testing.T) {
	s := called(t, 3, 14).press("!", "w", "right", "enter").shows("Told to stop: 1 of 3 courts", "Saved: told that play is held: court 2")
	s.press("enter").shows("2 of 3", "court 3").press("a").shows("3 of 3").press("a").shows("! all courts were told")
	s.press("u").shows("2 of 3")
	s.press("end").clickOn("to tell").shows("2 of 3").clickOn("to tell").shows("3 of 3")
}

func TestGoldenHold(t *testing.T) {
	for _, c := range []struct {
		name string
		open func(*testing.T) *stage
		keys []string
	}{
		{"lightning", func(t *testing.T) *stage { return called(t, 12, 50) }, []string{"!", "l", "enter", "t", "enter"}},
		{"injury", func(t *testing.T) *stage { return called(t, 3, 14) }, []string{"!", "i"}},
	} {
		for _, size := range append(sizes, [2]int{minWidth, minHeight}, [2]int{60, 18}) {
			t.Run(fmt.Sprintf("%s/%dx%d", c.name, size[0], size[1]), func(t *testing.T) {
				s := c.open(t).resize(size[0], size[1]).press(c.keys...).pass(7).send(tickMsg{})
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
			})
		}
	}
}
