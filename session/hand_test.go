package session

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
)

// rotationOf is the rotation of a desk's night.
func rotationOf(t testing.TB, d *Desk, now time.Time) Rotation {
	t.Helper()
	r, err := PlanRotation(context.Background(), d.Ledger(), now)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// partnersIn tells whether two people are partners in a planned round.
func partnersIn(r PlannedRound, a, b PersonID) bool {
	return slices.ContainsFunc(r.Games, Pin{A: Team{a, b}}.kept)
}

func playsIn(r PlannedRound, id PersonID) bool {
	return slices.ContainsFunc(r.Games, Pin{A: Team{id}}.kept)
}

// TestPartnersPinnedForTheNextRound are kept when people come and go, are partners in the round that is called, and
// are free after it.
func TestPartnersPinnedForTheNextRound(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 11, Rounds)
	playRound(t, d, clock)
	out := d.Ledger().Night().Rounds[0].Out
	a, b := out[0], d.Ledger().Night().Games[0].A[0]
	before := rotationOf(t, d, clock.now)
	cost, err := Weigh(context.Background(), d.Ledger(), PinPartners{A: a, B: b}, clock.now, Shown{})
	if err != nil || !partnersIn(cost.Plan[0], a, b) || len(cost.Words) == 0 {
		t.Fatalf("%+v, %v", cost, err)
	}
	must(t, d, PinPartners{A: a, B: b, Plan: cost.Plan})
	if r := rotationOf(t, d, clock.now); !partnersIn(r.Rounds[0], a, b) || r.Certificate != cost.After || len(r.Rounds) != len(before.Rounds) {
		t.Fatal("what was shown is not what is planned")
	}
	refused(t, d, PinPartners{A: a, B: out[1]}, "is pinned already")
	must(t, d, AddGuest{Name: "Late"}, Rest{d.Ledger().Night().Games[1].A[0]}, CloseCourt{"2"}, OpenCourt{"2"})
	if r := rotationOf(t, d, clock.now); !partnersIn(r.Rounds[0], a, b) {
		t.Fatal("a later plan lost the pin")
	}
	if _, ok := d.Ledger().Night().PinOf(a); !ok {
		t.Fatal("the pin is not told")
	}
	must(t, d, CallRound{Plan: before.Rounds}) // of before the pin: it must not be taken
	n := d.Ledger().Night()
	if g := n.Playing(a); g == nil || g.A.Has(a) != g.A.Has(b) || !g.Has(b) || len(n.Pins) != 0 {
		t.Fatalf("called %+v, pins %v", g, n.Pins)
	}
	checkReplay(t, d, log)
}

// TestAPinIsUndoneLikeAnyAction, and told in the history.
func TestAPinIsUndoneLikeAnyAction(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 10, Rounds)
	before := rotationOf(t, d, clock.now)
	id := before.Rounds[0].Out[0]
	must(t, d, PutFirst{Person: id})
	if text := d.Ledger().Newest(); !strings.Contains(text, "by the organiser's decision") || !strings.Contains(text, "round 1") {
		t.Errorf("the history says %q", text)
	}
	if r := rotationOf(t, d, clock.now); !playsIn(r.Rounds[0], id) {
		t.Fatal("who was put first sits out")
	}
	must(t, d, Undo{})
	if r := rotationOf(t, d, clock.now); len(d.Ledger().Night().Pins) != 0 || playsIn(r.Rounds[0], id) {
		t.Fatal("the pin stands after its undo")
	}
	must(t, d, Redo{})
	if len(d.Ledger().Night().Pins) != 1 {
		t.Fatal("the redo did not bring it back")
	}
	checkReplay(t, d, log)
}

// TestAPinThatCannotBeKeptIsTold, and holds again when it can.
func TestAPinThatCannotBeKeptIsTold(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 10, Rounds)
	must(t, d, PinPartners{A: "p002", B: "p003"}, Rest{"p003"})
	if r := rotationOf(t, d, clock.now); !slices.ContainsFunc(r.Warnings, func(w string) bool {
		return strings.Contains(w, "Person 01 & Person 02 as partners: Person 02 rests")
	}) {
		t.Errorf("warnings %q", r.Warnings)
	}
	must(t, d, CheckIn{"p003"})
	if r := rotationOf(t, d, clock.now); !partnersIn(r.Rounds[0], "p002", "p003") || len(r.Warnings) > 0 {
		t.Errorf("%v, %q", r.Rounds[0], r.Warnings)
	}
}

