package tui

import (
	"fmt"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/theme"
)

// The golden frames are the desk as it was last looked at and found good. After a change of words
// or layout, look at the difference and refresh all of them:
//
//	go test ./tui -run Golden -update

// midNight is a night under way: round 1 played, round 2 called with one score entered, one game in
// the middle of its rallies, somebody gone and somebody resting.
func midNight(t *testing.T, s *stage) *stage {
	t.Helper()
	s.press("c", "n").pass(13)
	courts := len(s.night().Courts)
	for i := range courts {
		s.press([]string{"117", "911", "1210", "11 1", "115"}[i%5], "enter")
	}
	s.pass(2)
	roll := s.night().Roll
	s.do(session.Leave{Person: roll[5].Person}, session.Rest{Person: roll[9].Person})
	s.press("n").pass(7).press("home", "enter", "aabba", "esc", "right", "96t", "enter").pass(1)
	s.m.plan.Certificate = judged
	return s.press("home")
}

// judged is a certificate with gaps, so that the frames do not depend on how rotations are judged.
var judged = scheduler.Certificate{
	SitoutSpread:     scheduler.Value{Value: 1, Bound: 1},
	BenchedTwice:     scheduler.Value{Value: 0, Bound: 0},
	PartnerRepeats:   scheduler.Value{Value: 0, Bound: 0},
	PartnerEvenness:  scheduler.Value{Value: 0, Bound: 0},
	MeetingEvenness:  scheduler.Value{Value: 61, Bound: 58},
	OpponentEvenness: scheduler.Value{Value: 24, Bound: 22},
	CourtSpread:      scheduler.Value{Value: 9, Bound: 0},
}

// sizes are the terminals that the frames are drawn for.
var sizes = [][2]int{{80, 24}, {120, 36}, {200, 60}}

// TestGoldenScreens draws every screen of three nights on three terminals.
func TestGoldenScreens(t *testing.T) {
	for _, night := range []struct {
		name string
		open func(*testing.T) *stage
	}{
		{"18 on 4", func(t *testing.T) *stage { return newStage(t).roster(4, "roster18.csv") }},
		{"37 on 7", func(t *testing.T) *stage { return newStage(t).roster(7, "roster37.csv") }},
		{"50 on 12", func(t *testing.T) *stage { return newStage(t).people(12, 50, nil) }},
	} {
		s := midNight(t, night.open(t))
		for _, tab := range tabs {
			for _, size := range sizes {
				t.Run(fmt.Sprintf("%s/%s/%dx%d", night.name, tab.name, size[0], size[1]), func(t *testing.T) {
					s.resize(size[0], size[1]).press("esc", tab.key)
					checkFrame(t, s.m)
					golden.RequireEqual(t, s.m.View())
				})
			}
		}
	}
}

// TestGoldenColours draws every screen once as a terminal of sixteen colours shows it.
func TestGoldenColours(t *testing.T) {
	t.Setenv("NO_COLOR", "")
	t.Setenv("CLICOLOR_FORCE", "1")
	t.Setenv("TERM", "xterm")
	t.Setenv("COLORTERM", "")
	before, profile := lipgloss.HasDarkBackground(), lipgloss.ColorProfile()
	lipgloss.SetHasDarkBackground(true)
	lipgloss.SetColorProfile(termenv.ANSI) // text fields draw their cursor by it
	t.Cleanup(func() {
		lipgloss.SetHasDarkBackground(before)
		lipgloss.SetColorProfile(profile)
	})
	s := midNight(t, newStage(t).roster(4, "roster18.csv"))
	s.theme = theme.New(io.Discard)
	s.reopen()
	s.m.plan.Certificate = judged
	for _, tab := range tabs {
		t.Run(tab.name, func(t *testing.T) {
			s.press("esc", tab.key)
			checkFrame(t, s.m)
			golden.RequireEqual(t, s.m.View())
		})
	}
}

