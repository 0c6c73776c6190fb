package tui

import (
	"fmt"
	"maps"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// longNames are some of the longest and most various names that a club may have.
var longNames = []string{
	"José-María van der Weijden-Papadopoulos", "李雷", "👩‍👩‍👧 Noll", "שרה לוי", "Zoë Müller",
	strings.Repeat("Wolfeschlegelstein ", 4) + "Ng", "Al", "Ōno Núñez", "Bo",
}

// named is a night of three courts with such names under way.
func named(t testing.TB, flow session.Flow) *stage {
	s := newStage(t)
	settings := session.DefaultSettings(7)
	settings.Flow = flow
	s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: 2})
	for _, name := range longNames {
		s.do(session.AddGuest{Name: name})
	}
	p := s.desk.Ledger().Club().People[0]
	p.Together = []session.Together{{With: s.desk.Ledger().Club().People[1].ID, Times: 2}}
	p.KeepApart = []session.PersonID{s.desk.Ledger().Club().People[5].ID}
	p.Level, p.Group = 3.5, "mixed doubles of the first team"
	s.do(session.ChangePerson{Person: p})
	s.m.active = ui.Courts
	if flow == session.Rolling {
		s.do(session.BeginPlay{})
	} else {
		s.do(session.CallRound{})
	}
	s.pass(9)
	g := s.night().Running()[0]
	return s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, 7)}).pass(3).send(tickMsg{})
}

// final is a score of a game played to its end.
func final(t testing.TB, s *stage, a, b int) scoring.Final {
	f, err := s.night().Settings.Scoring.Final(a, b, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// halls is a rolling night in which a court has called again.
func halls(t testing.TB) *stage {
	s := newStage(t).people(2, 16, func(set *session.Settings) { set.Flow = session.Rolling }).press("n").pass(9)
	return s.press("c", "117", "enter").pass(4).send(tickMsg{})
}

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"person":          func(t *testing.T) *stage { return called(t, 2, 11).press("117", "enter", "f", "agn", "enter") },
		"person, rolling": func(t *testing.T) *stage { return rolling(t).press("b", "enter") },
		"person without a night": func(t *testing.T) *stage {
			return called(t, 2, 9).press("117", "enter", "117", "enter").do(session.EndNight{}).press("s", "enter")
		},
		"wishes":      func(t *testing.T) *stage { return called(t, 2, 9).press("f", "agn", "enter", "w") },
		"why not me?": func(t *testing.T) *stage { return rolling(t).press("b", "y") },
	})
}

// pages are nights with the page of somebody shown.
var pages = []struct {
	name string
	open func(t testing.TB) *stage
}{
	{"nothing played", func(t testing.TB) *stage { return newStage(t).people(4, 16, nil).press("f", "agn", "enter") }},
	{"under way", func(t testing.TB) *stage { return busy(t, 7, 37).press("f", "cleo", "enter") }},
	{"twelve courts", func(t testing.TB) *stage { return busy(t, 12, 50).press("f", "iris", "enter") }},
	{"rolling, on the bench", func(t testing.TB) *stage { return named(t, session.Rolling).press("b", "end", "enter") }},
	{"rolling, on court", func(t testing.TB) *stage { return named(t, session.Rolling).press("c", "m", "1") }},
	{"longest names", func(t testing.TB) *stage { return named(t, session.Rounds).press("f", "jos", "enter") }},
	{"night is over", func(t testing.TB) *stage {
		s := busy(t, 4, 16)
		for len(s.night().Running()) > 0 {
			s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 7)})
		}
		return s.do(session.EndNight{}).press("s", "enter")
	}},
}

// busy is a night of so many people in which three rounds are over and one goes on.
func busy(t testing.TB, courts, people int) *stage {
	s := newStage(t).people(courts, people, nil)
	for round := range 4 {
		s.do(session.CallRound{Plan: s.m.plan.Rounds}).pass(11)
		for i, g := range s.night().Running() {
			if round == 3 {
				return s.pass(4).send(tickMsg{})
			}
			s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, (i*3+round)%10)})
		}
	}
	return s
}

