package hall

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

// stand is a night under way.
type stand struct{ *sessiontest.Desk }

func newStand(t testing.TB, flow session.Flow, courts, people int) stand {
	t.Helper()
	settings := session.DefaultSettings(7)
	settings.Flow = flow
	return stand{sessiontest.Open(t, settings, courts, people)}
}

func (s stand) hall() Hall {
	s.T.Helper()
	h, ok := Of(s.Ledger(), s.Ahead(), s.Clock)
	if !ok {
		s.T.Fatal("no hall")
	}
	return h
}

// is demands the states of the courts, in their order.
func (s stand) is(moment string, want ...State) Hall {
	s.T.Helper()
	h := s.hall()
	var got []State
	for _, c := range h.Courts {
		got = append(got, c.State)
	}
	if !slices.Equal(got, want) {
		s.T.Errorf("%s the courts are %v, want %v", moment, got, want)
	}
	return h
}

func (s stand) finish(court session.CourtID, a, b int, how scoring.How) {
	s.T.Helper()
	s.Finish(s.On(court), a, b, how)
}

// TestStatesOfANight: what a court is in, from the first plan to the closed court.
func TestStatesOfANight(t *testing.T) {
	s := newStand(t, session.Rounds, 3, 9)
	h := s.is("before the call", Planned, Planned, Free)
	if h.Round != 1 || len(h.Next) != 2 || len(h.Out) != 1 {
		t.Errorf("next is round %d with %d games and %d out", h.Round, len(h.Next), len(h.Out))
	}
	s.Must(session.CallRound{})
	s.is("after the call", Called, Called, Free)
	s.Clock = s.Clock.Add(-3 * time.Hour)
	s.Must(session.NoteClock{})
	s.is("after the laptop's clock was put back", Called, Called, Free)
	s.Clock = s.Clock.Add(4 * time.Minute)
	s.Must(session.ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	h = s.is("after a rally", Playing, Playing, Free)
	c := h.Courts[0]
	if c.Score != (scoring.Score{A: 1}) || !c.Scored || c.Call != "1-0-2" || c.Played != 4*time.Minute || c.Expected <= 0 {
		t.Errorf("court 1 is %+v", c)
	}
	g := s.Night().Game(1)
	// the starting server is in the left box at an odd score, and serves to whoever is in the left box there
	if c.Server != g.A[0] || c.Boxes[scoring.A][scoring.Left] != g.A[0] || c.Boxes[scoring.A][scoring.Right] != g.A[1] ||
		c.Receiver != c.Boxes[scoring.B][scoring.Left] || c.Receiver != g.B[1] {
		t.Errorf("%s serves to %s, from %v", c.Server, c.Receiver, c.Boxes)
	}
	if h.Courts[1].Scored || h.Courts[1].Server != "" {
		t.Errorf("a court without a rally has %+v", h.Courts[1])
	}

	s.Must(session.CloseCourt{Court: "2"})
	if h = s.is("with court 2 closed", Playing, Playing, Free); !h.Courts[1].Closing {
		t.Error("court 2 is not closing")
	}
	s.Must(session.Leave{Person: g.A[0]})
	if h = s.hall(); !slices.Equal(h.Courts[0].Leaving, []session.PersonID{g.A[0]}) {
		t.Errorf("who leaves after the game: %v", h.Courts[0].Leaving)
	}
	s.Must(session.HoldPlay{Why: "wet court"})
	s.Clock = s.Clock.Add(30 * time.Minute)
	if h = s.hall(); !h.Courts[0].Held || h.Courts[0].Played != 4*time.Minute {
		t.Errorf("during a hold court 1 is %+v", h.Courts[0])
	}
	s.Must(session.ResumePlay{})
	s.finish("1", 11, 4, scoring.Played)
	s.finish("2", 0, 0, scoring.Void)
	h = s.is("with both scores in", Over, Closed, Planned)
	if c := h.Courts[0]; !c.Decided || c.Winner != scoring.A || c.Score != (scoring.Score{A: 11, B: 4}) || c.Played != 4*time.Minute {
		t.Errorf("a court that is over is %+v", c)
	}
	if len(h.Leaders) != 4 {
		t.Errorf("%d lead after one game", len(h.Leaders))
	}
}

// TestLateGames: a game that takes longer than nine of ten do is late, and one that is at its limit is up.
func TestLateGames(t *testing.T) {
	s := newStand(t, session.Rounds, 1, 4)
	settings := s.Night().Settings
	settings.Scoring.Minutes = 20
	s.Must(session.ChangeSettings{Settings: settings})
	s.Must(session.CallRound{})
	s.Clock = s.Clock.Add(10 * time.Minute)
	s.Must(session.ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	if c := s.hall().Courts[0]; c.Late || c.TimeUp {
		t.Errorf("after 10 minutes: %+v", c)
	}
	s.Clock = s.Clock.Add(60 * time.Minute)
	if c := s.hall().Courts[0]; !c.Late || !c.TimeUp {
		t.Errorf("after 70 minutes: %+v", c)
	}
}

// TestGamePoint: the hall tells who has it.
func TestGamePoint(t *testing.T) {
	s := newStand(t, session.Rounds, 1, 4)
	s.Must(session.CallRound{})
	for range 10 {
		s.Must(session.ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	}
	if c := s.hall().Courts[0]; !c.AtPoint || c.Point != scoring.A || c.Score.A != 10 {
		t.Errorf("at ten points: %+v", c)
	}
}

// TestRollingHall: the next four stand there before a court is free, and why a free one is not called.
func TestRollingHall(t *testing.T) {
	s := newStand(t, session.Rolling, 2, 12)
	s.Must(session.BeginPlay{})
	h := s.is("after play began", Called, Called)
	if len(h.Bench) != 4 || len(h.Next) != 1 || h.Round != 0 {
		t.Errorf("%d on the bench, next %v in round %d", len(h.Bench), h.Next, h.Round)
	}
	s.Clock = s.Clock.Add(9 * time.Minute)
	s.finish("2", 11, 8, scoring.Played)
	h = s.is("after a score", Playing, Called)
	if frees := h.FreesNext(); len(frees) != 2 || frees[0].ID != "1" {
		t.Errorf("frees next: %v", frees)
	}
	s.Must(session.EndCalls{})
	s.finish("1", 11, 8, scoring.Played)
	h = s.is("after the last calls", Over, Playing)
	if !h.IsIdle || h.Idle.Cause != session.LastGames {
		t.Errorf("why court 1 is free: %+v, %v", h.Idle, h.IsIdle)
	}
}

// TestHallAgreesWithTheNight: at any moment of a random night everybody who is here is either on a court or
// on the bench, once, and every court is told once.
func TestHallAgreesWithTheNight(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		flow := rapid.SampledFrom([]session.Flow{session.Rounds, session.Rolling}).Draw(rt, "flow")
		s := newStand(t, flow, rapid.IntRange(1, 4).Draw(rt, "courts"), rapid.IntRange(4, 13).Draw(rt, "people"))
		if flow == session.Rolling {
			s.Must(session.BeginPlay{})
		}
		for range rapid.IntRange(0, 12).Draw(rt, "steps") {
			s.Clock = s.Clock.Add(3 * time.Minute)
			n := s.Night()
			if on := n.Running(); len(on) > 0 && rapid.Bool().Draw(rt, "score") {
				s.finish(rapid.SampledFrom(on).Draw(rt, "court").Court, 11, 5, scoring.Played)
				continue
			}
			_, _ = s.Do(session.Rest{Person: rapid.SampledFrom(n.Roll).Draw(rt, "rests").Person})
			_, _ = s.Do(session.CallRound{})
		}
		n := s.Night()
		h, _ := Of(s.Ledger(), nil, s.Clock)
		seen := map[session.PersonID]int{}
		for i, c := range h.Courts {
			if c.ID != n.Courts[i].ID || (c.State == Playing || c.State == Called) != (n.Courts[i].Game != 0) {
				rt.Fatalf("court %s is %+v", n.Courts[i].ID, c)
			}
			if c.State == Playing || c.State == Called {
				for _, id := range append(c.A[:], c.B[:]...) {
					seen[id]++
				}
			}
		}
		for _, w := range h.Bench {
			seen[w.Person]++
		}
		for _, a := range n.Roll {
			if want := a.State == session.Here || n.Playing(a.Person) != nil; (seen[a.Person] == 1) != want {
				rt.Fatalf("%s, who is %s, stands in the hall %d times", a.Person, a.State, seen[a.Person])
			}
		}
	})
}

// TestOnlyAClosedCourtWithAGameIsClosing: not an open one, and not one that is closed without a game.
func TestOnlyAClosedCourtWithAGameIsClosing(t *testing.T) {
	s := newStand(t, session.Rounds, 3, 8)
	s.Must(session.CallRound{}, session.CloseCourt{Court: "1"}, session.CloseCourt{Court: "3"})
	for i, want := range []bool{true, false, false} {
		if got := s.hall().Courts[i]; got.Closing != want {
			t.Errorf("court %s: closing %v in %+v", got.ID, got.Closing, got)
		}
	}
}
