package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// longName is the name of somebody with as many cells as a form of names takes in many countries.
func longName(i int) string {
	return fmt.Sprintf("%s Maximiliana-Wilhelmina van den Oosterhoudt-%02d", firstNames[i%len(firstNames)], i)
}

// rollingHall is a rolling night with people of long names checked in.
func rollingHall(t *testing.T, courts, people int, change func(*session.Settings)) *stage {
	s := newStage(t)
	settings := session.DefaultSettings(7)
	settings.Flow = session.Rolling
	if change != nil {
		change(&settings)
	}
	s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: courts})
	for i := range people {
		s.do(session.AddGuest{Name: longName(i), Group: []string{"women", "men"}[i%2]})
	}
	return s.press("esc")
}

// read collects what a page shows while it is scrolled to its end.
func (s *stage) read(pages int) string {
	var all []string
	for range pages {
		d := s.m.dialog()
		all = append(all, d.Lines(s.m.dialogContext(d))...)
		s.press("pgdown")
	}
	return oneLine(strings.Join(all, " "))
}

// Whom a score has called to the next court is read in full, however long the names.
func TestWhoIsCalledIsReadInFull(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		s := rollingHall(t, 1, 8, nil).resize(size[0], size[1]).press("n").pass(12).press("117", "enter")
		called := s.night().Running()[0]
		var names []string
		for _, id := range called.Players() {
			p, _ := s.desk.Ledger().Club().Person(id)
			names = append(names, p.Name)
		}
		s.shows(names...).shows("Saved: court 1: 11-7")
		checkFrame(t, s.m)
	}
}

// A long refusal and many long names stand below each other, and the frame keeps its size.
func TestALongRefusalLeavesRoom(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {40, 12}, {60, 16}} {
		s := rollingHall(t, 5, 20, nil).resize(size[0], size[1])
		s.m.refuse(fmt.Errorf("%s", strings.Repeat("a reason that takes its time, ", 40)))
		s.m.enqueue(stroke("n")) // typed before it could be seen
		s.run(s.m.drain())
		s.shows("(esc)")
		checkFrame(t, s.m)
	}
}

// Where too many are called at once for the message, it says so, and one key shows them all in full.
func TestEverybodyCalledAtOnceIsReadInFull(t *testing.T) {
	s := rollingHall(t, 12, 50, nil).press("n").shows("12 games called")
	text := s.press("k").shows("Who plays where").read(12)
	for _, g := range s.night().Running() {
		for _, id := range g.Players() {
			if p, _ := s.desk.Ledger().Club().Person(id); !strings.Contains(text, p.Name) {
				t.Fatalf("%s is called and cannot be read in\n%s", p.Name, text)
			}
		}
	}
	s.press("esc").hides("Who plays where")
	rollingHall(t, 3, 12, nil).resize(60, 16).press("n").shows("… (ctrl+l: who plays where)")
	s = rollingHall(t, 5, 20, nil).press("n").shows("play begun, 5 games called").press("d", "ctrl+l").shows("Who plays where")
	if text := s.read(9); strings.Count(text, "Oosterhoudt") < 20 {
		t.Errorf("fewer than 20 names can be read in\n%s", text)
	}
}

// A mixed night asks everybody for a group at the door with one key, and until then says who is missing one,
// and n gives it.
func TestTheDoorAsksForAGroup(t *testing.T) {
	s := rollingHall(t, 2, 6, func(set *session.Settings) { set.Format = scheduler.Mixed }).press("d")
	s.press("New Woman", "enter").shows("New Woman: which group?", "1  men", "2  women").press("2").shows("Saved: New Woman", "7 here")
	s.press("Late Man", "enter").press("0").shows("Saved: Late Man", "8 here")
	group := func(name string) string {
		p, _ := s.desk.Ledger().Club().Named(name)
		return p.Group
	}
	if group("New Woman") != "women" || group("Late Man") != "" {
		t.Fatalf("the groups are %q and %q", group("New Woman"), group("Late Man"))
	}
	s.press("esc").press("n").shows("press n to give a group: Late Man has no group; court 2 is free (1 score to come)")
	s.press("b").shows("Late Man", "not called").press("c")
	s.press("n").shows("Late Man: which group?").press("wxyz", "1").hides("no group")
	if group("Late Man") != "men" || len(s.night().Running()) != 2 {
		t.Errorf("the group is %q, and %d courts play, want men and 2", group("Late Man"), len(s.night().Running()))
	}
}

// Somebody whom the club knows is asked too.
func TestTheDoorAsksWhoIsKnown(t *testing.T) {
	s := newStage(t).people(1, 4, nil)
	s.do(session.EndNight{})
	settings := session.DefaultSettings(7)
	settings.Format = scheduler.Mixed
	s.do(session.OpenNight{Name: "Next night", Settings: settings, Courts: 1})
	s.press("d", "Agnes", "enter").shows("Agnes Vale: which group?").press("1").shows("Agnes Vale checked in", "1 here")
	s.press("Bram", "enter").press("3").press("men", "enter").shows("2 here", "group men")
}

