package attention

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/session/hall"
	"club/quadrille/session/roster"
	"club/quadrille/session/sessiontest"
)

// stand is a night under way, whose steps can be told one behind the other.
type stand struct{ *sessiontest.Desk }

func newStand(t testing.TB, courts, people int, change func(*session.Settings)) stand {
	t.Helper()
	settings := session.DefaultSettings(7)
	if change != nil {
		change(&settings)
	}
	return stand{sessiontest.Open(t, settings, courts, people)}
}

func (s stand) do(c session.Command) stand {
	s.T.Helper()
	s.Must(c)
	return s
}

func (s stand) pass(minutes int) stand {
	s.Pass(minutes)
	return s
}

func (s stand) finish(court session.CourtID) stand {
	s.T.Helper()
	n := s.Night()
	final, err := n.Settings.Scoring.Final(11, 7, scoring.Played)
	if err != nil {
		s.T.Fatal(err)
	}
	return s.do(session.FinishGame{Game: n.Court(court).Game, Final: final})
}

func (s stand) matters(f FileState) []Matter {
	l := s.Ledger()
	h, _ := hall.Of(l, nil, s.Clock)
	return Of(l, h, f, nil, s.Clock)
}

// says demands matters with these words, in this order, and no others.
func (s stand) says(moment string, want ...string) {
	s.T.Helper()
	got := s.matters(FileState{})
	ok := len(got) == len(want)
	for i := range min(len(got), len(want)) {
		ok = ok && strings.Contains(got[i].Text, want[i])
	}
	if !ok {
		s.T.Errorf("%s: %+v, want %q", moment, got, want)
	}
}

func TestRounds(t *testing.T) {
	s := newStand(t, 2, 9, nil)
	s.says("before the first round")
	s.do(session.CallRound{})
	s.says("just called")
	s.pass(10).says("a usual game")
	s.pass(15).says("a long game", "court 1 has played for 25 min", "court 2 has played for 25 min", "round 1 should have been over", "has waited for 25 min")
	s.finish("1")
	s.says("one is over", "court 2 has played")
	s.finish("2")
	s.says("all are over", "round 1 is complete: round 2 can be called")
	s.do(session.HoldPlay{Why: "heat"}).pass(3)
	s.says("held", "play is held: heat, for 3 min")
}

func TestTimeUp(t *testing.T) {
	s := newStand(t, 1, 4, func(set *session.Settings) { set.Scoring.Minutes = 12 })
	s.do(session.CallRound{}).pass(11).says("before the limit")
	s.pass(1).says("at the limit", "time is up on court 1")
}

func TestClosing(t *testing.T) {
	s := newStand(t, 1, 4, func(set *session.Settings) {
		set.Rounds, set.Closing = 6, time.Date(2026, 11, 20, 20, 0, 0, 0, time.UTC)
	})
	s.do(session.CallRound{}).says("five more rounds in an hour", "5 more rounds are planned and")
	s.pass(61).finish("1")
	s.says("after closing time", "closing time 20:00 has passed")
	s = newStand(t, 1, 6, func(set *session.Settings) {
		set.Flow, set.Closing = session.Rolling, time.Date(2026, 11, 20, 20, 0, 0, 0, time.UTC)
	})
	s.do(session.BeginPlay{}).pass(8).says("time enough")
	s.pass(46).finish("1")
	if got := s.matters(FileState{}); len(got) == 0 || got[0].Kind != Closing || !strings.Contains(got[0].Text, "hardly be over by 20:00") {
		t.Errorf("six minutes before the end: %+v", got)
	}
}