// TestGoldenMoments draws what opens over the screens, and the moments that are no usual frame.
func TestGoldenMoments(t *testing.T) {
	for _, c := range []struct {
		name string
		open func(*testing.T) *stage
		keys []string
	}{
		{"welcome", newQuietStage, nil},
		{"open tonight", newQuietStage, []string{"n"}},
		{"open tonight refused", newQuietStage, []string{"n", "down", "many", "enter"}},
		{"door without people", emptyNight, nil},
		{"roster form", emptyNight, []string{"ctrl+o"}},
		{"guest", emptyNight, []string{"Zoe Zimmer"}},
		{"planned", eighteen, nil},
		{"court menu", underWay, []string{"m"}},
		{"who comes out", underWay, []string{"x"}},
		{"who goes in", underWay, []string{"x", "2"}},
		{"score begun", underWay, []string{"11"}},
		{"score read", underWay, []string{"117"}},
		{"score swapped", underWay, []string{"117", "tab"}},
		{"score in two ways", underWay, []string{"111", "enter"}},
		{"score refused", underWay, []string{"11 10", "enter"}},
		{"score timed", underWay, []string{"96t"}},
		{"score retired by whom", underWay, []string{"96r"}},
		{"score retired by the leader", underWay, []string{"96ra"}},
		{"board", underWay, []string{"enter"}},
		{"board at game point", underWay, []string{"enter", "aaaaaaa"}},
		{"board menu", underWay, []string{"enter", "m"}},
		{"set right", underWay, []string{"enter", "m", "s"}},
		{"forgotten rally", underWay, []string{"enter", "m", "f"}},
		{"fault asked for", underWay, []string{"enter", "F", "left", "1"}},
		{"sheet", underWay, []string{"enter", "m", "l"}},
		{"who did not come", underWay, []string{"down", "m", "p"}},
		{"will it fit", underWay, []string{"r", "p"}},
		{"newcomers", underWay, []string{"t"}},
		{"drill", underWay, []string{"t", "d"}},
		{"drill answered", underWay, []string{"t", "d", "0-0-2 A1 right", "enter"}},
		{"league", underWay, []string{"s", "v"}},
		{"ratings", underWay, []string{"s", "v", "v"}},
		{"held", underWay, []string{"!", "l"}},
		{"held under the hall", underWay, []string{"!", "l", "esc"}},
		{"held for heat", underWay, []string{"!", "h", "enter"}},
		{"may play go on", underWay, []string{"!", "l", "!"}},
		{"hold menu", underWay, []string{"!"}},
		{"find", underWay, []string{"f"}},
		{"find typed", underWay, []string{"f", "quinn"}},
		{"help", underWay, []string{"?"}},
		{"walk", newQuietStage, []string{"w", "enter", "enter"}},
		{"attention", overlong, []string{"a"}},
		{"help filtered", underWay, []string{"?", "/", "court"}},
		{"palette", underWay, []string{":"}},
		{"palette typed", underWay, []string{":", "close court 3"}},
		{"palette at the door", underWay, []string{"d", "ctrl+k", "agn"}},
		{"tonight menu", underWay, []string{"o"}},
		{"score sent", func(t *testing.T) *stage { return withCourts(t, 2, 9).sent("1", scoring.A, 11, 7) }, []string{"c"}},
		{"two scores sent", func(t *testing.T) *stage { return twoSent(t) }, []string{"c", "y"}},
		{"scores from the courts", func(t *testing.T) *stage { return withCourts(t, 2, 9) }, []string{"o", "c"}},
		{"settings form", underWay, []string{"o", "e"}},
		{"person menu", underWay, []string{"d", "agnes", "right"}},
		{"person form", underWay, []string{"d", "agnes", "right", "e"}},
		{"times form", underWay, []string{"d", "lio", "right", "t"}},
		{"history menu", underWay, []string{"h", "enter"}},
		{"correct a score", underWay, []string{"h", "enter", "e"}},
		{"certificate", underWay, []string{"r", "enter"}},
		{"error", underWay, []string{"U"}},
		{"errors", underWay, []string{"U", "U", "U"}},
		{"undone", underWay, []string{"u"}},
		{"all is played", played, []string{"n"}},
		{"rules card", underWay, []string{"t", "c"}},
		{"game over", underWay, []string{"enter", "aaaaaaaaaaa"}},
		{"here already", underWay, []string{"d", "agnes", "enter"}},
		{"rolling courts", rolling, nil},
		{"rolling bench", rolling, []string{"b"}},
		{"rolling rotation", rolling, []string{"r"}},
		{"who plays where", rolling, []string{"k"}},
		{"groups missing", groupless, nil},
		{"which group", groupless, []string{"n"}},
		{"closing is near", late, nil},
		{"called near closing", late, []string{"n"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := c.open(t).press(c.keys...)
			checkFrame(t, s.m)
			golden.RequireEqual(t, s.m.View())
		})
	}
}

