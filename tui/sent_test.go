package tui

import (
	"maps"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/attention"
)

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"score sent":            func(t *testing.T) *stage { return withCourts(t, 2, 9).sent("1", scoring.A, 11, 7).press("c") },
		"two scores sent":       func(t *testing.T) *stage { return twoSent(t).press("c") },
		"which of two":          func(t *testing.T) *stage { return twoSent(t).press("c", "y") },
		"attention, score sent": func(t *testing.T) *stage { return withCourts(t, 2, 9).sent("1", scoring.A, 11, 7).press("a") },
		"scores from courts":    func(t *testing.T) *stage { return withCourts(t, 2, 9).press("o", "c") },
	})
}

// withCourts is a night with a page for phones whose courts send scores to the desk.
func withCourts(t testing.TB, courts, people int) *stage {
	t.Helper()
	s := newStage(t).people(courts, people, nil)
	s.m.options.Phones = &fakePhones{at: "10.0.0.2"}
	return s.do(session.ChooseCourtScores{On: true, Secret: strings.Repeat("0f", 16)}).press("n").shows("round 1 called")
}

func twoSent(t testing.TB) *stage {
	return withCourts(t, 2, 9).sent("1", scoring.A, 11, 7).sent("1", scoring.B, 7, 11)
}

// sent lets a court send a score, which must be taken in.
func (s *stage) sent(court session.CourtID, by scoring.Team, a, b int) *stage {
	s.t.Helper()
	if err := s.sends(court, by, a, b); err != nil {
		s.t.Fatal(err)
	}
	return s
}

func (s *stage) sends(court session.CourtID, by scoring.Team, a, b int) error {
	s.t.Helper()
	n, answers := s.night(), []error{}
	s.send(Sent{
		Score:  session.ProposeScore{Code: n.CourtCode(court), Game: n.Court(court).Game, By: by, A: a, B: b},
		Answer: func(err error) { answers = append(answers, err) },
	})
	if len(answers) != 1 {
		s.t.Fatalf("court %s heard %v", court, answers)
	}
	return answers[0]
}

// TestASentScoreIsTakenByAKey: it stands on the card, below the courts and in the list, y takes it, and Y refuses it.
func TestASentScoreIsTakenByAKey(t *testing.T) {
	s := withCourts(t, 2, 9).press("c").sent("1", scoring.A, 11, 7)
	s.shows("sent 11-7", "Court 1: a score was sent", "y takes it", "Y refuses it", "sent by ", "court 1 sent 11-7", "y take it")
	g := s.night().Court("1").Game
	s.press("y").shows("Saved: court 1: 11-7 ", "as the court sent it")
	if f := s.night().Game(g).Final; f == nil || f.String() != "11-7" {
		t.Errorf("the game has %v", f)
	}
	if p := s.m.options.Phones.(*fakePhones); len(p.hall.Codes()) != 2 {
		t.Errorf("the pages show %v", p.hall.Codes())
	}
	s.sent("2", scoring.B, 4, 11).press("Y").shows("Saved: court 2: what the court sent is refused").hides("sent 4-11")
	if !s.night().Game(s.night().Court("2").Game).Running() {
		t.Error("a score that was refused counts")
	}
	s.sent("2", scoring.B, 4, 11).press("a").shows("court 2 sent 4-11", "take it", "Y refuse it").press("enter").hides("sent 4-11")
	if s.night().Court("2").Game != 0 {
		t.Error("enter in the list did not take it")
	}
}

// TestTeamsThatDoNotAgree: the organiser chooses, or refuses both.
func TestTeamsThatDoNotAgree(t *testing.T) {
	s := twoSent(t).press("c").shows("sent two scores", "the teams do not agree", "court 1 sent two scores, 11-7 and 7-11")
	g := s.night().Court("1").Game
	s.press("y").shows("Court 1 sent two scores", "11-7", "7-11").press("2")
	if f := s.night().Game(g).Final; f == nil || f.String() != "7-11" {
		t.Errorf("the game has %v", f)
	}
	s = twoSent(t).press("a").shows("to court 1").press("Y")
	if len(s.night().Proposals) != 0 {
		t.Error("Y in the list did not refuse both")
	}
}

