package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scoring"
)

// TestTheHallDrawsTeamsWhereTheyStand: after the teams have changed ends, each is drawn on the other half.
func TestTheHallDrawsTeamsWhereTheyStand(t *testing.T) {
	s := called(t, 1, 4).resize(200, 60)
	g := s.night().Running()[0]
	halves := func() (a, b int) {
		for _, l := range s.lines() {
			if l = ansi.Truncate(l, 90, ""); strings.Contains(l, "║") { // beside the courts stands who is next
				if at := strings.Index(l, s.m.names.Short(g.A[0])); at >= 0 {
					a = ansi.StringWidth(l[:at])
				}
				if at := strings.Index(l, s.m.names.Short(g.B[0])); at >= 0 {
					b = ansi.StringWidth(l[:at])
				}
			}
		}
		return a, b
	}
	if a, b := halves(); a == 0 || a > b {
		t.Fatalf("at first team A stands at %d and team B at %d:\n%s", a, b, s.m.View())
	}
	s.press("enter", "aaaaaa", "e", "esc")
	if a, b := halves(); b == 0 || a < b {
		t.Errorf("after the change team A stands at %d and team B at %d:\n%s", a, b, s.m.View())
	}
	s.press("enter", "aaaaa", "enter")
	if g = s.night().Game(g.ID); g.Final == nil || g.Final.How() != scoring.Played {
		t.Fatal("the game is not over")
	}
	if a, b := halves(); b == 0 || a < b {
		t.Errorf("after the game team A stands at %d and team B at %d:\n%s", a, b, s.m.View())
	}
}
