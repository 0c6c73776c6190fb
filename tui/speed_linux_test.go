package tui

import (
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"golang.org/x/sys/unix"

	"club/quadrille/session"
)

// fullNight is the desk of tenRounds with an eleventh round on court, or the rolling flow.
func fullNight(b *testing.B, flow session.Flow) *stage {
	b.Helper()
	s := tenRounds(b, flow)
	if flow == session.Rounds {
		s.do(session.CallRound{Plan: s.m.plan.Rounds})
	}
	s.pass(5).press("c").m.View()
	return s
}

// processor is the time that this thread has had of a processor: on a machine that others use, too, wall
// time says nothing.
func processor(b *testing.B) time.Duration {
	b.Helper()
	var t unix.Timespec
	if err := unix.ClockGettime(unix.CLOCK_THREAD_CPUTIME_ID, &t); err != nil {
		b.Fatal(err)
	}
	return time.Duration(t.Nano())
}

// keyToFrame is the processor time from a key to the frame that is drawn after it, and of each frame that follows from
// what the key lets be worked out beside the screen, which is not counted.
func keyToFrame(b *testing.B, m *Model, msg tea.Msg) []time.Duration {
	start := processor(b)
	_, cmd := m.Update(msg)
	m.View()
	took := []time.Duration{processor(b) - start}
	for cmds := []tea.Cmd{cmd}; len(cmds) > 0; cmds = cmds[1:] {
		if cmds[0] == nil {
			continue
		}
		switch next := cmds[0]().(type) {
		case nil:
		case tea.BatchMsg:
			cmds = append(cmds, next...)
		default:
			took = append(took, keyToFrame(b, m, next)...)
		}
	}
	return took
}

// BenchmarkEveryScreen is one key press to the finished frame, on every screen and page and in both flows, in
// processor time of the thread that draws, at the 99th percentile as p99-ms.
func BenchmarkEveryScreen(b *testing.B) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		s := fullNight(b, flow)
		for _, c := range []struct {
			name string
			open []string
			keys []string
		}{
			{"door", []string{"d"}, []string{"down", "up"}},
			{"door, typing", []string{"d"}, []string{"a", "backspace"}},
			{"courts", []string{"c"}, []string{"right", "left"}},
			{"courts, score", []string{"c"}, []string{"1", "backspace"}},
			{"board", []string{"c", "enter"}, []string{"v"}},
			{"bench", []string{"b"}, []string{"down", "up"}},
			{"rotation", []string{"r"}, []string{"down", "up"}},
			{"standings", []string{"s"}, []string{"down", "up"}},
			{"history", []string{"h"}, []string{"down", "up"}},
			{"person", []string{"b", "enter"}, []string{"down"}},
			{"find", []string{"f"}, []string{"a", "backspace"}},
			{"palette", []string{":"}, []string{"c", "backspace"}},
			{"palette opened", nil, []string{":", "esc"}},
			{"screens in turn", nil, []string{"tab"}},
			{"call list", []string{"k"}, []string{"down", "up"}},
			{"help", []string{"?"}, []string{"down", "up"}},
		} {
			b.Run(string(flow)+"/"+c.name, func(b *testing.B) {
				s.press("esc", "esc", "esc", "c").press(c.open...).m.View()
				var took []time.Duration
				runtime.LockOSThread()
				defer runtime.UnlockOSThread()
				for i := 0; b.Loop(); i++ {
					took = append(took, keyToFrame(b, s.m, stroke(c.keys[i%len(c.keys)]))...)
				}
				b.ReportMetric(p99(took), "p99-ms")
			})
		}
	}
}

// BenchmarkScoreSaved is from the enter that ends a score to the frame that shows it saved, in processor time: the key's
// own frame, the command with a log in memory, and the frame after it; screen-ms is the longer one of the two frames,
// which keys wait for. The rotation, which is worked out beside the screen afterwards, is not counted. The score is undone
// each time, so that the night stays as large as it is.
func BenchmarkScoreSaved(b *testing.B) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		b.Run(string(flow), func(b *testing.B) {
			s := fullNight(b, flow)
			var whole, frames []time.Duration
			runtime.LockOSThread()
			defer runtime.UnlockOSThread()
			for b.Loop() {
				s.press("esc", "home", "1", "1", "7").m.View() // one by one: 117 at once is part of a name here
				began := processor(b)
				_, cmd := s.m.Update(stroke("enter"))
				s.m.View()
				typed := processor(b)
				msgs := answers(cmd)
				done := processor(b)
				var after tea.Cmd
				for _, msg := range msgs {
					_, after = s.m.Update(msg)
				}
				s.m.View()
				shown := processor(b)
				whole, frames = append(whole, shown-began), append(frames, max(typed-began, shown-done))
				s.run(after)
				if !strings.Contains(s.m.notice, "11-7") {
					b.Fatalf("no score was saved:\n%s", s.m.View())
				}
				s.do(session.Undo{}).press("esc")
			}
			b.ReportMetric(p99(whole), "p99-ms")
			b.ReportMetric(p99(frames), "screen-p99-ms")
		})
	}
}

// p99 is the 99th percentile, in milliseconds.
func p99(took []time.Duration) float64 {
	slices.Sort(took)
	return took[(len(took)*99+99)/100-1].Seconds() * 1000
}

// answers runs a command and gives what it answers.
func answers(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	switch msg := cmd().(type) {
	case nil:
		return nil
	case tea.BatchMsg:
		var out []tea.Msg
		for _, c := range msg {
			out = append(out, answers(c)...)
		}
		return out
	default:
		return []tea.Msg{msg}
	}
}

// BenchmarkTicks is a minute of ticks with nothing pressed and a frame after each, as a share of one core.
func BenchmarkTicks(b *testing.B) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		s := fullNight(b, flow)
		for _, tab := range tabs {
			b.Run(string(flow)+"/"+tab.name, func(b *testing.B) {
				s.press("esc", tab.key)
				runtime.LockOSThread()
				defer runtime.UnlockOSThread()
				start := processor(b)
				for b.Loop() {
					for range time.Minute / lookEvery {
						s.now = s.now.Add(lookEvery)
						s.send(tickMsg{}).m.View()
					}
				}
				b.ReportMetric(100*(processor(b)-start).Seconds()/float64(b.N)/60, "%core")
			})
		}
	}
}

// BenchmarkMemory is what the desk keeps after 400 games.
func BenchmarkMemory(b *testing.B) {
	var s *stage
	for b.Loop() {
		s = fullNight(b, session.Rounds)
		for len(s.night().Games) < 400 {
			for _, g := range s.night().Running() {
				s.do(session.FinishGame{Game: g.ID, Final: final(b, s, 11, int(g.ID)%10)})
			}
			s.do(session.CallRound{Plan: s.m.plan.Rounds}).pass(12).m.View()
		}
	}
	for _, tab := range tabs {
		s.press("esc", tab.key).m.View()
	}
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(float64(m.HeapAlloc)/(1<<20), "MiB-live")
	runtime.KeepAlive(s)
}
