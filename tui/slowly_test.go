package tui

import (
	"testing"
	"time"

	"club/quadrille/session"
)

// soon lets less than a second pass.
func (s *stage) soon() *stage {
	s.now = s.now.Add(600 * time.Millisecond)
	return s
}

// complete is a night of which a round is complete and the next can be called, with Nora in it.
func complete(t *testing.T) *stage {
	return newStage(t).people(1, 4, nil).do(session.AddGuest{Name: "Nora Umber"}, session.AddGuest{Name: "Ulla Yew"}).press("n", "117", "enter", "b")
}

// TestANameTypedSlowlyOnTheWrongScreenCallsNoRound: the second letter takes back what the first one did, and
// both go to the finder.
func TestANameTypedSlowlyOnTheWrongScreenCallsNoRound(t *testing.T) {
	s := complete(t)
	s.press("n").shows("round 2 called").soon().press("o").shows("Who?", "Name: no", "Nora Umber")
	if got := len(s.night().Rounds); got != 1 {
		t.Errorf("%d rounds are called, want the one before", got)
	}
	s.soon().press("r").soon().press("a").shows("Name: nora").press("esc", "U").shows("round 2 called")
	checkReplay(t, s)

	s = complete(t).press("n")
	s.now = s.now.Add(2 * time.Second)
	if s.press("o").shows("Tonight"); len(s.night().Rounds) != 2 {
		t.Error("an o much later takes the call back")
	}
	s = complete(t).press("n").soon()
	if s.press("k").shows("Who plays where"); len(s.night().Rounds) != 2 {
		t.Error("a letter that begins no name takes the call back")
	}
}

// TestANameTypedSlowlyUndoesNothing: neither at once, nor by answering the question that the first letter asks.
func TestANameTypedSlowlyUndoesNothing(t *testing.T) {
	s := complete(t)
	s.do(session.Rest{Person: s.night().Roll[0].Person}).press("u")
	if s.night().Count(session.Resting) != 0 {
		t.Fatal("u does not undo the rest")
	}
	if s.soon().press("l").shows("Name: ul"); s.night().Count(session.Resting) != 1 {
		t.Error("a name that begins with u has undone something")
	}
	s = newStage(t).people(1, 4, nil).do(session.AddGuest{Name: "Uyen Ash"}).press("n")
	if s.press("u").shows("Undo this?").soon().press("y").shows("Name: uy"); len(s.night().Rounds) != 1 {
		t.Error("the second letter of a name has taken the call back")
	}
	s = newStage(t).people(1, 4, nil).press("n")
	if s.press("u").soon().press("y"); len(s.night().Rounds) != 0 {
		t.Error("u and y of somebody in a hurry take nothing back")
	}
}

// TestAHoldIsNotUndoneByOneKey.
func TestAHoldIsNotUndoneByOneKey(t *testing.T) {
	s := called(t, 2, 8).press("!", "l", "u").shows("Undo this?", "play held: lightning")
	if s.night().Hold == nil {
		t.Error("one key has ended the hold")
	}
	s.press("k").shows("Told to stop")
}

// TestWhenTimeIsUpScoresAreTimedWithoutSaying, by the limit of the game and by the closing time of the night;
// a score to the end stays one.
func TestWhenTimeIsUpScoresAreTimedWithoutSaying(t *testing.T) {
	limit := func(set *session.Settings) { set.Scoring.Minutes = 12 }
	closing := func(set *session.Settings) { set.Closing = evening.Add(12 * time.Minute) }
	for name, set := range map[string]func(*session.Settings){"limit": limit, "closing time": closing} {
		s := newStage(t).people(1, 4, set).press("n").press("96", "enter").shows("! ")
		if got := s.final(1); got != "" {
			t.Errorf("%s: before the time 9-6 is taken as %q", name, got)
		}
		s.press("esc").pass(13).send(tickMsg{}).press("96").shows("timed, as time is up").press("enter")
		if got := s.final(1); got != "9-6 timed" {
			t.Errorf("%s: after the time 9-6 is %q, want it timed", name, got)
		}
		s.press("117", "enter")
		if got := s.final(1); got != "11-7" {
			t.Errorf("%s: corrected to 11-7 it is %q", name, got)
		}
		s = newStage(t).people(1, 4, set).press("n").pass(13).send(tickMsg{}).press("11").press("enter").shows("put a blank")
		if got := s.final(1); got != "" {
			t.Errorf("%s: half a score is saved as %q", name, got)
		}
	}
}

// TestAScoreTakesFourKeys after choosing the court, and no more to go on to the next one.
func TestAScoreTakesFourKeys(t *testing.T) {
	s := called(t, 4, 16).press("home", "right")
	keys := []string{"1", "1", "7", "enter"}
	if s.press(keys...); s.final(2) != "11-7" {
		t.Fatalf("%d keys give %q", len(keys), s.final(2))
	}
	if s.press("9", "1", "1", "enter"); s.final(3) != "9-11" {
		t.Errorf("the next court's score takes more than four keys: it is %q", s.final(3))
	}
}

// TestTheCursorReturnsAfterAFind to the court where it was.
func TestTheCursorReturnsAfterAFind(t *testing.T) {
	s := called(t, 4, 16).press("home", "right", "down").shows("▌ 4 ")
	s.press("f", "agn", "enter").shows("Agnes Vale").press("esc").shows("[Courts]", "▌ 4 ")
}

// TestARefusalIsWholeAndGoes: it says what to do within 80 columns, and goes when the next thing succeeds.
func TestARefusalIsWholeAndGoes(t *testing.T) {
	s := called(t, 2, 8).press("home", "117", "enter").press("home", "x").shows("! court 1 has no game: there is nobody to substitute for")
	s.press("right", "119", "enter").hides("there is nobody to substitute").shows("Saved: court 2")
}