// TestByHandIsRefusedInWords.
func TestByHandIsRefusedInWords(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 10, Rounds)
	p, _ := d.Ledger().Club().Person("p004")
	p = p.clone()
	p.KeepApart, p.NotPartner = []PersonID{"p005"}, []PersonID{"p008"}
	must(t, d, ChangePerson{p}, Rest{"p006"}, Leave{"p007"})
	shown := rotationOf(t, d, clock.now).Rounds
	for _, c := range []struct {
		command Command
		want    string
	}{
		{PinPartners{A: "p004", B: "p005"}, "Person 03 and Person 04 shall never meet"},
		{PinPartners{A: "p004", B: "p008"}, "Person 03 and Person 07 shall never be partners"},
		{PinPartners{A: "p002", B: "p002"}, "choose two people"},
		{PinPartners{A: "p002", B: "p006"}, "Person 05 rests"},
		{PinPartners{A: "p002", B: "p007"}, "Person 06 has left"},
		{PutFirst{Person: "p006"}, "Person 05 rests"},
		{PutFirst{Person: "p999"}, "is not checked in"},
		{SwapPlanned{Round: 1, A: "p002", B: "p002", Shown: shown}, "choose two people"},
		{SwapPlanned{Round: 1, A: "p002", B: "p006", Shown: shown}, "has no part in that round"},
		{SwapPlanned{Round: 1, A: shown[0].Games[0].A[0], B: shown[0].Games[0].A[1], Shown: shown}, "are partners in that round"},
		{SwapPlanned{Round: 9, A: "p002", B: "p003", Shown: shown}, "worked out anew"},
		{MovePlanned{Round: 1, From: "1", To: "7", Shown: shown}, "tonight has no court 7"},
		{MovePlanned{Round: 1, From: "1", To: "1", Shown: shown}, "is on court 1"},
		{PinGame{Round: 1, Court: "3", Shown: shown}, "no game is planned on court 3"},
		{ExchangePlayers{"p002", "p003"}, "is not on court"},
		{MoveGame{1, "2"}, "that game is over"},
	} {
		refused(t, d, c.command, c.want)
	}
}

// TestASwapOfPeopleToCome changes the two and nobody else, and is kept.
func TestASwapOfPeopleToCome(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 3, 14, Rounds)
	playRound(t, d, clock)
	shown := rotationOf(t, d, clock.now).Rounds
	a, b := shown[1].Games[0].A[0], shown[1].Out[0]
	refused(t, d, SwapPlanned{Round: 3, A: b, B: shown[1].Out[1], Shown: shown}, "both sit out in that round")
	command := SwapPlanned{Round: 3, A: a, B: b, Shown: shown}
	cost, err := Weigh(context.Background(), d.Ledger(), command, clock.now, Shown{})
	if err != nil {
		t.Fatal(err)
	}
	if text := strings.Join(cost.Words, " "); !strings.Contains(text, "sits out") || !strings.Contains(text, "Better: ") && !strings.Contains(text, "Worse: ") && !strings.Contains(text, "All measures stay") {
		t.Errorf("%s", text)
	}
	must(t, d, command)
	r := rotationOf(t, d, clock.now)
	changed := r.Rounds[1].Games[0]
	if !changed.has(b) || !slices.Contains(r.Rounds[1].Out, a) || r.Certificate != cost.After {
		t.Fatalf("%+v", r.Rounds[1])
	}
	for k := range r.Rounds {
		for j, g := range r.Rounds[k].Games {
			if k != 1 && g != shown[k].Games[j] || k == 1 && j > 0 && g != shown[k].Games[j] {
				t.Errorf("round %d: %v was %v", k+2, g, shown[k].Games[j])
			}
		}
	}
	playRound(t, d, clock)
	must(t, d, AddGuest{Name: "Late"})
	if r := rotationOf(t, d, clock.now); !slices.ContainsFunc(r.Rounds[0].Games, func(g PlannedGame) bool {
		return g == changed || g == PlannedGame{changed.Court, changed.B, changed.A}
	}) {
		t.Fatalf("a later plan lost the game %v: %v", changed, r.Rounds[0].Games)
	}
	r = rotationOf(t, d, clock.now)
	if !slices.Contains(r.Rounds[0].Out, a) || !slices.Contains(d.Ledger().Night().Decided(d.Ledger().Club()), "By hand: "+d.Ledger().Club().Name(a)+" sits out in round 3") {
		t.Errorf("a later plan lets %s play: %v, %q", a, r.Rounds[0].Games, d.Ledger().Night().Decided(d.Ledger().Club()))
	}
	must(t, d, Leave{Person: a})
	if r := rotationOf(t, d, clock.now); len(r.Warnings) > 0 && strings.Contains(strings.Join(r.Warnings, " "), "by hand") {
		t.Errorf("whoever left does not play either: %q", r.Warnings)
	}
	checkReplay(t, d, log)
}

