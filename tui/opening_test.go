package tui

import (
	"testing"

	"club/quadrille/session"
)

// TestTonightOpensWithOneEnter: a usual night is offered on its day, with its courts and their notes, and enter opens it.
func TestTonightOpensWithOneEnter(t *testing.T) {
	s := newStage(t)
	s.press("n").shows("Open tonight", "no play on a wet court").press("up").shows("> Venue", "where you play")
	s.press(letters("Dock")...).press("down", "down").press(letters("1,2,Centre")...).press("enter")
	s.shows("[Door]", "Saved: night opened at Dock")
	s.press("esc", "g", "c", "enter", "m", "t").shows("Court Centre: what is particular about it?")
	s.press(letters("slow")...).press("enter").shows("Saved: court Centre noted: slow", "Court Centre (slow):")
	s.press("o", "u").shows("Keep tonight as a usual night", "Friday doubles").press("enter").shows("kept as a usual night: Friday doubles")
	s.do(endTonight()...)
	s.pass(7 * 24 * 60)
	s.press("n").shows(">  1  Friday doubles: 3 courts at Dock, rounds, rotating")
	s.press("e").shows("1, 2, Centre", "Dock", "Friday doubles 27 November").press("esc")
	s.press("n", "enter").shows("[Door]")
	if n := s.night(); n.Venue != "Dock" || len(n.Courts) != 3 || n.Court("Centre").Note != "slow" {
		t.Errorf("opened %q with %+v", n.Venue, n.Courts)
	}
	s.press("esc", "C").shows("Emergency card: Dock").press("esc")
	s.press("o", "u").press(letters("Late")...).press("down", "m", "o", "x", "enter").shows(`"mox" is no day of the week`)
	s.press("backspace", "enter").shows("kept as a usual night: Late")
	s.do(endTonight()...)
	s.press("n").shows(">  1  Friday doubles", " 2  Late (Monday)")
	s.press("x").shows("Forget which usual night?").press("2").shows("Saved: no usual night any more: Late")
	s.press("esc", "n").hides(" 2  Late").press("o").shows("1, 2, Centre", "Dock", "Friday 27 November").press("esc")
	if s.night() != nil {
		t.Error("a night was opened")
	}
}

// TestANewVenueHasNoCardOfAnother: what another card says is told as another's, and the form begins empty.
func TestANewVenueHasNoCardOfAnother(t *testing.T) {
	s := newStage(t).do(openAt(""), card("12 Mill Lane"))
	s.press("C").shows("Emergency card", "12 Mill Lane").hides("Nothing is written").press("esc")
	s.do(endTonight()...).do(openAt("Dock"))
	s.press("C").shows("Emergency card: Dock", "Address        not written yet: w", "Nothing is written for Dock yet.", "may be another place").press("w")
	s.shows("Write the emergency card: Dock").hides("12 Mill Lane").press(letters("Dock9")...).press("enter")
	s.shows("Address        Dock9").hides("12 Mill Lane")
}

// TestWhatIsParticularIsReadOutWithTheCall at every size of the list.
func TestWhatIsParticularIsReadOutWithTheCall(t *testing.T) {
	s := called(t, 6, 24).do(noted("3", "uneven at the net"))
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		s.resize(size[0], size[1]).press("c", "v", "down", "down").shows("court 3: uneven at the net").press("esc")
	}
}

func endTonight() []session.Command { return []session.Command{session.EndNight{}} }

func openAt(venue string) session.Command {
	return session.OpenNight{Settings: session.DefaultSettings(1), Courts: 2, Venue: venue}
}

func card(address string) session.Command {
	return session.WriteCard{Card: session.EmergencyCard{Address: address}}
}

func noted(court session.CourtID, note string) session.Command {
	return session.NoteCourt{Court: court, Note: note}
}

// TestOnlySomeCourtsAtTheDoorAndOnThePage: the form takes them, the page shows them and takes them back.
func TestOnlySomeCourtsAtTheDoorAndOnThePage(t *testing.T) {
	s := called(t, 2, 9)
	id := s.night().Roll[0].Person
	p, _ := s.desk.Ledger().Club().Person(id)
	p.Courts = session.ParseOwnCourts(" 2 ;; 9,")
	s.do(session.ChangePerson{Person: p})
	s.press("f").press(letters("agn")...).press("enter").shows("only on courts 2 and 9").press("e").shows("Only courts", "2; 9").press("esc")
	s.press("w").shows("take back: only on courts 2 and 9").press("1").hides("only on")
	if p, _ := s.desk.Ledger().Club().Person(id); len(p.Courts) > 0 {
		t.Errorf("still only on %q", p.Courts)
	}
	s.press("e", "down", "down", "down", "down", "down", "down").shows("> Only courts").press("1", "enter").shows("only on court 1")
}

// TestACourtIsCalledByItsNameInTheHall where there is room for it.
func TestACourtIsCalledByItsNameInTheHall(t *testing.T) {
	s := newStage(t).do(session.OpenNight{Settings: session.DefaultSettings(1), Named: []session.CourtID{"1", "Centre", "Far end"}})
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		s.resize(size[0], size[1]).press("esc", "c").shows("Centre", "Far end")
	}
}