func TestWhoWaitsLongAndWhoIsMissing(t *testing.T) {
	s := newStand(t, 1, 6, nil)
	s.do(session.ImportRoster{Entries: []roster.Entry{{Name: "Late Comer"}}})
	p, _ := s.Ledger().Club().Named("Late Comer")
	s.do(session.Expect{Person: p.ID, Due: s.Clock.Add(10 * time.Minute)}).do(session.CallRound{})
	s.says("before the time")
	s.pass(11).says("after the time", "expected and not here: Late Comer")
	s.do(session.CheckIn{Person: p.ID}).says("when there")
	s.pass(30)
	var waits []Matter
	for _, m := range s.matters(FileState{}) {
		if m.Kind == Waiting {
			waits = append(waits, m)
		}
	}
	// all three wait for much the same time: nobody waits long against the others
	if len(waits) != 0 {
		t.Errorf("with equal waits: %+v", waits)
	}
}

func TestTheFileComesFirst(t *testing.T) {
	s := newStand(t, 1, 4, nil).do(session.HoldPlay{Why: "heat"})
	got := s.matters(FileState{Unsaved: "court 1: 11-7"})
	if len(got) != 2 || got[0].Kind != File || got[1].Kind != Hold {
		t.Errorf("got %+v", got)
	}
	if got := s.matters(FileState{Displaced: true}); got[0].Text != "the club file is not in its place" {
		t.Errorf("got %+v", got)
	}
}

// TestMinutesAloneChangeNoMatter: as long as nobody does anything, a matter keeps its ID, so that putting it
// aside holds; and the list is in the order of its kinds, without twins.
func TestMinutesAloneChangeNoMatter(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		courts := rapid.IntRange(1, 2).Draw(r, "courts")
		s := newStand(t, courts, rapid.IntRange(4, 9).Draw(r, "people"), func(set *session.Settings) {
			if rapid.Bool().Draw(r, "rolling") {
				set.Flow = session.Rolling
			}
			set.Scoring.Minutes = rapid.SampledFrom([]int{0, 12}).Draw(r, "limit")
		})
		var start session.Command = session.CallRound{}
		if s.Night().Settings.Flow == session.Rolling {
			start = session.BeginPlay{}
		}
		s.do(start).pass(rapid.IntRange(0, 60).Draw(r, "minutes"))
		before := s.matters(FileState{})
		after := s.pass(rapid.IntRange(0, 10).Draw(r, "more")).matters(FileState{})
		for _, m := range before {
			if m.Kind != Waiting && !slices.ContainsFunc(after, func(x Matter) bool { return x.ID == m.ID }) {
				r.Fatalf("%+v is gone: %+v", m, after)
			}
		}
		seen := map[string]bool{}
		for i, m := range after {
			if seen[m.ID] || i > 0 && after[i-1].Kind > m.Kind || m.Text == "" {
				r.Fatalf("out of order, twice, or without words: %+v", after)
			}
			seen[m.ID] = true
		}
	})
}

// TestARoundThatShouldBeOver is told once, with the courts that play on.
func TestARoundThatShouldBeOver(t *testing.T) {
	late := func(s stand) (out []Matter) {
		for _, m := range s.matters(FileState{}) {
			if m.Kind == RoundLate {
				out = append(out, m)
			}
		}
		return out
	}
	s := newStand(t, 2, 8, nil).do(session.CallRound{}).pass(10)
	if got := late(s); len(got) != 0 {
		t.Errorf("a usual round is told as late: %+v", got)
	}
	s.pass(20)
	got := late(s)
	if len(got) != 1 || !strings.Contains(got[0].Text, "round 1 should have been over by 19:") || !strings.Contains(got[0].Text, "courts 1, 2 still play") {
		t.Fatalf("after 30 minutes: %+v", got)
	}
	if again := late(s.pass(5)); len(again) != 1 || again[0].ID != got[0].ID {
		t.Errorf("five minutes later: %+v", again)
	}
	if again := late(s.finish("1")); len(again) != 0 {
		t.Errorf("with one court left, which is told by itself: %+v", again)
	}
	s.do(session.HoldPlay{Why: "heat"})
	if got := late(s); len(got) != 0 {
		t.Errorf("on hold: %+v", got)
	}
}

