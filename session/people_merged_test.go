package session

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring/rating"
)

// named is the identity of somebody of the club.
func named(t testing.TB, d *Desk, name string) PersonID {
	t.Helper()
	p, ok := d.Ledger().Club().Named(name)
	if !ok {
		t.Fatalf("the club knows no %s", name)
	}
	return p.ID
}

// twice plays two nights at which one person was there under two names: Anna Berg on the first, and Anna Bergh on the
// second, who arrived as Anna Berg too and was never called so.
func twice(t testing.TB) (*Desk, *MemoryLog, *testClock) {
	t.Helper()
	d, log, clock := newTestDesk(t)
	night := func(names ...string) {
		t.Helper()
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
		for _, name := range names {
			if p, known := d.Ledger().Club().Named(name); known {
				must(t, d, CheckIn{p.ID})
				continue
			}
			must(t, d, AddGuest{Name: name, Sure: true})
		}
		playRound(t, d, clock)
	}
	night("Anna Berg", "Ben", "Cy", "Di")
	must(t, d, EndNight{})
	clock.now = clock.now.Add(7 * 24 * time.Hour)
	night("Anna Bergh", "Ben", "Cy", "Di")
	ben, _ := d.Ledger().Club().Named("Ben")
	ben.Together = []Together{{With: named(t, d, "Anna Bergh"), Times: 2}}
	ben.KeepApart = nil
	cy, _ := d.Ledger().Club().Named("Cy")
	cy.KeepApart = []PersonID{named(t, d, "Anna Bergh"), named(t, d, "Anna Berg")}
	di, _ := d.Ledger().Club().Named("Di")
	annah, _ := d.Ledger().Club().Named("Anna Bergh")
	annah.Courts = []CourtID{"1"}
	must(t, d, ChangePerson{annah})
	di.NotPartner = []PersonID{named(t, d, "Anna Berg"), named(t, d, "Anna Bergh")}
	must(t, d, ChangePerson{ben}, ChangePerson{cy}, ChangePerson{di}, CheckIn{named(t, d, "Anna Berg")})
	return d, log, clock
}

