//go:build !windows

package main

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// whole is a frame that was drawn for the size it stands in: the clock ends its first line, and keys stand in its last.
func whole(screen string) bool {
	lines := strings.Split(screen, "\n")
	return clockAtTheEnd.MatchString(lines[0]) && strings.TrimSpace(lines[len(lines)-1]) != ""
}

var clockAtTheEnd = regexp.MustCompile(`\d\d:\d\d$`)

// clickOn presses the left button on a text, where the screen shows it, on a terminal that has just had another size.
func (s *terminal) clickOn(text string) *terminal {
	s.t.Helper()
	s.Resize(100+len(text), 30).until("a wide frame", whole).quiet()
	x, y := -1, -1
	s.Resize(80, 24).until("the text "+text+" to click on", func(screen string) bool {
		if !whole(screen) {
			return false
		}
		for row, l := range strings.Split(screen, "\n") {
			if before, _, ok := strings.Cut(l, text); ok {
				x, y = ansi.StringWidth(before)+1, row
				return true
			}
		}
		return false
	})
	return s.Type(fmt.Sprintf("\x1b[<0;%d;%dM\x1b[<0;%d;%dm", x+1, y+1, x+1, y+1))
}

// testNightByMouse goes through a night by the mouse wherever something is offered to click on, with another size of the
// terminal between any two clicks; only numbers are typed.
func testNightByMouse(t *testing.T, bin program) {
	path := fullHall(t, 2)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("[Courts]", "Person A1", "Round 2") // a size that changes before the program listens for it is never told
	desk.clickOn(" a shows it").Shows("Attention").Press("esc")
	desk.clickOn("Person A2").Shows("▌ 2 ").Type("117\r").Shows("Saved: court 2: 11-7")
	desk.Shows("▌ 1 ").clickOn("Person A1").Shows("Call: ") // a click on the chosen court
	desk.clickOn("Person A1")
	desk.Shows("Saved: court 1: rally").clickOn("bksp undo").Shows("undid: court 1: rally").Press("esc").Shows("[Courts]")
	desk.clickOn("m more").Shows("walkover").clickOn("walkover to Person C1").Shows("Saved: court 1:")
	desk.clickOn("Standings").Shows("[Standings]").clickOn("Person A2").Shows("Now ", "Fair ").clickOn("esc back").Hides("Fair ")
	desk.clickOn("v other tables").Shows("points").clickOn("w which nights").Shows("Which nights and games?").clickOn("esc back").Hides("Which nights and games?")
	desk.clickOn("Rotation").Shows("[Rotation]").clickOn("v turn over").Shows("Who met whom")
	desk.clickOn("Bench").Shows("[Bench]").clickOn("? help").Shows("─ Keys").clickOn("esc back").Hides("─ Keys")
	desk.clickOn("Next: ").Shows("round 2 called")
	desk.clickOn("Courts").Shows("[Courts]").Type("1").Shows("score: 1").Type("17\r").Shows("11-7")
	desk.clickOn("History").Shows("[History]").clickOn("round 2 called").Shows("> ")
	if code := desk.Quit("ctrl+c"); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
	n := stateIn(t, path).Night()
	if len(n.Rounds) != 2 || len(n.Running()) != 1 || n.Games[1].Final == nil || n.Games[1].Final.String() != "11-7" {
		t.Errorf("the file has %d rounds, %d games going on: %+v", len(n.Rounds), len(n.Running()), n.Games)
	}
}