// TestAPlannedGameOnAnotherCourt: two games change courts, and stay there when the rounds are planned anew.
func TestAPlannedGameOnAnotherCourt(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 3, 13, Rounds)
	shown := rotationOf(t, d, clock.now).Rounds
	g := shown[0].Games[0]
	must(t, d, MovePlanned{Round: 1, From: g.Court, To: "3", Shown: shown}, AddGuest{Name: "Late"})
	r := rotationOf(t, d, clock.now).Rounds[0]
	if k := r.on("3"); k < 0 || !(Pin{A: g.A, B: g.B}).kept(r.Games[k]) {
		t.Fatalf("%+v, and the game was %+v", r, g)
	}
	checkReplay(t, d, log)
}

// TestPlayersExchanged before and during play, in one game and in two.
func TestPlayersExchanged(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	must(t, d, CallRound{})
	g, h := d.Ledger().Night().Games[0], d.Ledger().Night().Games[1]
	must(t, d, ExchangePlayers{g.A[0], h.B[1]}, ExchangePlayers{g.A[1], g.B[0]})
	n := d.Ledger().Night()
	if n.Games[0].A != (Team{h.B[1], g.B[0]}) || n.Games[0].B[0] != g.A[1] || n.Games[1].B[1] != g.A[0] || len(n.Games[0].Earlier) > 0 {
		t.Fatalf("%+v, %+v", n.Games[0], n.Games[1])
	}
	for _, id := range []PersonID{g.A[0], h.B[1]} {
		if n.TurnsOf(id) != (Turns{Games: 1}) {
			t.Errorf("%s had %+v", id, n.TurnsOf(id))
		}
	}
	refused(t, d, ExchangePlayers{h.A[0], h.A[1]}, "partners already")
	refused(t, d, ExchangePlayers{h.A[0], n.Bench()[0].Person}, "is not on court")
	key := d.Ledger().DrawKey()
	must(t, d, ScoreRally{Game: 1}, ExchangePlayers{n.Games[0].A[0], n.Games[1].A[0]})
	if n = d.Ledger().Night(); len(n.Games[0].Earlier) != 1 || n.Games[0].Earlier[0].Until != 1 || d.Ledger().DrawKey() == key {
		t.Fatalf("during play: %+v", n.Games[0].Earlier)
	}
	checkReplay(t, d, log)
	_ = clock
}

// TestAGameThatGoesOnMoves to a free court, and to one with a game, and back by undo.
func TestAGameThatGoesOnMoves(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 3, 9, Rounds)
	must(t, d, CallRound{}, MoveGame{1, "3"})
	n := d.Ledger().Night()
	if n.Games[0].Court != "3" || n.GameOn("1") != nil || n.GameOn("3").ID != 1 {
		t.Fatalf("%+v", n.Courts)
	}
	must(t, d, MoveGame{2, "3"})
	if n = d.Ledger().Night(); n.GameOn("2").ID != 1 || n.GameOn("3").ID != 2 {
		t.Fatalf("%+v", n.Courts)
	}
	must(t, d, Undo{}, Undo{})
	if n = d.Ledger().Night(); n.GameOn("1").ID != 1 || n.GameOn("2").ID != 2 {
		t.Fatalf("after undoing: %+v", n.Courts)
	}
	checkReplay(t, d, log)
}