// Nothing begins while nobody can be called; the line Next names the key that puts it right.
func TestNextSaysWhatKeepsCourtsEmpty(t *testing.T) {
	s := newStage(t).people(1, 5, func(set *session.Settings) {
		set.Flow, set.Format = session.Rolling, scheduler.Mixed
	})
	s.shows("Next: press n to give a group: Agnes Vale, Bram Vale, Cleo Vale and 2 more have no group", "a group is missing")
	for _, key := range []string{"1", "2", "1", "2"} {
		s.press("n").shows("which group?").press(key)
	}
	s.shows("press n to begin play").press("n").shows("play begun").hides("is free")
	s.shows("not called: Edda Vale has no group (n)").press("n").shows("Edda Vale: which group?").press("1")

	p := s.desk.Ledger().Club().People[0]
	q := s.desk.Ledger().Club().People[1]
	p.Together, p.KeepApart = []session.Together{{With: q.ID}}, []session.PersonID{q.ID}
	s.pass(12).do(session.ChangePerson{Person: p}).press("117", "enter")
	s.shows("Next: press n to change it: Agnes Vale and Bram Vale shall be partners and never meet; court 1 is free", "wishes clash")
	s.press("n").shows("Partner with", "Keep apart")
}

// Near closing time the chance is shown, and the organiser decides, on the court or by the line Next.
func TestNearClosingTheOrganiserDecides(t *testing.T) {
	for _, keys := range [][]string{{"n", "m"}, {"m", "n"}} {
		s := newStage(t).people(1, 8, func(set *session.Settings) {
			set.Flow, set.Closing = session.Rolling, evening.Add(time.Hour)
		})
		s.press("n").pass(53).press("117", "enter")
		s.shows("a game called now is over by 20:00 with a chance of", "%", "press n to decide", "in time: m calls")
		if s.press(keys...); len(s.night().Running()) != 1 {
			t.Errorf("%v calls nobody:\n%s", keys, s.m.View())
		}
	}
	s := newStage(t).people(1, 8, func(set *session.Settings) {
		set.Flow, set.Closing = session.Rolling, evening.Add(time.Hour)
	})
	s.press("n").pass(53).press("117", "enter").press("n", "l").shows("last games: no more are called", "press n to end the night or play on")
}

// TestNextIsAccepted: wherever a night has come to by any keys, n does what the line Next says, or opens
// what asks for it; only scores have to be typed.
func TestNextIsAccepted(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := beginning(t, rapid.IntRange(0, 4).Draw(r, "beginning"))
		for range rapid.IntRange(0, 30).Draw(r, "keys") {
			s.press(rapid.SampledFrom(strokes).Draw(r, "key"))
			s.pass(rapid.SampledFrom([]int{0, 0, 0, 0, 5, 30}).Draw(r, "minutes"))
			if s.quit {
				return
			}
		}
		s.press("esc", "esc", "esc", "esc", "esc", "c").send(tickMsg{})
		says := s.m.nextLine()
		s.press("n")
		if err := s.m.wrong; err != nil && !strings.Contains(err.Error(), "still to come") {
			r.Fatalf("next is %q, and n is refused: %v\n%s", says, err, s.m.View())
		}
	})
}

// TestASetPairThatShallNotBeIsPartedAtItsField: n opens the form where partners are named, says why, and a name typed at once
// is a partner's, not the person's own.
func TestASetPairThatShallNotBeIsPartedAtItsField(t *testing.T) {
	s := newStage(t)
	s.slices = 1
	settings := session.DefaultSettings(7)
	settings.Format = scheduler.Pairs
	s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: 2})
	for _, name := range []string{"Agnes Vale", "Bram Okoro", "Cleo Hart", "Dario Finch", "Edda Noll", "Finn Noll", "Greta Umber", "Hugo Pask"} {
		s.do(session.AddGuest{Name: name})
	}
	people := s.desk.Ledger().Club().People
	p := people[0]
	p.NotPartner = []session.PersonID{people[1].ID}
	s.do(session.ChangePerson{Person: p}).reopen().press("c").hides("are a set pair").shows("Agnes & Cleo") // another partner is found
	for _, other := range people[2:] {
		p.NotPartner = append(p.NotPartner, other.ID)
	}
	s.do(session.ChangePerson{Person: p}).reopen().press("c").shows("press n to change it: Agnes Vale and Bram Okoro are a set pair")
	s.press("n").shows("> Partner with", "Agnes Vale and Bram Okoro are a set pair", "shall not be: name their partners.").press("cleo hart", "enter").shows("shall be partners and never be partners")
	s.press("n").shows("> Partner with").press("esc")
	p.NotPartner = p.NotPartner[:1]
	p.Together = []session.Together{{With: people[2].ID}}
	s.do(session.ChangePerson{Person: p})
	if who := s.desk.Ledger().Club().People[0]; who.Name != "Agnes Vale" || len(who.Together) != 1 {
		t.Fatalf("after the form: %+v", who)
	}
	s.press("c", "n").shows("round 1 called")
}