// TestGoldenPerson draws pages of persons on three terminals and on the smallest.
func TestGoldenPerson(t *testing.T) {
	for _, p := range pages {
		s := p.open(t)
		for _, size := range append(sizes[:len(sizes):len(sizes)], [2]int{minWidth, minHeight}) {
			t.Run(fmt.Sprintf("%s/%dx%d", p.name, size[0], size[1]), func(t *testing.T) {
				s.resize(size[0], size[1])
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
			})
		}
	}
}

// TestAPageFillsTheScreen: on large terminals at least three of five rows of a page say something.
func TestAPageFillsTheScreen(t *testing.T) {
	for _, p := range pages {
		s := p.open(t)
		for _, size := range sizes[1:] {
			s.resize(size[0], size[1])
			says := 0
			for _, l := range s.lines() {
				if strings.ContainsFunc(l, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '░' || r == '▇' }) {
					says++
				}
			}
			if 10*says < 6*size[1] {
				t.Errorf("%s: %d of %d rows of %dx%d say something:\n%s", p.name, says, size[1], size[0], size[1], s.m.View())
			}
		}
	}
}

// TestAPageFitsAnywhere: whoever it is about, whatever the size.
func TestAPageFitsAnywhere(t *testing.T) {
	var stages []*stage
	for _, p := range pages {
		stages = append(stages, p.open(t))
	}
	rapid.Check(t, func(rt *rapid.T) {
		s := stages[rapid.IntRange(0, len(stages)-1).Draw(rt, "night")]
		s.resize(rapid.IntRange(minWidth, 300).Draw(rt, "width"), rapid.IntRange(minHeight, 100).Draw(rt, "height"))
		s.press(rapid.SampledFrom([]string{"up", "down", "home", "end"}).Draw(rt, "key"))
		for _, l := range s.lines() {
			if line.Width(l) > s.m.width {
				rt.Fatalf("a line of %d cells on %d:\n%s", line.Width(l), s.m.width, s.m.View())
			}
		}
		if k := len(s.lines()); k > s.m.height {
			rt.Fatalf("%d lines on %d:\n%s", k, s.m.height, s.m.View())
		}
		who, _ := s.m.person.Shown()
		if first := strings.TrimSpace(line.Cut(s.m.names.Full(who), 20)); !strings.Contains(s.m.View(), strings.TrimSuffix(first, "…")) {
			rt.Fatalf("the page does not say whose it is:\n%s", s.m.View())
		}
	})
}

// TestWhenDoIPlayNext: the finder says it after three letters, with whom, and enter has the page.
func TestWhenDoIPlayNext(t *testing.T) {
	keys := []string{"f", "e", "d", "d"}
	s := called(t, 2, 8).press(keys...)
	if len(keys) != 4 {
		t.Fatal("four keys")
	}
	who := s.m.names.Full(s.night().Roll[4].Person)
	var next session.PlannedGame
	for _, g := range s.m.plan.Rounds[0].Games {
		if g.A.Has(s.night().Roll[4].Person) || g.B.Has(s.night().Roll[4].Person) {
			next = g
		}
	}
	partner := map[bool]session.Team{true: next.A, false: next.B}[next.A.Has(s.night().Roll[4].Person)]
	other := partner[0]
	if other == s.night().Roll[4].Person {
		other = partner[1]
	}
	s.shows(who, fmt.Sprintf("round 2 on court %s with %s", next.Court, s.m.names.Short(other)))
	s.press("enter").shows("Now", "Next", fmt.Sprintf("round 2, court %s with %s against", next.Court, s.m.names.Short(other)), "about 19:")

	r := halls(t)
	for _, w := range r.m.hall.Bench {
		says := "plays in"
		if g := r.m.hall.Next[0]; g.A.Has(w.Person) || g.B.Has(w.Person) {
			says = "next free court with"
		}
		r.press("f", strings.ToLower(r.m.names.Full(w.Person))).shows(r.m.names.Full(w.Person), says).press("esc")
	}
}