// However short the games of a night are, nobody minds a wait of some minutes; from five on it is told.
func TestShortWaitsAreNoMatter(t *testing.T) {
	s := newStand(t, 1, 5, nil)
	for range 40 { // short games teach the clock that a wait of four minutes is long
		s.do(session.CallRound{})
		s.Clock = s.Clock.Add(80 * time.Second)
		s.finish("1")
	}
	s.do(session.CallRound{})
	waits := func() (texts []string) {
		for _, m := range s.matters(FileState{}) {
			if m.Kind == Waiting {
				texts = append(texts, m.Text)
			}
		}
		return texts
	}
	if s.pass(4); len(waits()) != 0 {
		t.Errorf("after four minutes: %q", waits())
	}
	if s.pass(2); len(waits()) != 1 {
		t.Errorf("after six minutes: %q", waits())
	}
}

// A game in which somebody is hurt wants a decision, more urgently than anything but the file and a hold.
func TestSomebodyIsHurt(t *testing.T) {
	s := newStand(t, 2, 9, nil).do(session.CallRound{}).pass(5)
	g := s.Night().Running()[0]
	s.do(session.ReportInjury{Person: g.A[0]}).pass(4)
	name := s.Ledger().Club().Name(g.A[0])
	s.says("a stop", "court 1: "+name+" is hurt, 4 min ago: substitute, retire, void or play on")
	if m := s.matters(FileState{})[0]; m.Kind != Hurt || m.Court != "1" || !m.Rings() || m.People[0] != g.A[0] {
		t.Errorf("%+v", m)
	}
	s.do(session.SettleInjury{Person: g.A[0], How: session.PlaysOn})
	s.says("play goes on")
	s.do(session.ReportInjury{Person: g.A[0], Head: true})
	s.says("a head injury", "court 1: "+name+" is out for tonight: substitute, retire or void")
	s.do(session.SettleInjury{Person: g.A[0], How: session.VoidForHurt})
	s.says("void")
}

// The heat wants attention from the first band on, until it is milder; it comes back whenever it should be measured again.
func TestHeat(t *testing.T) {
	measure := func(f float64) session.Command {
		return session.MeasureHeat{Air: care.Air{Fahrenheit: f, Humidity: 50}}
	}
	s := newStand(t, 1, 4, nil).do(measure(75))
	s.says("a mild night")
	s.do(measure(85)).says("a warm one", "heat: caution at 19:00; rest, shade and water")
	first := s.matters(FileState{})[0]
	if s.pass(29); s.matters(FileState{})[0].ID != first.ID {
		t.Error("a matter of its own before the time is over")
	}
	s.pass(1).says("half an hour later", "heat: caution at 19:00; rest, shade and water; measure again (our rule: every 30 min)")
	again := s.matters(FileState{})[0]
	if again.ID == first.ID || s.pass(30).matters(FileState{})[0].ID == again.ID {
		t.Error("nobody is reminded again")
	}
	s.do(measure(100)).says("danger", "heat: danger at 20:00; stop, unless a qualified person decides otherwise")
	s.do(measure(70)).says("milder")
}

// TestTheMedianOfTheOthers is that of a list without the one that is asked about.
func TestTheMedianOfTheOthers(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		waits := rapid.SliceOfN(rapid.Map(rapid.IntRange(0, 9), func(k int) time.Duration { return time.Duration(k) * time.Minute }), 1, 9).Draw(r, "waits")
		slices.Sort(waits)
		at := rapid.IntRange(0, len(waits)-1).Draw(r, "one")
		want := time.Duration(0)
		if others := slices.Delete(slices.Clone(waits), at, at+1); len(others) > 0 {
			want = others[len(others)/2]
		}
		if got := medianWithout(waits, waits[at]); got != want {
			r.Fatalf("of %v without %v the median is %v, want %v", waits, waits[at], got, want)
		}
	})
}
