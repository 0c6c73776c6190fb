package public

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/session/sessiontest"
)

// stand is a night under way.
type stand struct{ *sessiontest.Desk }

func newStand(t testing.TB, flow session.Flow, courts int, people ...string) stand {
	t.Helper()
	s := stand{sessiontest.New(t)}
	settings := session.DefaultSettings(7)
	settings.Flow, settings.Closing, settings.Rounds = flow, s.Clock.Add(2*time.Hour), 2
	s.Must(session.OpenNight{Name: "test night", Settings: settings, Courts: courts})
	for _, name := range people {
		s.Must(session.AddGuest{Name: name, Sure: true})
	}
	return s
}

// change replaces what the club knows of somebody.
func (s stand) change(name string, change func(*session.Person)) {
	s.T.Helper()
	p, ok := s.Ledger().Club().Named(name)
	if !ok {
		s.T.Fatalf("nobody is called %s", name)
	}
	change(&p)
	s.Must(session.ChangePerson{Person: p})
}

func (s stand) view() View {
	s.T.Helper()
	h, _ := hall.Of(s.Ledger(), s.Ahead(), s.Clock)
	return Of(s.Ledger(), h, s.Clock)
}

func (s stand) finish(court session.CourtID, a, b int) {
	s.T.Helper()
	s.Finish(s.On(court), a, b, scoring.Played)
}

func text(t interface {
	Fatal(...any)
	Helper()
}, v View,
) string {
	t.Helper()
	out, err := json.MarshalIndent(v, "", "\t")
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// people are invented.
var people = []string{"Agnes Vale", "Bram Okoro", "Cleo Hart", "Dario Finch", "Edda Noll", "Finn Noll", "Greta Umber", "Hugo Pask", "Iris Lund"}

// TestGoldenView is the whole form, with something in every field: a change of it changes what boards and
// pages of other versions read.
func TestGoldenView(t *testing.T) {
	s := newStand(t, session.Rounds, 3, people...)
	s.Must(session.CallRound{}, session.CloseCourt{Court: "2"}, session.PostMessage{Text: "pizza at 20:30", Until: s.Clock.Add(90 * time.Minute)})
	s.Clock = s.Clock.Add(11 * time.Minute)
	s.finish("1", 11, 7)
	s.Must(session.Rest{Person: "identity-002"}, session.HoldPlay{Why: "wet court"})
	s.Clock = s.Clock.Add(3 * time.Minute)
	golden.RequireEqual(t, text(t, s.view()))
}

// TestNoNight: without a night the view says so, and has empty lists and no missing ones.
func TestNoNight(t *testing.T) {
	s := newStand(t, session.Rounds, 2, people...)
	s.Must(session.EndNight{})
	v := s.view()
	if v.Open || v.Clock != "19:00" || len(v.Courts)+len(v.People) > 0 || strings.Contains(text(t, v), "null") {
		t.Errorf("without a night the hall sees %s", text(t, v))
	}
}

// TestNothingPrivateIsShown: what the club notes about people, and the name of who is hidden, is in no part
// of the view, whatever happens in the night.
func TestNothingPrivateIsShown(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		flow := rapid.SampledFrom([]session.Flow{session.Rounds, session.Rolling}).Draw(rt, "flow")
		s := newStand(t, flow, 2, people...)
		club := s.Ledger().Club()
		agnes, _ := club.Named("Agnes Vale")
		s.change("Bram Okoro", func(p *session.Person) {
			p.Group, p.Level, p.KeepApart = "secretgroup", 4.625, []session.PersonID{agnes.ID}
		})
		hidden := rapid.SampledFrom(people).Draw(rt, "hidden")
		s.change(hidden, func(p *session.Person) { p.Hidden, p.Shown = true, "Masked Player" })
		s.Must(session.ChooseNaming{Naming: session.AsChosen})
		s.Must(session.WriteCard{Card: session.EmergencyCard{Contacts: "secretcontact"}})
		if flow == session.Rolling {
			s.Must(session.BeginPlay{})
		}
		for range rapid.IntRange(0, 4).Draw(rt, "steps") {
			s.Clock = s.Clock.Add(4 * time.Minute)
			n := s.Night()
			if on := n.Running(); len(on) > 0 && rapid.Bool().Draw(rt, "score") {
				g := rapid.SampledFrom(on).Draw(rt, "game")
				_, _ = s.Do(session.NoteGame{Game: g.ID, Entry: scoring.Entry{Kind: scoring.Remark, Note: "secretnote"}})
				s.finish(g.Court, 11, 5)
				continue
			}
			_, _ = s.Do(session.CallRound{})
			_, _ = s.Do(session.Rest{Person: rapid.SampledFrom(n.Roll).Draw(rt, "rests").Person})
			hurt := rapid.SampledFrom(n.Roll).Draw(rt, "hurt").Person
			_, _ = s.Do(session.ReportInjury{Person: hurt, Head: rapid.Bool().Draw(rt, "head"), Note: "secretinjury"})
			if rapid.Bool().Draw(rt, "cleared") {
				_, _ = s.Do(session.ClearToPlay{Person: hurt, By: "secretdoctor"})
			}
		}
		v := s.view()
		all := text(rt, v)
		first, last, _ := strings.Cut(hidden, " ")
		for _, secret := range []string{"secretgroup", "secretnote", "secretcontact", "secretinjury", "secretdoctor", "injur", "hurt", "head", "4.625", "identity-", "Masked", first} {
			if strings.Contains(all, secret) {
				rt.Fatalf("the hall sees %q:\n%s", secret, all)
			}
		}
		if last != "Noll" && strings.Contains(all, last) {
			rt.Fatalf("the hall sees %q:\n%s", last, all)
		}
		checkNames(rt, v)
	})
}

