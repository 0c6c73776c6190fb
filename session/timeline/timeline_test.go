package timeline

import (
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

// hall is a night under way.
type hall struct{ *sessiontest.Desk }

func newHall(t testing.TB, flow session.Flow, courts, people int) hall {
	t.Helper()
	return hall{sessiontest.Open(t, sessiontest.Flow(flow), courts, people)}
}

func (h hall) score(game int) {
	h.T.Helper()
	h.Finish(h.Night().Game(session.GameID(game)), 11, 7, scoring.Played)
}

func (h hall) timeline() Timeline {
	h.T.Helper()
	t, ok := Of(h.Ledger(), h.Ahead(), h.Clock)
	if !ok {
		h.T.Fatal("the night has no timeline")
	}
	return t
}

func TestNoNightNoTimeline(t *testing.T) {
	if _, ok := Of(session.NewLedger(), nil, sessiontest.Begin); ok {
		t.Error("there is a timeline without a night")
	}
}

// TestIdleTimeIsSummed: court 1 ends after 10 minutes and court 2 after 14; the next round begins at 16, and
// three minutes of it have passed.
func TestIdleTimeIsSummed(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 8)
	h.Must(session.CallRound{})
	h.Pass(10)
	h.score(1)
	h.Pass(4)
	h.score(2)
	h.Pass(2)
	h.Must(session.CallRound{})
	h.Pass(3)
	got := h.timeline()
	if got.Rows[0].Idle != 6*time.Minute || got.Rows[1].Idle != 2*time.Minute || got.Idle != 8*time.Minute || got.Open != 38*time.Minute {
		t.Errorf("idle %v and %v, in all %v of %v; want 6, 2, 8 of 38 minutes", got.Rows[0].Idle, got.Rows[1].Idle, got.Idle, got.Open)
	}
	b := got.Rows[0].Blocks
	if b[0].Kind != Played || b[0].Until.Sub(b[0].From) != 10*time.Minute || b[1].Kind != Going || b[1].Round != 2 || b[2].Kind != Forecast || b[2].Round != 3 {
		t.Errorf("court 1 has %+v", b)
	}
	for i := range b[1:] {
		if b[i+1].From.Before(b[i].Until) {
			t.Errorf("block %d begins before block %d ends", i+1, i)
		}
	}
	if got.InUse(sessiontest.Begin.Add(5*time.Minute)) != 2 || got.InUse(sessiontest.Begin.Add(12*time.Minute)) != 1 || got.InUse(sessiontest.Begin.Add(15*time.Minute)) != 0 {
		t.Error("how many courts are in use is counted wrong")
	}
}

// TestHeldAndClosedCourtsAreNotIdle: nobody could have played there.
func TestHeldAndClosedCourtsAreNotIdle(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 8)
	h.Must(session.CallRound{})
	h.Pass(10)
	h.score(1)
	h.score(2)
	h.Must(session.HoldPlay{Why: "lightning"})
	h.Pass(30)
	h.Must(session.ResumePlay{}, session.CloseCourt{Court: "2"})
	h.Pass(5)
	got := h.timeline()
	if len(got.Holds) != 1 || got.Holds[0].Until.Sub(got.Holds[0].From) != 30*time.Minute || got.Holds[0].Why != "lightning" {
		t.Errorf("the holds are %+v", got.Holds)
	}
	if got.Rows[0].Idle != 5*time.Minute || got.Rows[1].Idle != 0 || len(got.Rows[1].Shut) != 1 {
		t.Errorf("idle %v and %v, closed %+v", got.Rows[0].Idle, got.Rows[1].Idle, got.Rows[1].Shut)
	}
	h.Must(session.Undo{}) // the closing
	if got = h.timeline(); got.Rows[1].Idle != 5*time.Minute || len(got.Rows[1].Shut) != 0 {
		t.Errorf("without the closing court 2 was idle for %v, closed %+v", got.Rows[1].Idle, got.Rows[1].Shut)
	}
}

// TestAClockThatIsSetMovesWhatWas: a game that was over before stays as long as it was, and before what came
// later.
func TestAClockThatIsSetMovesWhatWas(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 4)
	steady := time.Duration(0)
	h.CountBy(func() time.Duration { return steady })
	go_ := func(minutes int) { h.Pass(minutes); steady += time.Duration(minutes) * time.Minute }
	h.Must(session.CallRound{})
	go_(10)
	h.score(1)
	go_(2)
	h.Clock = h.Clock.Add(-3 * time.Hour)
	h.Must(session.CallRound{})
	go_(4)
	got := h.timeline()
	b := got.Rows[0].Blocks
	if b[0].Until.Sub(b[0].From) != 10*time.Minute || b[1].From.Sub(b[0].Until) != 2*time.Minute || got.Idle != 2*time.Minute {
		t.Errorf("the games are %+v, idle %v", b[:2], got.Idle)
	}
}

// TestForecastEndsByClosing: no game begins after closing time, and in the rolling flow courts are foretold one
// game after the other.
func TestForecastEndsByClosing(t *testing.T) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		h := newHall(t, flow, 2, 11)
		s := h.Night().Settings
		s.Closing, s.Rounds = sessiontest.Begin.Add(70*time.Minute), 9
		h.Must(session.ChangeSettings{Settings: s})
		if flow == session.Rolling {
			h.Must(session.BeginPlay{})
		} else {
			h.Must(session.CallRound{})
		}
		h.Pass(5)
		got := h.timeline()
		k := 0
		for _, r := range got.Rows {
			for i, b := range r.Blocks {
				if b.Kind == Forecast {
					k++
					if !b.From.Before(got.Closing) || b.From.Before(h.Clock) {
						t.Errorf("%s: a game is foretold for %v, closing is %v", flow, b.From, got.Closing)
					}
				}
				if i > 0 && b.From.Before(r.Blocks[i-1].Until) {
					t.Errorf("%s: on court %s game %d begins before the one before ends", flow, r.Court, i)
				}
			}
		}
		if k < 4 || got.Until.Before(got.Closing) {
			t.Errorf("%s: %d games foretold until %v", flow, k, got.Until)
		}
	}
}

// TestANightThatIsOver ends with its last score, and nothing is foretold.
func TestANightThatIsOver(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 5)
	h.Must(session.CallRound{})
	h.Pass(11)
	h.score(1)
	h.Pass(40)
	h.Must(session.EndNight{})
	h.Pass(600)
	got := h.timeline()
	if len(got.Rows[0].Blocks) != 1 || !got.Now.Equal(sessiontest.Begin.Add(11*time.Minute)) || !got.Until.Equal(got.Now) || got.Idle != 0 {
		t.Errorf("the timeline is %+v", got)
	}
}

// TestNothingEndsBeforeItBegins, however the clock was set: a game that is over before it was called takes no time, and
// a stretch that ends before it begins covers none.
func TestNothingEndsBeforeItBegins(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 4)
	h.Must(session.CallRound{})
	h.Pass(-30)
	h.score(1)
	h.Pass(40)
	for _, b := range h.timeline().Rows[0].Blocks {
		if b.Until.Before(b.From) {
			t.Errorf("%+v ends before it begins", b)
		}
	}
	at := func(minute int) time.Time { return sessiontest.Begin.Add(time.Duration(minute) * time.Minute) }
	span := func(from, until int) Span { return Span{From: at(from), Until: at(until)} }
	if got := covered([]Span{span(10, 2), span(3, 5), span(4, 6), span(6, 6)}); got != 3*time.Minute {
		t.Errorf("%v are covered, want 3 minutes", got)
	}
}
