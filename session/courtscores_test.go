package session

import (
	"errors"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
)

const testSecret = "000102030405060708090a0b0c0d0e0f"

// codeIn is the code of a court in the night that goes on.
func codeIn(l *Ledger, court CourtID) string {
	if n := l.Night(); n != nil {
		return n.CourtCode(court)
	}
	return ""
}

// withScores opens a round on two courts that send scores.
func withScores(t testing.TB, pass Passing) (*Desk, *testClock) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	must(t, d, CallRound{}, ChooseCourtScores{On: true, Pass: pass, Secret: testSecret})
	return d, clock
}

// sent is a score for the game on a court.
func sent(d *Desk, court CourtID, by scoring.Team, a, b int) ProposeScore {
	n := d.Ledger().Night()
	return ProposeScore{n.CourtCode(court), n.Court(court).Game, by, a, b}
}

// TestASentScoreWaits: it changes nothing but that it waits, is taken or refused, and an undo brings it back.
func TestASentScoreWaits(t *testing.T) {
	d, _ := withScores(t, AskFirst)
	undo, _ := d.Ledger().NextUndo()
	must(t, d, sent(d, "1", scoring.B, 11, 7))
	n := d.Ledger().Night()
	g := n.GameOn("1")
	if p := n.ProposalsOf(g.ID); len(p) != 1 || p[0].Final != final(t, 11, 7) || p[0].By != scoring.B || !g.Running() {
		t.Fatalf("%+v waits", p)
	}
	if a, _ := d.Ledger().NextUndo(); a.ID != undo.ID {
		t.Errorf("undo takes back %s", d.Ledger().Describe(a))
	}
	actions := d.Ledger().Actions()
	refused(t, d, UndoAction{actions[len(actions)-1].ID}, "taken or refused")
	if text := d.Ledger().Newest(); !strings.Contains(text, "court 1: 11-7 sent from the court by ") {
		t.Errorf("the history says %q", text)
	}
	if _, err := d.Do(sent(d, "1", scoring.B, 11, 7)); !errors.Is(err, ErrSentAlready) {
		t.Errorf("the same again: %v", err)
	}
	refused(t, d, TakeProposal{g.ID, scoring.A}, "no score waits")
	must(t, d, TakeProposal{g.ID, scoring.B})
	if n = d.Ledger().Night(); *n.Game(g.ID).Final != final(t, 11, 7) || len(n.Proposals) != 0 {
		t.Errorf("after it is taken %+v and %+v", n.Game(g.ID).Final, n.Proposals)
	}
	if text := d.Ledger().Newest(); !strings.HasPrefix(text, "court 1: 11-7 ") || !strings.HasSuffix(text, ", as the court sent it") {
		t.Errorf("the history says %q", text)
	}
	must(t, d, Undo{})
	if n = d.Ledger().Night(); !n.Game(g.ID).Running() || len(n.ProposalsOf(g.ID)) != 1 {
		t.Errorf("after the undo %+v waits", n.Proposals)
	}
	must(t, d, RefuseProposals{g.ID})
	refused(t, d, RefuseProposals{g.ID}, "no score waits")
	if text := d.Ledger().Newest(); text != "court 1: what the court sent is refused" {
		t.Errorf("the history says %q", text)
	}
	must(t, d, sent(d, "1", scoring.B, 7, 11), FinishGame{g.ID, final(t, 11, 3)})
	if n = d.Ledger().Night(); len(n.Proposals) != 0 {
		t.Errorf("the desk has entered a score, and %+v waits", n.Proposals)
	}
}

// TestATeamHasOneScore: the newest that it sent.
func TestATeamHasOneScore(t *testing.T) {
	d, _ := withScores(t, AskFirst)
	must(t, d, sent(d, "1", scoring.A, 11, 7), sent(d, "1", scoring.B, 9, 11), sent(d, "1", scoring.A, 11, 9))
	n := d.Ledger().Night()
	p := n.ProposalsOf(n.GameOn("1").ID)
	if len(p) != 2 || p[0].By != scoring.B || p[0].Final != final(t, 9, 11) || p[1].Final != final(t, 11, 9) {
		t.Errorf("%+v waits", p)
	}
	if len(n.ProposalsOf(n.GameOn("2").ID)) != 0 {
		t.Error("a score waits on the other court")
	}
}

// TestHowScoresPass: by the desk alone, when both teams send the same, or at once.
func TestHowScoresPass(t *testing.T) {
	for _, c := range []struct {
		pass   Passing
		scores []ProposeScore // their code and game are filled in
		over   bool
	}{
		{AskFirst, []ProposeScore{{By: scoring.A, A: 11, B: 7}, {By: scoring.B, A: 11, B: 7}}, false},
		{BothSent, []ProposeScore{{By: scoring.A, A: 11, B: 7}}, false},
		{BothSent, []ProposeScore{{By: scoring.A, A: 11, B: 7}, {By: scoring.B, A: 11, B: 8}}, false},
		{BothSent, []ProposeScore{{By: scoring.A, A: 11, B: 7}, {By: scoring.A, A: 11, B: 8}}, false},
		{BothSent, []ProposeScore{{By: scoring.A, A: 11, B: 7}, {By: scoring.B, A: 11, B: 8}, {By: scoring.A, A: 11, B: 8}}, true},
		{AllPass, []ProposeScore{{By: scoring.B, A: 3, B: 11}}, true},
	} {
		d, _ := withScores(t, c.pass)
		g := d.Ledger().Night().GameOn("2").ID
		for _, s := range c.scores {
			must(t, d, sent(d, "2", s.By, s.A, s.B))
		}
		last := c.scores[len(c.scores)-1]
		switch f := d.Ledger().Night().Game(g).Final; {
		case (f != nil) != c.over:
			t.Errorf("%q, %+v: the final score is %v", c.pass, c.scores, f)
		case c.over && *f != final(t, last.A, last.B):
			t.Errorf("%q, %+v: the final score is %v", c.pass, c.scores, f)
		}
		if a, _ := d.Ledger().NextUndo(); c.over != a.has(func(e Event) bool { _, is := e.(GameFinished); return is }) {
			t.Errorf("%q, %+v: undo takes back %s", c.pass, c.scores, d.Ledger().Describe(a))
		}
	}
}