// TestGoldenSmallest draws the screens on the smallest terminal that the desk works on.
func TestGoldenSmallest(t *testing.T) {
	s := underWay(t).resize(minWidth, minHeight)
	for _, tab := range tabs {
		t.Run(strings.ToLower(tab.name), func(t *testing.T) {
			s.press("esc", tab.key)
			checkFrame(t, s.m)
			golden.RequireEqual(t, s.m.View())
		})
	}
	t.Run("too small", func(t *testing.T) {
		golden.RequireEqual(t, s.resize(minWidth-1, minHeight-1).m.View())
	})
}

// The nights of the moments.

func newQuietStage(t *testing.T) *stage { return newStage(t) }

func emptyNight(t *testing.T) *stage {
	s := newStage(t)
	return s.do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: 4}).press("d")
}

func eighteen(t *testing.T) *stage { return newStage(t).roster(4, "roster18.csv") }

// overlong is a night on which games go on for too long and somebody has not come.
func overlong(t *testing.T) *stage { return underWay(t).pass(30).send(tickMsg{}) }

func underWay(t *testing.T) *stage { return midNight(t, eighteen(t)) }

// played is a night whose last planned round is over.
func played(t *testing.T) *stage {
	s := newStage(t).people(1, 5, func(set *session.Settings) { set.Rounds = 1 })
	return s.press("n").pass(12).press("117", "enter")
}

// groupless is a mixed night in which nobody has a group.
func groupless(t *testing.T) *stage {
	return newStage(t).people(2, 9, func(set *session.Settings) {
		set.Flow, set.Format = session.Rolling, scheduler.Mixed
	})
}

// late is a rolling night in which a court has freed seven minutes before closing time.
func late(t *testing.T) *stage {
	s := newStage(t).people(2, 10, func(set *session.Settings) {
		set.Flow, set.Closing = session.Rolling, evening.Add(time.Hour)
	})
	return s.press("n").pass(53).press("117", "enter")
}

// rolling is a night without rounds: two courts that called their games, and two on the bench.
func rolling(t *testing.T) *stage {
	s := newStage(t).people(2, 10, func(set *session.Settings) {
		set.Flow = session.Rolling
		set.Closing = evening.Add(2 * time.Hour)
	})
	first := func(r scheduler.Rolling) (scheduler.Game, error) {
		w := r.Waiting
		return scheduler.Game{Court: r.Court, A: scheduler.Team{w[0].Player, w[1].Player}, B: scheduler.Team{w[2].Player, w[3].Player}}, nil
	}
	s.desk.PickBy(first)
	s.do(session.BeginPlay{}).pass(12).send(tickMsg{})
	final, err := s.night().Settings.Scoring.Final(11, 7, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	return s.do(session.FinishGame{Game: 1, Final: final}).pass(3).send(tickMsg{})
}
