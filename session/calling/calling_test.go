package calling

import (
	"context"
	"fmt"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

type hall struct {
	t    *testing.T
	desk *session.Desk
	now  time.Time
}

func newHall(t *testing.T, flow session.Flow, courts, people int) *hall {
	t.Helper()
	h := &hall{t: t, now: time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)}
	ids := 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time { return h.now }, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("p%03d", ids))
	})
	if err != nil {
		t.Fatal(err)
	}
	h.desk = desk
	s := session.DefaultSettings(7)
	s.Flow, s.Rounds = flow, 5
	h.do(session.OpenNight{Name: "test night", Settings: s, Courts: courts})
	for i := range people {
		h.do(session.AddGuest{Name: fmt.Sprintf("Person %02d", i+1)})
	}
	return h
}

func (h *hall) do(c session.Command) {
	h.t.Helper()
	if _, err := h.desk.Do(c); err != nil {
		h.t.Fatalf("%T: %v", c, err)
	}
}

func (h *hall) night() *session.Night { return h.desk.Ledger().Night() }

func (h *hall) ahead() []session.PlannedRound {
	r, err := session.PlanRotation(context.Background(), h.desk.Ledger(), h.now)
	if err != nil {
		return nil
	}
	return r.Rounds
}

func (h *hall) list() List { return Of(h.night(), h.ahead(), h.now) }

func (h *hall) score(g *session.Game) {
	h.t.Helper()
	f, err := g.Rules.Final(11, 7, scoring.Played)
	if err != nil {
		h.t.Fatal(err)
	}
	h.do(session.FinishGame{Game: g.ID, Final: f})
}

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
	h.do(session.CallRound{Plan: h.ahead()})
	l := h.list()
	if courts(l) != "1 2 " || l.Round != 1 || len(l.Out) != 1 || !l.Until.Equal(h.now.Add(Fresh)) {
		t.Fatalf("round 1 is read out as %+v", l)
	}
	if s := l.Out[0]; s.Person != h.night().Rounds[0].Out[0] || s.Round != 2 || s.Court == "" {
		t.Errorf("who sits out is %+v", s)
	}
	h.now = h.now.Add(20 * time.Minute)
	h.score(h.night().Running()[0])
	if l = h.list(); courts(l) != "2 " {
		t.Errorf("with a score in: %+v", l)
	}
}

// TestTheRollingFlowReadsTheNewFour: what was called last, and nothing that was called long before.
func TestTheRollingFlowReadsTheNewFour(t *testing.T) {
	h := newHall(t, session.Rolling, 3, 16)
	h.do(session.BeginPlay{})
	if l := h.list(); courts(l) != "1 2 3 " || l.Round != 0 {
		t.Fatalf("at the beginning: %+v", l)
	}
	h.now = h.now.Add(11 * time.Minute)
	h.score(h.night().Running()[1])
	if l := h.list(); courts(l) != "2 " {
		t.Errorf("after court 2 called: %+v", l)
	}
	h.now = h.now.Add(2 * time.Minute)
	h.score(h.night().Running()[0])
	if l := h.list(); courts(l) != "1 2 " {
		t.Errorf("two minutes later court 1 called: %+v", l)
	}
	h.now = h.now.Add(Fresh)
	if l := h.list(); courts(l) != "1 " {
		t.Errorf("long after: %+v", l)
	}
}

// TestAnotherTeamIsAnotherCall: after a substitution the court must be read anew.
func TestAnotherTeamIsAnotherCall(t *testing.T) {
	h := newHall(t, session.Rounds, 1, 5)
	h.do(session.CallRound{Plan: h.ahead()})
	before := h.list()
	h.do(session.Substitute{Game: 1, Out: before.Calls[0].A[0], In: before.Out[0].Person})
	after := h.list()
	if before.Calls[0] == after.Calls[0] {
		t.Error("the call is the same although somebody else plays")
	}
	if len(after.Out) != 1 || after.Out[0].Person != before.Calls[0].A[0] {
		t.Logf("who sits out after the substitution: %+v", after.Out)
	}
}