// TestPutFirstAndPinnedInTheRollingFlow: they are in the next four whoever has waited longer, and once that is so it
// is over. Who plays cannot be decided about.
func TestPutFirstAndPinnedInTheRollingFlow(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, log, clock := newTestDesk(t)
		withPeople(t, d, 2, rapid.IntRange(14, 20).Draw(rt, "people"), Rolling)
		must(t, d, BeginPlay{})
		bench := d.Ledger().Night().Bench()
		who := rapid.Permutation(bench).Draw(rt, "who")
		a, b, first := who[0].Person, who[1].Person, who[2].Person
		refused(t, d, PutFirst{Person: d.Ledger().Night().Games[0].A[0]}, "plays on court 1")
		cost, err := Weigh(context.Background(), d.Ledger(), PinPartners{A: a, B: b}, clock.now, Shown{})
		if err != nil || !(Pin{A: Team{a, b}}).kept(cost.Next) {
			t.Fatalf("%+v %v", cost, err)
		}
		must(t, d, PinPartners{A: a, B: b}, PutFirst{Person: first})
		refused(t, d, PutFirst{Person: a}, "pinned already")
		clock.now = clock.now.Add(10 * time.Minute)
		must(t, d, FinishGame{Game: 1, Final: final(t, 11, 5)})
		n := d.Ledger().Night()
		if g := n.GameOn("1"); !g.Has(a) || !g.Has(b) || g.A.Has(a) != g.A.Has(b) || !g.Has(first) || len(n.Pins) > 0 {
			t.Fatalf("called %v, pins %v", g.Players(), n.Pins)
		}
		checkReplay(t, d, log)
	})
}

// TestPinsOfPeopleWhoAreOne: a pin follows the person, and is dropped where it would name one twice.
func TestPinsOfPeopleWhoAreOne(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 3, 12, Rounds)
	must(t, d, PinPartners{A: "p002", B: "p003"}, PinPartners{A: "p004", B: "p005"}, PutFirst{Person: "p006"},
		MergePeople{"p002", "p003"}, MergePeople{"p004", "p013"})
	if pins := d.Ledger().Night().Pins; len(pins) != 2 || pins[0].A != (Team{"p013", "p005"}) || pins[1].A[0] != "p006" {
		t.Errorf("%+v", pins)
	}
	checkReplay(t, d, log)
}

// TestWhatIsDecidedInTheRollingFlowIsTold until it is called, with what it waits for.
func TestWhatIsDecidedInTheRollingFlowIsTold(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 16, Rolling)
	must(t, d, BeginPlay{})
	bench := d.Ledger().Night().Bench()
	a, b := bench[6].Person, bench[7].Person
	must(t, d, PinPartners{A: a, B: b}, Rest{b})
	told := func() string {
		return strings.Join(d.Ledger().Night().Decided(d.Ledger().Club()), "\n")
	}
	if text := told(); !strings.Contains(text, "as partners next, once that is possible: ") || !strings.Contains(text, " rests") {
		t.Errorf("told %q", text)
	}
	finish := func() {
		clock.now = clock.now.Add(10 * time.Minute)
		must(t, d, FinishGame{Game: d.Ledger().Night().Running()[0].ID, Final: final(t, 11, 5)})
	}
	finish()
	if len(d.Ledger().Night().Pins) != 1 {
		t.Fatal("the decision is gone though it was not kept")
	}
	must(t, d, Substitute{d.Ledger().Night().Running()[0].ID, d.Ledger().Night().Running()[0].A[0], d.Ledger().Night().Bench()[0].Person})
	must(t, d, CheckIn{b})
	for range 6 {
		if finish(); len(d.Ledger().Night().Pins) == 0 {
			break
		}
	}
	if text := told(); text != "" {
		t.Errorf("told %q, though both have been on the bench together", text)
	}
}

// TestDecisionsByHandOfAnotherLaptop come with its night: people who are one here are named so in them.
func TestDecisionsByHandOfAnotherLaptop(t *testing.T) {
	a, log, clock := laptop(t, "a")
	must(t, a, OpenNight{Name: "a night", Settings: DefaultSettings(5), Courts: 2})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di", "Eve", "Fay", "Gus", "Hal", "Ida"} {
		must(t, a, AddGuest{Name: name})
	}
	ada, _ := a.Ledger().Club().Named("Ada")
	eve, _ := a.Ledger().Club().Named("Eve")
	must(t, a, PinPartners{A: ada.ID, B: eve.ID}, PutFirst{Person: mustNamed(t, a, "Hal")})
	playRound(t, a, clock)
	must(t, a, CallRound{})
	must(t, a, ExchangePlayers{a.Ledger().Night().Running()[0].A[0], a.Ledger().Night().Running()[1].A[0]}, MoveGame{3, "2"})
	for _, g := range a.Ledger().Night().Running() {
		must(t, a, FinishGame{Game: g.ID, Final: final(t, 11, 4)})
	}
	must(t, a, EndNight{})
	b, joined, _ := laptop(t, "b")
	must(t, b, OpenNight{Name: "own", Settings: DefaultSettings(5), Courts: 1}, AddGuest{Name: "Ada"}, EndNight{})
	if _, _, err := b.Join(log.records, OneAlike); err != nil {
		t.Fatal(err)
	}
	ours, _ := b.Ledger().Club().Named("Ada")
	found := false
	for r, err := range joined.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		if e, err := Decode(r); err == nil {
			if p, ok := e.(Pinned); ok && p.By == PinnedPartners {
				found = p.Pins[0].A == Team{ours.ID, eve.ID}
			}
		}
	}
	if !found {
		t.Error("the pin names somebody else")
	}
	if _, err := Load(joined.Records(1)); err != nil {
		t.Error(err)
	}
	change, _ := forgetting(t, NewForgotten("Eve"), log)
	for r, err := range log.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(change(r).Payload), "Eve") {
			t.Errorf("%s still names who was forgotten", r.Kind)
		}
	}
}