// checkNames: every name in a view is that of one person in the list of people, or of somebody who is in
// the hall no more and has a place in the standings.
func checkNames(t *rapid.T, v View) {
	seen := map[string]bool{}
	for _, p := range v.People {
		if r := reading(p.Name); seen[r] {
			t.Fatalf("two people read %q", r)
		}
		seen[reading(p.Name)] = true
	}
	for _, c := range v.Courts {
		for _, name := range slices.Concat(c.A, c.B) {
			if on := c.State == Playing || c.State == Called; on && name != Somebody && !seen[reading(name)] {
				t.Fatalf("%q is on court %s and not in the hall", name, c.Name)
			}
		}
	}
	for _, w := range v.Bench {
		if !seen[reading(w.Name)] {
			t.Fatalf("%q is on the bench and not in the hall", w.Name)
		}
	}
}

// TestNames: people are called as the club wants it, and no two read alike.
func TestNames(t *testing.T) {
	for _, c := range []struct {
		naming       session.Naming
		people, want []string // in the order of their check-in; chosen names stand behind a slash, who is hidden begins with -
	}{
		{session.ByInitial, []string{"Agnes Vale", "Bram Okoro"}, []string{"Agnes V.", "Bram O."}},
		{session.ByInitial, []string{"Ann Smith", "Ann Snow", "Ann Berg"}, []string{"Ann Sm.", "Ann Sn.", "Ann B."}},
		{session.ByInitial, []string{"Ann S", "Ann Snow"}, []string{"Ann S", "Ann Sn."}},
		{session.ByInitial, []string{"Ann B Smith", "Ann C Smith"}, []string{"Ann B Smith", "Ann C Smith"}},
		{session.ByInitial, []string{"Zoë Ek", "Zoe Ek"}, []string{"Zoë Ek", "Zoe Ek (2)"}},
		{session.ByInitial, []string{"Jan St.", "Jan Stone"}, []string{"Jan St.", "Jan Sto."}},
		{session.ByInitial, []string{"Somebody"}, []string{"Somebody (2)"}},
		{session.ByInitial, []string{"-Ann Smith", "Ann Snow"}, []string{"Ann S."}},
		{session.InFull, []string{"Agnes Vale", "Bram Okoro"}, []string{"Agnes Vale", "Bram Okoro"}},
		{session.AsChosen, []string{"Agnes Vale/Ace", "Bram Okoro", "Cleo Hart/ace"}, []string{"Ace", "Bram O.", "ace (2)"}},
		{session.AsChosen, []string{"Agnes Vale/Bram O", "Bram Okoro"}, []string{"Bram O", "Bram Ok."}},
		{session.ByInitial, []string{"Agnes Vale/Ace"}, []string{"Agnes V."}},
	} {
		s := newStand(t, session.Rounds, 1)
		var got []string
		for _, person := range c.people {
			full, chosen, _ := strings.Cut(strings.TrimPrefix(person, "-"), "/")
			s.Must(session.AddGuest{Name: full, Sure: true})
			if full != person {
				s.change(full, func(p *session.Person) { p.Shown, p.Hidden = chosen, person[0] == '-' })
			}
		}
		if c.naming != session.ByInitial {
			s.Must(session.ChooseNaming{Naming: c.naming})
		}
		l := s.Ledger()
		shown := namesOf(l.Club(), l.Night())
		for _, a := range l.Night().Roll {
			if name, ok := shown[a.Person]; ok {
				got = append(got, name)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: %q are called %q, want %q", c.naming, c.people, got, c.want)
		}
	}
}

// TestTheSameKeyAllNight: a phone finds its person again after the name was lengthened, and not on another night.
func TestTheSameKeyAllNight(t *testing.T) {
	s := newStand(t, session.Rounds, 1, "Ann Smith")
	before := s.view().People[0]
	s.Must(session.AddGuest{Name: "Ann Snow", Sure: true})
	after := s.view().People[0]
	if before.Name != "Ann S." || after.Name != "Ann Sm." || before.Key != after.Key {
		t.Errorf("%+v became %+v", before, after)
	}
	s.Must(session.EndNight{}, session.OpenNight{Name: "another", Settings: session.DefaultSettings(1), Courts: 1}, session.CheckIn{Person: "identity-002"})
	if next := s.view().People[0]; next.Key == after.Key {
		t.Errorf("the key of %s is the same on the next night", next.Name)
	}
}

// TestMessagesInTheHall: a message stands until its time or its end, and an undo brings it back.
func TestMessagesInTheHall(t *testing.T) {
	s := newStand(t, session.Rounds, 1, people...)
	s.Must(session.PostMessage{Text: "pizza at 20:30", Until: s.Clock.Add(90 * time.Minute)}, session.PostMessage{Text: "court 3 is wet"})
	shows := func(moment string, want ...Message) {
		t.Helper()
		if got := s.view().Messages; !slices.Equal(got, want) {
			t.Errorf("%s the hall reads %v, want %v", moment, got, want)
		}
	}
	pizza, wet := Message{"pizza at 20:30", "20:30"}, Message{Text: "court 3 is wet"}
	shows("at first", pizza, wet)
	s.Must(session.EndMessage{ID: s.Night().Messages[1].ID})
	shows("after an end", pizza)
	s.Must(session.Undo{})
	shows("after the undo", pizza, wet)
	s.Clock = s.Clock.Add(-3 * time.Hour)
	s.Must(session.NoteClock{})
	shows("after the clock was put back", Message{"pizza at 20:30", "17:30"}, wet)
	s.Clock = s.Clock.Add(90 * time.Minute)
	shows("when its time is over", wet)
}

// TestOnTheWay: people are called for two minutes, whatever else is done, until something is scored.
func TestOnTheWay(t *testing.T) {
	s := newStand(t, session.Rounds, 2, people...)
	s.Must(session.CallRound{}, session.PostMessage{Text: "hello"})
	is := func(moment string, want ...string) {
		t.Helper()
		var got []string
		for _, c := range s.view().Courts {
			got = append(got, c.State)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s the courts are %v, want %v", moment, got, want)
		}
	}
	is("after a message", Called, Called)
	s.Must(session.ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
	is("after a rally", Playing, Called)
	s.Clock = s.Clock.Add(onTheWay)
	is("after two minutes", Playing, Playing)
}

// TestNextOfTheRollingFlow is the four who go on, to whichever court is free first.
func TestNextOfTheRollingFlow(t *testing.T) {
	s := newStand(t, session.Rolling, 1, people...)
	s.Must(session.BeginPlay{})
	v := s.view()
	if len(v.Next.Games) != 1 || v.Next.Games[0].Court != "" || v.Round != 0 || v.Rounds != 0 || len(v.Bench) != 5 {
		t.Errorf("next in the rolling flow is %+v, on the bench are %+v", v.Next, v.Bench)
	}
}
