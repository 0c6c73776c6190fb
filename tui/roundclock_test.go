package tui

import (
	"strings"
	"testing"

	"club/quadrille/session"
	"club/quadrille/tui/widget"
)

// TestTheRoundHasAClock: by when it should be over stands in the hall in large digits, and when that has passed
// it wants attention.
func TestTheRoundHasAClock(t *testing.T) {
	for _, size := range [][2]int{{120, 36}, {200, 60}} {
		s := newStage(t).people(3, 14, func(set *session.Settings) { set.Scoring.Minutes = 12 })
		s.press("n").resize(size[0], size[1]).shows("round 1 should be over", "12 min left")
		for _, row := range widget.Digits("19:12", false) {
			s.shows(strings.TrimRight(row, " "))
		}
		s.pass(15).send(tickMsg{}).shows("over for 3 min").shows("! time is up on court 1")
		s.press("!", "h", "esc").shows("play is held")
		s = called(t, 2, 8).resize(size[0], size[1]).pass(30).send(tickMsg{}).shows("over for ")
		s.press("a").shows("round 1 should have been over by 19:", "courts 1, 2 still play").press("end", "enter").shows("[Courts]")
	}
}