func mustNamed(t testing.TB, d *Desk, name string) PersonID {
	t.Helper()
	p, ok := d.Ledger().Club().Named(name)
	if !ok {
		t.Fatalf("nobody is called %s", name)
	}
	return p.ID
}

// TestADecisionIsWeighedAgainstWhatIsShown: what is compared is what people have seen and what it becomes, not
// two plans from nothing.
func TestADecisionIsWeighedAgainstWhatIsShown(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 4, 16, Rounds)
	playRound(t, d, clock)
	l := d.Ledger()
	r := rotationOf(t, d, clock.now)
	r.Rounds = slices.Clone(r.Rounds)
	slices.Reverse(r.Rounds)
	a, b := r.Rounds[0].Games[0].A[0], r.Rounds[0].Games[0].A[1]
	cost, err := Weigh(context.Background(), l, PinPartners{A: a, B: b}, clock.now, l.Show(r))
	if err != nil {
		t.Fatal(err)
	}
	anew, err := Weigh(context.Background(), l, PinPartners{A: a, B: b}, clock.now, Shown{})
	if err != nil {
		t.Fatal(err)
	}
	kept, without := Changed(r.Rounds, cost.Plan, 2), Changed(r.Rounds, anew.Plan, 2)
	if kept.Kept != kept.Games || without.Kept == without.Games {
		t.Errorf("two who are partners anyway: %d of %d games stay, %d where nothing was shown", kept.Kept, kept.Games, without.Kept)
	}
}

// TestSetPairsAreNotTakenApart by an exchange, neither of one game nor of two.
func TestSetPairsAreNotTakenApart(t *testing.T) {
	d, _, _ := newTestDesk(t)
	s := DefaultSettings(3)
	s.Format = scheduler.Pairs
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for i := range 8 {
		must(t, d, AddGuest{Name: fmt.Sprintf("Pair %d", i)})
	}
	for i := 0; i < 8; i += 2 {
		p := d.Ledger().Club().People[i]
		p.Together = []Together{{With: d.Ledger().Club().People[i+1].ID}}
		must(t, d, ChangePerson{p})
	}
	must(t, d, CallRound{})
	g, h := d.Ledger().Night().Games[0], d.Ledger().Night().Games[1]
	refused(t, d, ExchangePlayers{g.A[0], h.B[1]}, "set pairs stay together: send a substitute instead")
	refused(t, d, ExchangePlayers{g.A[0], g.B[1]}, "set pairs stay together: send a substitute instead")
}

// TestAPinOfTheNextCallIsOnTheNextRound and on no later one; one of a round is on that round alone.
func TestAPinOfTheNextCallIsOnTheNextRound(t *testing.T) {
	n := &Night{Rounds: make([]CalledRound, 2), Pins: []Pin{{A: Team{"a"}}, {Round: 5, A: Team{"e", "f"}}, {Round: 3, A: Team{"x"}, Out: true}}}
	g, h := PlannedGame{"1", Team{"a", "b"}, Team{"c", "d"}}, PlannedGame{"2", Team{"f", "e"}, Team{"x", "y"}}
	for _, c := range []struct {
		round int
		game  PlannedGame
		on    bool
	}{{3, g, true}, {4, g, false}, {5, h, true}, {3, h, false}, {5, g, false}, {2, g, false}} {
		if _, on := n.PinOn(c.round, c.game); on != c.on {
			t.Errorf("round %d, %v: %v", c.round, c.game, on)
		}
	}
}
