package tui

import (
	"fmt"
	"strings"
	"testing"

	"club/quadrille/scoring/drill"
	"club/quadrille/session"
)

func TestTheBenchRestsPeopleAndBringsThemBack(t *testing.T) {
	s := called(t, 2, 11).press("b").shows("> Iris Vale", "Round 2")
	s.pass(4).send(tickMsg{}).shows("4 min")
	s.press("down", " ").shows("rests", "Saved: ")
	if got := s.night().Count(session.Resting); got != 1 {
		t.Fatalf("%d people rest, want 1", got)
	}
	s.press("end", " ").hides("rests")
	s.press("home", "l")
	if here, gone := s.night().Count(session.Here), s.night().Count(session.Gone); here != 10 || gone != 1 {
		t.Errorf("%d here and %d gone, want 10 and 1", here, gone)
	}
	s = called(t, 2, 8).press("b").shows("Nobody waits")
	before := s.desk.Ledger().Last()
	if s.press("enter", "l", " "); s.desk.Ledger().Last() != before {
		t.Error("keys on an empty bench do something")
	}
}

// TestStandingsReachTheLastRow, on a terminal that does not show all of them at once.
func TestStandingsReachTheLastRow(t *testing.T) {
	s := called(t, 12, 50)
	for range 12 {
		s.press("117", "enter")
	}
	rows := session.Standings(s.desk.Ledger().Club(), s.night())
	first, last := rows[0].Name, rows[len(rows)-1].Name
	s.press("s").shows(first, "below").hides(last)
	for range len(rows) {
		s.press("down")
	}
	s.shows(last).hides("below", first)
	s.press("home").shows(first, "below").press("end").shows(last).hides("below")
	for range 9 {
		s.press("pgup")
	}
	s.shows(first)
}

func TestStandingsTurnToTheLeagueAndTheRatings(t *testing.T) {
	s := called(t, 1, 4).press("s").shows("No game is over yet").press("c", "117", "enter", "s").shows("win share", "100 %")
	s.press("v").shows("points", "All nights count").press("+", "+").shows("best 2 nights", "Saved: the best 2 nights of each person count for the league").reopen().press("s", "v").shows("best 2 nights")
	s.press("-", "-", "-").shows("All nights count", "! all nights count for the league already").press("esc")
	s.press("v").shows("95 % range", "not yet comparable")
	s.press("v").shows("All nights: nobody has had 8 games with one partner yet").press("v").shows("win share")
}

// TestTheDrillChecksAnswers: a right answer is told so and leads on, a wrong one is put right, and
// one that cannot be read is asked for again.
func TestTheDrillChecksAnswers(t *testing.T) {
	s := called(t, 1, 4)
	lesson, err := drill.New(s.m.seed(), s.night().Settings.Scoring)
	if err != nil {
		t.Fatal(err)
	}
	s.press("t").shows("rules card").press("d").shows("Your answer:")
	for range 5 {
		want := lesson.Question().Expected()
		next, _ := lesson.Answer(want)
		lesson = next
		s.press(want.String(), "enter").shows("Right.")
	}
	s.press("perhaps", "enter").shows("! ")
	wrong := lesson.Question().Expected()
	wrong.Over = !wrong.Over
	s.press("ctrl+u", wrong.String(), "enter")
	if view := s.m.View(); strings.Contains(view, "Right.") {
		t.Errorf("%s is taken for right:\n%s", wrong, view)
	}
	s.press("esc").hides("Your answer:").shows("[Courts]")
	s.press("t", "c").shows("Kitchen").press("x").hides("Kitchen")
}

// TestTheRosterFormSaysWhatIsWrong and keeps the path for another try.
func TestTheRosterFormSaysWhatIsWrong(t *testing.T) {
	s := newStage(t).do(session.OpenNight{Name: "Night", Settings: session.DefaultSettings(1), Courts: 2}).press("d")
	s.press("ctrl+o", "enter").shows("! ").press("/no/such/file.csv", "enter").shows("roster not taken", "/no/such/file.csv")
	s.press("esc").hides("Open a roster")
	s.press("ctrl+o", "../testdata/roster18.csv", "down", "right", "enter").shows("16 here", "2 expected").hides("Open a roster")
	s.press("ctrl+o", "../testdata/roster18.csv", "enter").shows("! ")
}

// TestACopyOfTheFileIsWritten where somebody says, and a failure is told.
func TestACopyOfTheFileIsWritten(t *testing.T) {
	s := called(t, 1, 4).press("o", "w").shows("! nothing of this is kept").press("esc", "esc")
	var written []string
	s.m.options.Backup = func(path string, _ session.Command) error {
		if strings.Contains(path, "full") {
			return fmt.Errorf("the disk is full")
		}
		written = append(written, path)
		return nil
	}
	s.press("o", "w", "/tmp/copy.qdb", "enter").shows("copy written to /tmp/copy.qdb")
	s.press("o", "w", "/full/copy.qdb", "enter").shows("! no copy made: the disk is full")
	if len(written) != 1 || written[0] != "/tmp/copy.qdb" {
		t.Errorf("copies went to %q", written)
	}
}

// TestARollingNightHasNoRoundsToTurn on a wide screen, where rounds stand beside the map: the arrows do nothing there.
func TestARollingNightHasNoRoundsToTurn(t *testing.T) {
	s := newStage(t).people(2, 9, func(set *session.Settings) { set.Flow = session.Rolling }).press("n").resize(200, 60).press("r")
	before := s.m.View()
	if s.press("left", "right"); s.m.View() != before {
		t.Errorf("the arrows changed\n%s\ninto\n%s", before, s.m.View())
	}
	s = newStage(t).people(2, 9, nil).resize(200, 60).press("r").hides("round 0")
	s.press("left", "right", "left")
}
