package tui

import (
	"fmt"
	"maps"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"ladder":           func(t *testing.T) *stage { return climbing(t, 3, 13, 2).press("s") },
		"standings, large": func(t *testing.T) *stage { return busy(t, 12, 37).resize(200, 60).press("s") },
	})
}

// climbing is a ladder night after so many rounds, with one game of the next one over.
func climbing(t testing.TB, courts, people, rounds int) *stage {
	s := newStage(t).people(courts, people, func(set *session.Settings) { set.Format = scheduler.Ladder })
	for range rounds {
		s.do(session.CallRound{}).pass(11)
		for i, g := range s.night().Running() {
			s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, (i*3)%10)})
		}
	}
	s.do(session.CallRound{}).pass(11)
	return s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 8)})
}

// TestStandingsSayWhyAndHow: the reason with figures, the form, the movement, and who has few games.
func TestStandingsSayWhyAndHow(t *testing.T) {
	s := busy(t, 4, 18)
	s.do(session.AddGuest{Name: "Zora Zimmer"})
	s.resize(200, 60).press("s").shows("last 5", "why here", "before ", "Order: win share", "Places through the night", "Games")
	for i, p := range session.Places(s.desk.Ledger().Club(), s.night()) {
		if i == 0 {
			s.shows(p.Name, "place 1 of 18")
		}
		if up, ok := p.Moved(); ok && up != 0 {
			s.shows(map[bool]string{true: "↑", false: "↓"}[up > 0])
		}
	}
	second := session.Places(s.desk.Ledger().Club(), s.night())[1]
	s.press("down").shows("behind ").press("enter")
	if who, _ := s.m.person.Shown(); s.m.active != ui.PersonScreen || who != second.People[0] {
		t.Errorf("enter on the second line shows %s", s.m.names.Full(who))
	}
	s.press("esc").resize(80, 24).shows("before ")
}

// TestFewGamesAreMarked: who has fewer games than half of the most keeps the place and gets a mark.
func TestFewGamesAreMarked(t *testing.T) {
	s := newStage(t).people(1, 4, nil)
	for range 3 {
		s.do(session.CallRound{}).pass(11)
		s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 5)})
	}
	s.press("s").hides("°")
	s.do(session.AddGuest{Name: "Zora Zimmer"}, session.AddGuest{Name: "Yan Zimmer"}, session.AddGuest{Name: "Xu Zimmer"}, session.AddGuest{Name: "Wo Zimmer"})
	s.do(session.CallRound{}).pass(11)
	s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 5)})
	if least := session.LeastGames(session.Places(s.desk.Ledger().Club(), s.night())); least < 2 {
		t.Fatalf("the least is %d", least)
	}
	s.press("s").shows("°1", "° fewer than 2 games, half of the most.")
}

// TestALadderNightShowsTheLadder: the top court first, who goes where; v has tonight's table too.
func TestALadderNightShowsTheLadder(t *testing.T) {
	s := climbing(t, 3, 13, 2).resize(120, 36).press("s").shows("court", "came", "goes", "The first court is the top", "stays at the top", "down to court 2", "on court", "Sits out round 3")
	s.press("v").shows("last 5").press("v").shows("counted").press("v").shows("rating").press("v").shows("one partner").press("v").shows("stays at the top")
	who := s.night().Game(s.night().Rounds[2].Games[0]).A[0]
	s.press("home", "enter")
	if shown, _ := s.m.person.Shown(); s.m.active != ui.PersonScreen || shown != who {
		t.Errorf("enter on the first line shows %s", s.m.names.Full(shown))
	}
	called(t, 2, 9).press("117", "enter", "s").shows("last 5").hides("ladder")
}

// TestTheLadderSaysWhoGoesAnotherWay than the game says, and why: beside the row where there is room, and below for the row
// that is chosen.
func TestTheLadderSaysWhoGoesAnotherWay(t *testing.T) {
	s := newStage(t).people(3, 13, func(set *session.Settings) { set.Format = scheduler.Ladder })
	s.slices = 1
	s.reopen().press("c", "n")
	winner := s.night().Running()[1].A[0] // who goes up to the first court, and may not meet a winner there
	p, _ := s.desk.Ledger().Club().Person(winner)
	p.KeepApart = []session.PersonID{s.night().Running()[0].A[0]}
	s.do(session.ChangePerson{Person: p})
	for _, g := range s.night().Running() {
		s.pass(4).do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, 8)})
	}
	s.resize(120, 36).press("s").shows("(fills a place)", "(kept apart from ")
	s.resize(80, 24).hides("(fills a place)").press("home").shows("Cleo V. won, and is on court 2 next: kept apart from Bram V.")
	s.press("down").shows("2 go another way than the game says: choose the name to see why")
}

// TestTheMouseOnTheStandings: a click chooses a row, a second one opens the page; beside the table none does.
func TestTheMouseOnTheStandings(t *testing.T) {
	s := busy(t, 12, 37).resize(200, 60).press("s")
	p := session.Places(s.desk.Ledger().Club(), s.night())[4]
	s.clickOn(p.Name).shows(fmt.Sprintf("place %d of 37", p.Rank)).click(150, 7).shows(fmt.Sprintf("place %d of 37", p.Rank))
	s.clickOn(fmt.Sprintf("> %2d %s", p.Rank, p.Name))
	if who, _ := s.m.person.Shown(); s.m.active != ui.PersonScreen || who != p.People[0] {
		t.Error("the second click does not show the page")
	}
}

// says is how many rows of the screen have something that matters: a letter, a digit or a bar.
func (s *stage) says() int {
	k := 0
	for _, l := range s.lines() {
		if strings.ContainsFunc(l, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '░' || r == '▇' }) {
			k++
		}
	}
	return k
}

// TestStandingsFillTheScreen: at 200 by 60, with 12 courts and 37 people, at least three of five rows say something.
func TestStandingsFillTheScreen(t *testing.T) {
	for name, s := range map[string]*stage{"rounds": busy(t, 12, 37), "ladder": climbing(t, 12, 37, 2)} {
		s.resize(200, 60).press("s")
		if k := s.says(); 10*k < 6*60 {
			t.Errorf("%s: %d of 60 rows say something:\n%s", name, k, s.m.View())
		}
	}
}

// TestGoldenStandings draws the tables of several nights.
func TestGoldenStandings(t *testing.T) {
	for _, n := range []struct {
		name string
		open func() *stage
	}{
		{"ladder", func() *stage { return climbing(t, 3, 13, 2).press("s") }},
		{"12 courts", func() *stage { return busy(t, 12, 37).press("s", "down", "down") }},
		{"longest names", func() *stage { return named(t, session.Rounds).press("s") }},
		{"nothing played", func() *stage { return newStage(t).people(2, 8, nil).press("s") }},
	} {
		s := n.open()
		for _, size := range append(sizes[:len(sizes):len(sizes)], [2]int{minWidth, minHeight}) {
			t.Run(fmt.Sprintf("%s/%dx%d", n.name, size[0], size[1]), func(t *testing.T) {
				s.resize(size[0], size[1])
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
			})
		}
	}
}