// TestEscGoesBackExactlyOneStep, to where the page was opened, with the cursor there.
func TestEscGoesBackExactlyOneStep(t *testing.T) {
	for name, c := range map[string]struct {
		open []string // to somewhere that shows a cursor
		page []string // from there to a page
	}{
		"door by arrows":   {[]string{"d", "down", "down", "down"}, []string{"enter"}},
		"door by typing":   {[]string{"d", "cleo", "enter"}, []string{"enter"}},
		"bench":            {[]string{"b", "down"}, []string{"enter"}},
		"standings":        {[]string{"s", "down", "down"}, []string{"enter"}},
		"league":           {[]string{"s", "v", "down"}, []string{"enter"}},
		"ratings":          {[]string{"s", "v", "v", "down"}, []string{"enter"}},
		"court":            {[]string{"c", "end"}, []string{"m", "3"}},
		"finder":           {[]string{"h", "down"}, []string{"f", "dar", "enter"}},
		"another's page":   {[]string{"b", "down", "enter"}, []string{"f", "edda", "enter"}},
		"after the arrows": {[]string{"s", "down"}, []string{"enter", "down", "down", "up"}},
	} {
		t.Run(name, func(t *testing.T) {
			s := called(t, 2, 11).press("117", "enter").press(c.open...)
			if s.m.wrong != nil {
				s.m.wrong = nil // said that somebody is here already
			}
			before := s.m.View()
			s.press(c.page...)
			if s.m.active != ui.PersonScreen || s.m.View() == before {
				t.Fatalf("no page is shown:\n%s", s.m.View())
			}
			if s.press("esc").m.View() != before {
				t.Errorf("esc leads to\n%s\nfrom\n%s", s.m.View(), before)
			}
		})
	}
}

// TestFromThePage: rest, back, leave, times and wishes, and what was done is seen on it.
func TestFromThePage(t *testing.T) {
	s := called(t, 2, 11).press("f", "agn", "enter").shows("Agnes Vale")
	id, _ := s.m.person.Shown()
	s.press(" ").shows("Saved: ", "space back")
	if got := s.night().Attending(id).State; got != session.Resting {
		t.Errorf("after space the person is %s", got)
	}
	s.press(" ").shows("space rest").press("t").shows("Leaves at").press("down", "22:00", "enter").shows("leaves 22:00")
	s.press("w").shows("a partner").press("p", "hug", "enter").shows("every game", "2 games").press("2").shows("partner Hugo in 2 games: 0 done")
	s.press("w", "k", "iri", "enter").shows("never on a court with Iris")
	p, _ := s.desk.Ledger().Club().Person(id)
	if len(p.Together) != 1 || p.Together[0].Times != 2 || len(p.KeepApart) != 1 {
		t.Errorf("the wishes are %+v", p)
	}
	s.press("w").shows("take back: partner Hugo Vale, 2 games").press("1").hides("partner Hugo").press("w", "1").shows("none; w takes one")
	s.press("l").shows("Saved: ", "space check in").press("l").shows("! Agnes Vale is not here").press("esc")
	if s.m.active != ui.Courts {
		t.Errorf("esc leads to screen %d", s.m.active)
	}
}

// TestKeysThatRunAheadDoNothingOnAPage: what was typed in one stroke with the key that opened it is dropped, and
// a name typed at the door after one who is here already is a name.
func TestKeysThatRunAheadDoNothingOnAPage(t *testing.T) {
	s := called(t, 2, 9).press("d", "agnes", "right", "pl")
	if s.m.active != ui.PersonScreen || s.night().Count(session.Here) != 9 {
		t.Errorf("%d are here, on screen %d", s.night().Count(session.Here), s.m.active)
	}
	s = called(t, 2, 9).press("d", "agnes", "enter", "lio", "enter").shows("Saved: lio").hides("! Agnes Vale is here already")
	if s.night().Count(session.Here) != 10 {
		t.Errorf("%d are here", s.night().Count(session.Here))
	}
}

