package tui

import (
	"fmt"
	"io"
	"testing"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
)

// largeHall is the desk on 12 courts with 50 people at 200 by 60, in colour.
func largeHall(b *testing.B) *stage {
	b.Helper()
	b.Setenv("NO_COLOR", "")
	b.Setenv("CLICOLOR_FORCE", "1")
	s := newStage(b).people(12, 50, nil).press("n")
	s.theme = theme.New(io.Discard)
	s.reopen().resize(200, 60).m.View()
	return s
}

// BenchmarkKeyToFrame is one key press from Update to the finished frame. Warm is the usual case:
// the cursor moves and two of twelve cards change. Cold draws all anew, with nothing kept from a
// frame before. Digit is a key of a score, which changes no card.
func BenchmarkKeyToFrame(b *testing.B) {
	b.Run("warm", func(b *testing.B) {
		s := largeHall(b)
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			s.press([]string{"right", "left"}[i%2]).m.View()
		}
	})
	b.Run("cold", func(b *testing.B) {
		s := largeHall(b)
		b.ReportAllocs()
		for b.Loop() {
			b.StopTimer()
			s.reopen().resize(200, 60)
			b.StartTimer()
			s.press("right").m.View()
		}
	})
	b.Run("digit", func(b *testing.B) {
		s := largeHall(b)
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			s.press([]string{"1", "backspace"}[i%2]).m.View()
		}
	})
	b.Run("Bench rolling", func(b *testing.B) {
		s := largeHall(b)
		settings := s.night().Settings
		settings.Flow = session.Rolling
		s.do(session.ChangeSettings{Settings: settings}).press("b")
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			s.press([]string{"down", "up"}[i%2]).m.View()
		}
	})
	for _, tab := range tabs {
		b.Run(tab.name, func(b *testing.B) {
			s := largeHall(b).press(tab.key)
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				s.press([]string{"down", "up"}[i%2]).m.View()
			}
		})
	}
}

// BenchmarkScoreToFrame is a whole score, from its first key to the frame that shows it saved, on
// a log in memory.
func BenchmarkScoreToFrame(b *testing.B) {
	s := largeHall(b)
	b.ReportAllocs()
	for b.Loop() {
		s.press("117", "enter").m.View()
		s.press("u", "left")
	}
}

// TestFramesStayCheap guards what the benchmarks measure, in allocations, which no busy machine
// changes. The limits are about twice what is needed.
func TestFramesStayCheap(t *testing.T) {
	limits := [...]float64{5000, 1500, 3300, 7000, 1000, 2500}
	s := newStage(t).people(12, 50, nil).press("n").resize(200, 60)
	for i, tab := range tabs {
		s.press("esc", tab.key).m.View()
		got := testing.AllocsPerRun(20, func() { s.press("down").m.View() })
		if got > limits[i] {
			t.Errorf("%s: %.0f allocations from key to frame, limit %.0f", tab.name, got, limits[i])
		}
	}
}

// BenchmarkPersonToFrame turns to the next person's page at 200 by 60, with 200 people on 24 courts after ten
// rounds, in both flows.
func BenchmarkPersonToFrame(b *testing.B) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		b.Run(string(flow), func(b *testing.B) {
			s := tenRounds(b, flow).press("b", "enter")
			s.m.View()
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				s.press("down").m.View()
			}
		})
	}
}

// BenchmarkLargestToFrame goes through the bench and the map of the rotation in the same night.
func BenchmarkLargestToFrame(b *testing.B) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		for _, key := range []string{"b", "r"} {
			b.Run(string(flow)+"/"+key, func(b *testing.B) {
				s := tenRounds(b, flow).press(key)
				s.m.View()
				b.ReportAllocs()
				for i := 0; b.Loop(); i++ {
					s.press([]string{"down", "up"}[i/40%2]).m.View()
				}
			})
		}
	}
}

// tenRounds is a night of 200 people on 24 courts after ten rounds, at 200 by 60, in colour.
func tenRounds(b *testing.B, flow session.Flow) *stage {
	b.Setenv("NO_COLOR", "")
	b.Setenv("CLICOLOR_FORCE", "1")
	s := newStage(b)
	settings := session.DefaultSettings(7)
	settings.Rounds = 12
	s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: 24})
	for i := range 200 {
		s.do(session.AddGuest{Name: fmt.Sprintf("%s %03d", firstNames[i%10], i)})
	}
	for range 10 {
		s.do(session.CallRound{Plan: s.m.plan.Rounds}).pass(12)
		for _, g := range s.night().Running() {
			s.do(session.FinishGame{Game: g.ID, Final: final(b, s, 11, int(g.ID)%10)})
		}
	}
	if settings.Flow = flow; flow == session.Rolling {
		s.do(session.ChangeSettings{Settings: settings}, session.BeginPlay{})
	}
	s.theme = theme.New(io.Discard)
	return s.reopen().resize(200, 60)
}
