package tui

import (
	"fmt"
	"maps"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"timeline":                func(t *testing.T) *stage { return closingAt(t, 4, 18, session.Rounds).press("h", "t") },
		"timeline of nothing":     func(t *testing.T) *stage { return newStage(t).press("h", "t") },
		"timeline without a game": func(t *testing.T) *stage { return newStage(t).people(2, 8, nil).press("h", "t") },
	})
}

// closingAt is a night with closing time in which three rounds were played, play was held and a court was closed.
func closingAt(t testing.TB, courts, people int, flow session.Flow) *stage {
	s := newStage(t).people(courts, people, func(set *session.Settings) {
		set.Flow, set.Closing = flow, evening.Add(2*time.Hour)
	})
	if flow == session.Rolling {
		s.desk.PickBy(func(r scheduler.Rolling) (scheduler.Game, error) { // not the scheduler's, which may get better
			w := r.Waiting
			return scheduler.Game{Court: r.Court, A: scheduler.Team{w[0].Player, w[1].Player}, B: scheduler.Team{w[2].Player, w[3].Player}}, nil
		})
		s.do(session.BeginPlay{})
	}
	for round := range 3 {
		if flow == session.Rounds {
			s.do(session.CallRound{Plan: s.m.plan.Rounds})
		}
		s.pass(9)
		for i, g := range s.night().Running() {
			s.pass(i % 2)
			s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, (i*3+round)%10)})
		}
		s.pass(2)
		if round == 0 {
			s.do(session.HoldPlay{Why: "lightning"}).pass(6).do(session.ResumePlay{})
			s.do(session.CloseCourt{Court: session.CourtID(fmt.Sprint(courts))})
		}
	}
	if flow == session.Rounds {
		s.do(session.CallRound{Plan: s.m.plan.Rounds})
	}
	return s.pass(4).send(tickMsg{})
}

// TestTheTimelineOfTheNight: a row a court with scores, holds, closed courts, idle time, now and closing.
func TestTheTimelineOfTheNight(t *testing.T) {
	s := closingAt(t, 4, 18, session.Rounds).resize(200, 60).press("h", "t")
	s.shows("The night by its courts", "19:00", "11-0 ▇", "held: lightning", "╳", "┃", "┊", "r5 ┄", "Courts idle", "Closing 21:00", "More rounds until then")
	s.shows("round 4", "to now: ").press("left").shows("round 3, ", " min: ").press("end").shows("about ").press("home").shows("round 1, ")
	g := s.night().Game(1)
	s.shows(s.m.names.FullTeam(g.A) + " 11-0 " + s.m.names.FullTeam(g.B)).press("down").shows("court 2, round 1").press("enter")
	if s.m.active != ui.Courts {
		t.Error("enter does not go to the court")
	}
	s.shows("Court 2:").press("h", "t", "esc")
	if s.m.active != ui.History {
		t.Error("esc does not go back to the history")
	}
}

// TestATimelineScrolls on a small terminal, and z shows all of it.
func TestATimelineScrolls(t *testing.T) {
	s := closingAt(t, 12, 50, session.Rounds).press("h", "t").shows("1 more court (").hides("▌12", "\n 12 ")
	for range 11 {
		s.press("down")
	}
	s.shows("▌12").press("home", "up").shows("19:00").press("z").shows("19:00")
}

// TestTheTimelineByMouse: a click on a game says what it was, a second one goes to its court.
func TestTheTimelineByMouse(t *testing.T) {
	s := closingAt(t, 4, 18, session.Rounds).resize(120, 36).press("h", "t")
	s.clickOn("11-4 ▇").shows(" 11-4 ").clickOn("11-4 ▇")
	if s.m.active != ui.Courts {
		t.Error("the second click does not go to the court")
	}
}

// TestANightThatIsOverHasATimeline: also without an open night; nothing is foretold, and no court can be gone to.
func TestANightThatIsOverHasATimeline(t *testing.T) {
	s := newStage(t).people(2, 8, nil).do(session.CallRound{}).pass(11)
	for _, g := range s.night().Running() {
		s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, 5)})
	}
	s.do(session.EndNight{}).press("h", "t").shows("11-5 ▇").hides("┄┄", "┃").press("enter").shows("this night is over")
}

// TestATimelineFitsAnywhere: whatever the size, and wherever the cursor is.
func TestATimelineFitsAnywhere(t *testing.T) {
	stages := []*stage{closingAt(t, 12, 50, session.Rounds).press("h", "t"), closingAt(t, 3, 17, session.Rolling).press("h", "t")}
	rapid.Check(t, func(rt *rapid.T) {
		s := stages[rapid.IntRange(0, len(stages)-1).Draw(rt, "night")]
		s.resize(rapid.IntRange(minWidth, 300).Draw(rt, "width"), rapid.IntRange(minHeight, 100).Draw(rt, "height"))
		s.press(rapid.SampledFrom([]string{"up", "down", "home", "end", "left", "right", "z", "pgdown"}).Draw(rt, "key"))
		for _, l := range s.lines() {
			if line.Width(l) > s.m.width {
				rt.Fatalf("a line of %d cells on %d:\n%s", line.Width(l), s.m.width, s.m.View())
			}
		}
		if len(s.lines()) > s.m.height || s.m.height > 14 && !strings.Contains(s.m.View(), "▌") {
			rt.Fatalf("%d lines on %d, or no cursor:\n%s", len(s.lines()), s.m.height, s.m.View())
		}
	})
}

// TestGoldenTimeline draws the timeline of several nights.
func TestGoldenTimeline(t *testing.T) {
	for _, n := range []struct {
		name string
		open func() *stage
	}{
		{"rounds", func() *stage { return closingAt(t, 12, 50, session.Rounds) }},
		{"rolling", func() *stage { return closingAt(t, 3, 17, session.Rolling) }},
	} {
		s := n.open().press("h", "t")
		for _, size := range append(sizes[:len(sizes):len(sizes)], [2]int{minWidth, minHeight}) {
			t.Run(fmt.Sprintf("%s/%dx%d", n.name, size[0], size[1]), func(t *testing.T) {
				s.resize(size[0], size[1])
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
				if size[1] == 60 && n.name == "rounds" && 10*s.says() < 6*60 {
					t.Errorf("%d of 60 rows say something", s.says())
				}
			})
		}
	}
}