// TestISatOutMoreThanAnybody is answered with how many sat out more often, as often and less.
func TestISatOutMoreThanAnybody(t *testing.T) {
	s := called(t, 1, 7).press("b", "enter")
	who, _ := s.m.person.Shown()
	s.shows("Sat out once (round 1: 7 for 4 places)", "Of the 6 others 0 sat out more often, 2 as often, 4 less; everybody 0 to 1.")
	s.resize(200, 60).shows("Everybody", "sat out", "▸ "+s.m.names.Full(who), "7 people", "for 4 places")
}

// TestWhyNotMe: on the bench of a rolling night the caller's figures say why, and the page says it by itself.
func TestWhyNotMe(t *testing.T) {
	s := halls(t).press("b")
	asked := 0
	for range len(s.m.hall.Bench) {
		id := s.m.hall.Bench[asked].Person
		w, err := s.desk.Ledger().WhyNot(id, s.now)
		if err != nil {
			t.Fatal(err)
		}
		head := map[bool]string{true: s.m.names.Full(id) + " is next", false: "Why not " + s.m.names.Full(id) + "?"}[w.IsNext]
		s.press("y").shows(head)
		for _, text := range w.Words(s.m.names.Short) {
			s.shows(text)
		}
		if s.press("enter"); w.IsNext == strings.Contains(s.m.View(), "Why not") {
			t.Errorf("%s is next: %v, and the page says\n%s", id, w.IsNext, s.m.View())
		}
		if !w.IsNext {
			s.shows("With "+s.m.names.Short(id)+" for", "Place", "Rating", "Wishes", "Met", "Not yet")
		}
		s.press("esc", "down").hides("Why not")
		asked++
	}
	if asked < 8 {
		t.Errorf("only %d wait", asked)
	}
	called(t, 1, 7).press("b", "y").shows("sat out round 1: 7 people for 4 places", "0 sat out more often, 2 as often, 4 less")
}

// TestNoScreenTakesTheLetterOfAnother: d, c, b, r, s and h go to the screens wherever letters are free.
func TestNoScreenTakesTheLetterOfAnother(t *testing.T) {
	for name, open := range moments {
		s := open(t)
		if s.m.dialog() != nil || s.m.typing(s.m.context()) {
			continue
		}
		for _, a := range s.m.screenActions(s.m.context()) {
			for _, k := range a.Key.Keys() {
				for _, tab := range tabs {
					if k == tab.key {
						t.Errorf("%s: %q is %s, and goes to %s elsewhere", name, k, a.Key.Help().Desc, tab.name)
					}
				}
			}
		}
	}
}

// TestAPageIsDrawnFromWhatWasWorkedOut: drawing asks nothing of the ledger.
func TestAPageIsDrawnFromWhatWasWorkedOut(t *testing.T) {
	for _, p := range pages {
		s := p.open(t).resize(200, 60)
		c := s.m.context()
		want := strings.Join(s.m.person.Lines(c), "\n")
		c.Ledger = nil
		if got := strings.Join(s.m.person.Lines(c), "\n"); got != want {
			t.Errorf("%s is drawn otherwise without the ledger:\n%s", p.name, got)
		}
	}
}

// TestNamesOfAnyScriptAlign: the figures beside them stand in one column.
func TestNamesOfAnyScriptAlign(t *testing.T) {
	s := named(t, session.Rounds).press("f", "bo", "enter").resize(200, 60)
	rows, ends := 0, map[int]bool{}
	for _, l := range s.lines() {
		for _, name := range longNames {
			if at := strings.Index(l, name); at > 0 && strings.HasSuffix(strings.TrimRight(l, " ▇"), "′") {
				rows++
				ends[line.Width(strings.TrimRight(l, " ▇"))] = true
			}
		}
	}
	if rows < 6 || len(ends) != 1 {
		t.Errorf("%d rows end in columns %v:\n%s", rows, ends, s.m.View())
	}
}