// TestWhatNobodyMaySend: another court's game, one that is over, a score that is none, or anything without a code of
// tonight.
func TestWhatNobodyMaySend(t *testing.T) {
	d, clock := withScores(t, AskFirst)
	n := d.Ledger().Night()
	one, two := sent(d, "1", scoring.A, 11, 7), sent(d, "2", scoring.A, 11, 7)
	other := one
	other.Game = two.Game
	refused(t, d, other, "court 1 has another game now")
	for _, code := range []string{"", "1", strings.ToLower(one.Code), one.Code[1:], one.Code + "A", n.CourtCode("9")} {
		wrong := one
		wrong.Code = code
		if _, err := d.Do(wrong); !errors.Is(err, ErrNoCourt) {
			t.Errorf("%q: %v", code, err)
		}
	}
	for _, s := range [][2]int{{11, 10}, {5, 3}, {-1, 11}, {11, 11}, {1000000, 7}} {
		wrong := one
		wrong.A, wrong.B = s[0], s[1]
		if _, err := d.Do(wrong); err == nil || len(d.Ledger().Night().Proposals) > 0 {
			t.Errorf("%v: %v", s, err)
		}
	}
	wrong := one
	wrong.By = 2
	refused(t, d, wrong, "which team")

	must(t, d, FinishGame{one.Game, final(t, 11, 3)})
	refused(t, d, one, "over at the desk, 11-3")
	for i := range MaxProposals {
		must(t, d, sent(d, "2", scoring.A, 11, i))
	}
	refused(t, d, sent(d, "2", scoring.A, 12, 10), "tell yours at the desk")

	must(t, d, ChooseCourtScores{Pass: AskFirst})
	if n = d.Ledger().Night(); len(n.Proposals) != 0 || n.CourtCode("2") != "" {
		t.Errorf("with scores from the courts off %+v waits, and court 2 has %q", n.Proposals, n.CourtCode("2"))
	}
	if _, err := d.Do(two); !errors.Is(err, ErrNoCourt) {
		t.Errorf("while it is off: %v", err)
	}
	refused(t, d, ChooseCourtScores{}, "off already")
	must(t, d, ChooseCourtScores{On: true, Secret: strings.Repeat("f", 32)})
	if d.Ledger().Night().CourtCode("2") != two.Code {
		t.Error("a slip that was printed before leads nowhere")
	}
	refused(t, d, ChooseCourtScores{On: true}, "already")

	clock.now = clock.now.Add(time.Hour)
	must(t, d, EndNight{SetAside: true})
	if _, err := d.Do(two); !errors.Is(err, ErrNoCourt) {
		t.Errorf("after the night: %v", err)
	}
	must(t, d, OpenNight{Name: "another night", Settings: DefaultSettings(7), Courts: 2})
	refused(t, d, ChooseCourtScores{On: true, Secret: "abc"}, "16 bytes")
	must(t, d, ChooseCourtScores{On: true, Secret: testSecret})
	if d.Ledger().Night().CourtCode("2") == two.Code {
		t.Error("the code of one night holds on another, even of the same secret")
	}
}

// TestOutOfTimeAScoreIsTimed as it is at the desk.
func TestOutOfTimeAScoreIsTimed(t *testing.T) {
	d, clock := withScores(t, AskFirst)
	s := d.Ledger().Night().Settings
	s.Scoring.Minutes = 10
	must(t, d, ChangeSettings{s})
	for _, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{g.ID, final(t, 11, 0)})
	}
	must(t, d, CallRound{})
	refused(t, d, sent(d, "1", scoring.A, 6, 4), "")
	clock.now = clock.now.Add(11 * time.Minute)
	must(t, d, sent(d, "1", scoring.A, 6, 4))
	n := d.Ledger().Night()
	if p := n.ProposalsOf(n.GameOn("1").ID); len(p) != 1 || p[0].Final.How() != scoring.Timed {
		t.Errorf("%+v waits", p)
	}
}

// TestNoUndoWaitsForAPhone: a call can be taken back although a score was sent for one of its games, which then means
// nothing.
func TestNoUndoWaitsForAPhone(t *testing.T) {
	d, _ := withScores(t, AskFirst)
	call := d.Ledger().Actions()
	must(t, d, sent(d, "1", scoring.A, 11, 7))
	id := uint64(0)
	for _, a := range call {
		if a.has(func(e Event) bool { _, is := e.(RoundCalled); return is }) {
			id = a.ID
		}
	}
	must(t, d, UndoAction{id})
	if n := d.Ledger().Night(); len(n.Games) != 0 || len(n.Proposals) != 0 {
		t.Errorf("%d games, %+v waits", len(n.Games), n.Proposals)
	}
	must(t, d, CallRound{})
	if n := d.Ledger().Night(); len(n.Proposals) != 0 {
		t.Errorf("the new game has %+v", n.Proposals)
	}
}