// Two people who are one count as one: in the nights, the tables, the league, the ratings, the export and the wishes of
// others; and an undo parts them again.
func TestTwoPeopleWhoAreOne(t *testing.T) {
	d, log, _ := twice(t)
	clubText := func() string {
		t.Helper()
		text, err := json.Marshal(d.Ledger().Club())
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	before := clubText()
	anna, annah := named(t, d, "Anna Berg"), named(t, d, "Anna Bergh")
	must(t, d, MergePeople{annah, anna})
	l := d.Ledger()
	club := l.Club()
	state, err := json.Marshal(struct {
		People []Person
		Nights []*Night
	}{club.People, club.Nights})
	if err != nil || strings.Contains(string(state), `"`+string(annah)+`"`) {
		t.Errorf("the state still names %s: %s, %v", annah, state, err)
	}
	if p, ok := club.Named("Anna Bergh"); !ok || p.ID != anna || len(club.People) != 4 {
		t.Errorf("%d people, and Anna Bergh is %+v", len(club.People), p)
	}
	for _, row := range League(club, 0, Span{}) {
		if strings.HasPrefix(row.Name, "Anna") && (row.Name != "Anna Berg" || row.Nights != 2 || row.Games != 2) {
			t.Errorf("the league has %+v", row)
		}
	}
	ratings, err := Ratings(club, rating.Default())
	if err != nil || len(ratings) != 4 {
		t.Fatalf("%d people are rated, %v", len(ratings), err)
	}
	if p, _ := ratings.Of(anna); p.Games != 2 {
		t.Errorf("Anna is rated by %d games", p.Games)
	}
	n := l.Night()
	if n.GamesOf(anna) != 1 || n.Count(Here) != 4 || n.Attending(annah) != nil {
		t.Errorf("%d games tonight, %d here, %+v", n.GamesOf(anna), n.Count(Here), n.Attending(annah))
	}
	ben, _ := club.Named("Ben")
	cy, _ := club.Named("Cy")
	if len(ben.Together) != 1 || ben.Together[0] != (Together{anna, 2}) || len(cy.KeepApart) != 1 || cy.KeepApart[0] != anna {
		t.Errorf("wishes became %+v and %+v", ben, cy)
	}
	if who, _ := club.Person(anna); len(who.Courts) != 1 || who.Courts[0] != "1" {
		t.Errorf("plays only on %q", who.Courts)
	}
	if di, _ := club.Named("Di"); len(di.NotPartner) != 1 || di.NotPartner[0] != anna {
		t.Errorf("who is no partner became %+v", di.NotPartner)
	}
	if text := l.Describe(l.Actions()[len(l.Actions())-1]); text != "Anna Bergh and Anna Berg are one person" {
		t.Errorf("told as %q", text)
	}
	checkReplay(t, d, log)
	refused(t, d, AddGuest{Name: "Anna Bergh", Sure: true}, "the club already has a Anna Berg")
	must(t, d, Undo{})
	if after := clubText(); after != before {
		t.Errorf("after the undo the state is\n%s\nand was\n%s", after, before)
	}
	must(t, d, Redo{})
	checkReplay(t, d, log)
}

// Who was in one game, in one round or is on two courts is two people, and the refusal says why.
func TestPeopleWhoCannotBeOne(t *testing.T) {
	d, _, clock := twice(t)
	ben, cy := named(t, d, "Ben"), named(t, d, "Cy")
	refused(t, d, MergePeople{ben, cy}, "Ben and Cy are two people: both were in one game on court 1 of night 1")
	refused(t, d, MergePeople{ben, ben}, "that is Ben already")
	refused(t, d, MergePeople{ben, "nobody"}, "does not know both")
	must(t, d, EndNight{})
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 2})
	for _, name := range []string{"Ed", "Flo", "Gus", "Hal", "Ida", "Jo", "Kim", "Lou"} {
		must(t, d, AddGuest{Name: name})
	}
	must(t, d, CallRound{})
	n := d.Ledger().Night()
	a, b := n.Games[0].A[0], n.Games[1].A[0]
	refused(t, d, MergePeople{a, b}, "both played in round 1 of night 3")
	for _, g := range n.Running() {
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3)})
	}
	refused(t, d, MergePeople{a, b}, "both played in round 1")
	must(t, d, EndNight{})
	clock.now = clock.now.Add(time.Hour)
	s := DefaultSettings(1)
	s.Flow = Rolling
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for _, name := range []string{"Max", "Ned", "Olli", "Pia", "Quin", "Rob", "Sam", "Tom"} {
		must(t, d, AddGuest{Name: name})
	}
	must(t, d, BeginPlay{})
	n = d.Ledger().Night()
	refused(t, d, MergePeople{n.Games[0].A[0], n.Games[1].B[1]}, "both are on a court now")
}

// Who was checked in under two names waits since the last game, and sat out no round in which the other name played.
func TestWhoWasThereTwiceWaitsOnce(t *testing.T) {
	d, log, clock := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	for _, name := range []string{"Anna Berg", "Ben", "Cy", "Di"} {
		must(t, d, AddGuest{Name: name})
	}
	must(t, d, CallRound{})
	must(t, d, AddGuest{Name: "Anna Bergh", Sure: true})
	clock.now = clock.now.Add(20 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 5)})
	n := d.Ledger().Night()
	anna, annah := named(t, d, "Anna Berg"), named(t, d, "Anna Bergh")
	played, arrived := *n.Attending(anna), *n.Attending(annah)
	must(t, d, MergePeople{anna, annah})
	n = d.Ledger().Night()
	got := n.Attending(annah)
	if got.Turn != played.Turn || got.Turn == arrived.Turn || !got.Arrived.Equal(played.Arrived) || len(n.Roll) != 4 || n.SatOut(annah) != 0 {
		t.Errorf("%+v of %+v and %+v; sat out %d", got, played, arrived, n.SatOut(annah))
	}
	must(t, d, Undo{})
	must(t, d, CallRound{}) // four of five: one of the two sits out, or both play
	if _, err := d.Do(MergePeople{annah, anna}); err == nil {
		n = d.Ledger().Night()
		if out := n.Rounds[1].Out; len(out) > 0 {
			t.Errorf("round 2 is sat out by %v", out)
		}
		if a := n.Attending(anna); a.Turn != 0 || n.Playing(anna) == nil {
			t.Errorf("on a court and waiting: %+v", a)
		}
	}
	checkReplay(t, d, log)
}