// TestASentScoreDisturbsNobody: what is typed, what is open, and what undo takes back stay as they are; what waits for
// the disk comes first.
func TestASentScoreDisturbsNobody(t *testing.T) {
	s := withCourts(t, 2, 9).press("c", "1", "1").sent("2", scoring.A, 11, 7).press("3", "enter").shows("Saved: court 1: ")
	if s.m.night().Court("1").Game != 0 {
		t.Fatal("what was typed is lost")
	}
	s.press("g", "2").sent("2", scoring.B, 11, 7).press("o").sent("2", scoring.A, 11, 8).shows("Tonight").press("esc")
	s.press("u").shows("undid: court 1: 11-3")
	if a, _ := s.m.ledger.NextUndo(); a.IsSent() {
		t.Error("undo takes back what a court sent")
	}
	s = withCourts(t, 2, 9)
	s.shows("NOW CALLED").press("c").hides("NOW CALLED").sent("2", scoring.A, 11, 7).hides("NOW CALLED")

	s = withCourts(t, 2, 9).press("c")
	s.slow = true
	s.press("1", "1", "3", "enter")
	n, heard := s.night(), 0
	s.send(Sent{Score: session.ProposeScore{Code: n.CourtCode("2"), Game: n.Court("2").Game, A: 11, B: 7}, Answer: func(error) { heard++ }})
	if heard != 0 || len(s.held) == 0 {
		t.Fatal("a score from a court overtakes one that is on its way to the disk")
	}
	for len(s.held) > 0 {
		s.release()
	}
	if heard != 1 || len(s.night().Proposals) != 1 {
		t.Errorf("%d answers, %+v waits", heard, s.night().Proposals)
	}
}

// TestWhatPassesByItselfIsTold as the organiser's own scores are, and whoever sends nonsense hears why.
func TestWhatPassesByItselfIsTold(t *testing.T) {
	s := withCourts(t, 2, 9).press("o", "c").shows("wait for the desk", "pass by themselves").press("3").shows("Saved: scores from the courts pass by themselves")
	s.press("esc").sent("1", scoring.A, 11, 7).shows("Saved: court 1: 11-7 ", "as the court sent it")
	if err := s.sends("2", scoring.A, 11, 10); err == nil || !strings.Contains(err.Error(), "11-10") {
		t.Errorf("11-10 is answered with %v", err)
	}
	s.hides("11-10")
	s.press("u").shows("Undo this?").press("y")
	if s.night().Court("1").Game == 0 {
		t.Error("what passed by itself cannot be undone")
	}
	s.press("o", "c", "0").shows("Saved: no scores from the courts")
	if err := s.sends("2", scoring.A, 11, 7); err == nil {
		t.Error("a score is taken although that is off")
	}
}

// TestTheCodeOfACourt is shown at its menu, and what is missing for it is said.
func TestTheCodeOfACourt(t *testing.T) {
	s := withCourts(t, 2, 9).press("c", "m").shows("q show the code with which this court sends its score").press("q")
	s.shows("Court 1: send the score", "HTTP://10.0.0.2/C/"+s.night().CourtCode("1"), "▀▄ of ")
	p := s.m.options.Phones.(*fakePhones)
	p.at = ""
	s.shows("The page for phones is closed.").press("esc", "m", "q").shows("! the page for phones is closed: o, then p, opens it")
	called(t, 2, 9).press("c", "m").hides("show the code")
}

// TestSentScoresRing: somebody stands at a court until the desk acts.
func TestSentScoresRing(t *testing.T) {
	s := withCourts(t, 2, 9)
	rung := 0
	s.m.options.Bell = func() { rung++ }
	s.sent("1", scoring.A, 11, 7)
	s.sent("1", scoring.B, 11, 7)
	if rung != 1 {
		t.Errorf("two equal scores rang %d times", rung)
	}
	for _, x := range s.m.mind.open() {
		if x.Kind == attention.Sent && x.Court == "1" {
			return
		}
	}
	t.Error("nothing is in the list")
}

// TestACourtHearsWhenTheDeskCannotSave: its score is told at the desk, and what waits there stays.
func TestACourtHearsWhenTheDeskCannotSave(t *testing.T) {
	s := withCourts(t, 2, 9).press("c")
	s.m.trouble = &trouble{command: session.CallRound{}}
	if err := s.sends("1", scoring.A, 11, 7); err == nil || !strings.Contains(err.Error(), "cannot save") {
		t.Errorf("the court hears %v", err)
	}
}
