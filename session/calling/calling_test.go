package calling

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

func (h hall) list() List { return Of(h.Night(), h.Ahead(), h.Clock) }

func courts(l List) string {
	text := ""
	for _, c := range l.Calls {
		text += string(c.Court) + " "
	}
	return text
}

func TestNothingIsReadOutBeforeACall(t *testing.T) {
	if l := Of(nil, nil, time.Time{}); len(l.Calls) > 0 {
		t.Errorf("without a night: %+v", l)
	}
	if l := newHall(t, session.Rounds, 2, 9).list(); len(l.Calls) > 0 || l.Round > 0 || !l.Until.IsZero() {
		t.Errorf("before a call: %+v", l)
	}
}

// TestARoundIsReadOutWhole: all its games that go on, however long ago it was called, and who sits out with
// the game that comes next.
func TestARoundIsReadOutWhole(t *testing.T) {
	h := newHall(t, session.Rounds, 2, 9)
	h.Must(session.CallRound{Plan: h.Ahead()})
	l := h.list()
	if courts(l) != "1 2 " || l.Round != 1 || len(l.Out) != 1 || !l.Until.Equal(h.Clock.Add(Fresh)) {
		t.Fatalf("round 1 is read out as %+v", l)
	}
	if s := l.Out[0]; s.Person != h.Night().Rounds[0].Out[0] || s.Round != 2 || s.Court == "" {
		t.Errorf("who sits out is %+v", s)
	}
	h.Clock = h.Clock.Add(20 * time.Minute)
	h.Finish(h.Night().Running()[0], 11, 7, scoring.Played)
	if l = h.list(); courts(l) != "2 " {
		t.Errorf("with a score in: %+v", l)
	}
}

// TestTheRollingFlowReadsTheNewFour: what was called last, and nothing that was called long before.
func TestTheRollingFlowReadsTheNewFour(t *testing.T) {
	h := newHall(t, session.Rolling, 3, 16)
	h.Must(session.BeginPlay{})
	if l := h.list(); courts(l) != "1 2 3 " || l.Round != 0 {
		t.Fatalf("at the beginning: %+v", l)
	}
	h.Clock = h.Clock.Add(11 * time.Minute)
	h.Finish(h.Night().Running()[1], 11, 7, scoring.Played)
	if l := h.list(); courts(l) != "2 " {
		t.Errorf("after court 2 called: %+v", l)
	}
	h.Clock = h.Clock.Add(2 * time.Minute)
	h.Finish(h.Night().Running()[0], 11, 7, scoring.Played)
	if l := h.list(); courts(l) != "1 2 " {
		t.Errorf("two minutes later court 1 called: %+v", l)
	}
	h.Clock = h.Clock.Add(Fresh)
	if l := h.list(); courts(l) != "1 " {
		t.Errorf("long after: %+v", l)
	}
}

// TestAnotherTeamIsAnotherCall: after a substitution the court must be read anew.
func TestAnotherTeamIsAnotherCall(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 5)
	h.Must(session.CallRound{Plan: h.Ahead()})
	before := h.list()
	h.Must(session.Substitute{Game: 1, Out: before.Calls[0].A[0], In: before.Out[0].Person})
	after := h.list()
	if before.Calls[0] == after.Calls[0] {
		t.Error("the call is the same although somebody else plays")
	}
	if len(after.Out) != 1 || after.Out[0].Person != before.Calls[0].A[0] {
		t.Logf("who sits out after the substitution: %+v", after.Out)
	}
}