// A file of another laptop that still has two people joins as one, and one that has them as one tells ours.
func TestMergedPeopleInTwoFiles(t *testing.T) {
	a, logA, clockA := twice(t)
	cy, _ := a.Ledger().Club().Named("Cy")
	cy.KeepApart = nil
	must(t, a, ChangePerson{cy}, EndNight{})
	b, logB, clockB := laptop(t, "b")
	if _, _, err := b.Join(logA.records, AskSame); err != nil {
		t.Fatal(err)
	}
	clockB.now = clockA.now.Add(time.Hour)
	anna, annah := named(t, a, "Anna Berg"), named(t, a, "Anna Bergh")
	must(t, a, MergePeople{annah, anna}) // of the last night, which b has already
	fullNight(t, b, clockB, "Anna Bergh", "Ben", "Cy", "Di")

	theirs := append([]Record(nil), logB.records...)
	if _, got, err := a.Join(theirs, AskSame); err != nil || got.Nights != 1 || got.People != 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	if n := a.Ledger().Club().Night(); n.GamesOf(anna) == 0 || len(a.Ledger().Club().People) != 4 {
		t.Errorf("%d games, %d people", n.GamesOf(anna), len(a.Ledger().Club().People))
	}
	checkReplay(t, a, logA)
	if _, _, err := b.Join(logA.records, AskSame); err != nil {
		t.Fatal(err)
	}
	if club := b.Ledger().Club(); len(club.People) != 4 || club.Night().GamesOf(anna) == 0 {
		t.Errorf("there are %d people there", len(club.People))
	}
	checkReplay(t, b, logB)
	if _, again, err := b.Join(logA.records, AskSame); err != nil || again.Records != 0 {
		t.Errorf("joining again: %+v, %v", again, err)
	}
}

// Whoever is forgotten is forgotten under every name that turned out to be the same person's.
func TestAMergedPersonIsForgottenUnderBothNames(t *testing.T) {
	for _, name := range []string{"Anna Berg", "anna bergh"} {
		d, log, _ := twice(t)
		must(t, d, MergePeople{named(t, d, "Anna Bergh"), named(t, d, "Anna Berg")}, HoldPlay{"Anna Bergh fell"})
		f := NewForgotten(name)
		if err := f.Learn(log); err != nil {
			t.Fatal(err)
		}
		change, label, err := f.In(log, d.Ledger().Club())
		if err != nil || change == nil {
			t.Fatal(label, err)
		}
		var records []Record
		for _, r := range log.records {
			r = change(r)
			if strings.Contains(string(r.Payload), "Anna") {
				t.Errorf("%s is still in %s", name, r.Payload)
			}
			records = append(records, r)
		}
		l, err := Load(inOrder(records))
		if err != nil || len(l.Club().People) != 4 {
			t.Errorf("without the name: %v", err)
		}
	}
	d, log, _ := twice(t)
	must(t, d, MergePeople{named(t, d, "Anna Bergh"), named(t, d, "Anna Berg")}, Undo{})
	f := NewForgotten("Anna Bergh")
	if err := f.Learn(log); err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(f.Names(), ", "); got != "Anna Bergh" {
		t.Errorf("after the undo they are two, and %s would be forgotten", got)
	}
}
