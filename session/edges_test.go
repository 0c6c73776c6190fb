package session

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// TestWhoHasNoGroupIsNamed: up to three people by name, and more as a number, in the singular where one is meant.
func TestWhoHasNoGroupIsNamed(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 5, Rounds)
	must(t, d, AddGuest{Name: "Zed", Group: "z"})
	ids := func(places ...int) (out []PersonID) {
		for _, i := range places {
			out = append(out, d.Ledger().Club().People[i-1].ID)
		}
		return out
	}
	for _, c := range []struct {
		people []PersonID
		want   string
	}{
		{ids(1), "Person 01 has no group"},
		{ids(1, 2), "Person 01, Person 02 have no group"},
		{ids(1, 2, 3), "Person 01, Person 02, Person 03 have no group"},
		{ids(1, 2, 3, 4), "Person 01, Person 02, Person 03 and 1 more have no group"},
		{ids(1, 2, 3, 4, 5), "Person 01, Person 02, Person 03 and 2 more have no group"},
		{ids(6), "Zed is in neither group of tonight"},
		{ids(1, 6), "Person 01, Zed are in neither group of tonight"},
	} {
		b := Barred{Cause: NoGroup, People: c.people}
		if got := b.Words(d.Ledger().Club()); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// TestTooFewOfAGroupWait: where four wait and no mixed game can be made of them, the numbers are told.
func TestTooFewOfAGroupWait(t *testing.T) {
	for _, c := range []struct{ groups, want string }{
		{"xxxyx", "1 of y"},
		{"yyyyx", "1 of x"},
		{"xxxxx", "everybody here is of group x"},
	} {
		d, _, _ := newTestDesk(t)
		s := DefaultSettings(3)
		s.Flow = Rolling
		must(t, d, OpenNight{Name: "mixed", Settings: s, Courts: 1})
		for i, g := range c.groups {
			must(t, d, AddGuest{Name: fmt.Sprintf("Person %d", i), Group: string(g)})
		}
		n := d.Ledger().Night().clone()
		n.Settings.Format, n.Rolls = scheduler.Mixed, true
		why := newLineup(d.Ledger().Club(), n, d.Now()).noFour()
		if why.Cause != NoFour || why.Waiting != 5 || !strings.Contains(why.Text, "a mixed game takes two of each group") || !strings.Contains(why.Text, c.want) {
			t.Errorf("%s: %+v, want %q", c.groups, why, c.want)
		}
	}
}

// TestTurnsOfAllAreThoseOfEach, on a night with a void game, substitutes and sit-outs.
func TestTurnsOfAllAreThoseOfEach(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 11, Rounds)
	void, err := DefaultSettings(1).Scoring.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	seen := Turns{}
	for range 4 {
		must(t, d, CallRound{})
		n := d.Ledger().Night()
		running := n.Running()
		hurt, sub := running[0].B[1], n.Bench()[0].Person
		must(t, d, Substitute{running[0].ID, hurt, sub})
		clock.now = clock.now.Add(12 * time.Minute)
		must(t, d, FinishGame{Game: running[0].ID, Final: final(t, 11, 5)}, FinishGame{Game: running[1].ID, Final: void})
		n = d.Ledger().Night()
		all := n.TurnsOfAll()
		for _, a := range n.Roll {
			one := n.TurnsOf(a.Person)
			if all[a.Person] != one {
				t.Errorf("%s: %+v of all, %+v of one", a.Person, all[a.Person], one)
			}
			seen = Turns{seen.Games + one.Games, seen.SatOut + one.SatOut, seen.Void + one.Void, seen.Unfinished + one.Unfinished}
		}
	}
	if seen.Games == 0 || seen.SatOut == 0 || seen.Void == 0 || seen.Unfinished == 0 {
		t.Errorf("the night did not have all of it: %+v", seen)
	}
}

// TestWhoIsAnnouncedToGoIsNotPlannedAfter, by the clock, by a round, or by what comes first of both.
func TestWhoIsAnnouncedToGoIsNotPlannedAfter(t *testing.T) {
	for _, c := range []struct {
		name   string
		leaves int // slots from now, 0 for not announced
		last   int
		rounds int // in which the person has a part at most
	}{
		{"stays", 0, 0, 8},
		{"by the clock", 3, 0, 3},
		{"by a round", 0, 2, 2},
		{"the round first", 4, 2, 2},
		{"the clock first", 2, 5, 2},
	} {
		d, _, clock := newTestDesk(t)
		withPeople(t, d, 2, 8, Rounds)
		id, n := d.Ledger().Club().People[0].ID, d.Ledger().Night()
		e := Expect{Person: id, Last: c.last}
		if c.leaves > 0 {
			e.Leaves = clock.now.Add(time.Duration(c.leaves*n.Settings.Slot) * time.Minute)
		}
		must(t, d, e)
		rounds := rotationOf(t, d, clock.now).Rounds
		has := 0
		for k, r := range rounds {
			if playsIn(r, id) || slices.Contains(r.Out, id) {
				if has++; k >= c.rounds {
					t.Errorf("%s: has a part in round %d", c.name, k+1)
				}
			}
		}
		if has != min(c.rounds, len(rounds)) {
			t.Errorf("%s: has a part in %d rounds, want %d", c.name, has, c.rounds)
		}
	}
}

// TestCourseOfOneGame: the first game that is over makes a table, in the rolling flow too.
func TestCourseOfOneGame(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rolling)
	must(t, d, BeginPlay{})
	club := func() *Club { return d.Ledger().Club() }
	if stages, _ := Course(club(), d.Ledger().Night()); stages != 0 {
		t.Errorf("%d stages before any game is over", stages)
	}
	clock.now = clock.now.Add(11 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 3)})
	stages, course := Course(club(), d.Ledger().Night())
	if stages != 1 || len(course) != 4 {
		t.Errorf("%d stages of %d lines after one game, want 1 of 4", stages, len(course))
	}
}

// TestMinutesLeftBeginWhenTheCourtsAreFree: what is on court now is taken off what is left until closing time, and
// whoever waits in a round waits for all of its games, wherever on the bench.
func TestMinutesLeftBeginWhenTheCourtsAreFree(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 14, Rounds)
	closing := clock.now.Add(90 * time.Minute)
	if left := d.Ledger().Night().left(closing, clock.now); left != 90 {
		t.Errorf("%v minutes are left of 90, and nothing is on court", left)
	}
	must(t, d, CallRound{})
	n := d.Ledger().Night()
	over := n.untilOver(n.Clock(), clock.now, 0.5)
	if left := n.left(closing, clock.now); left != 90-over-changeMinutes || left > 85 {
		t.Errorf("%v minutes are left, want 90 without %v and the change", left, over)
	}
	for place := range 6 {
		if w := n.NextTurn(place, clock.now); w.Likely != span(over) || w.Early > w.Likely || w.Likely > w.Late {
			t.Errorf("place %d waits %+v, the round takes %v", place, w, span(over))
		}
	}
}

// TestWhatWasDoneByHandIsToldByNames, as the history shows it.
func TestWhatWasDoneByHandIsToldByNames(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	told := func() string {
		actions := d.Ledger().Actions()
		return Describe(d.Ledger().Club(), actions[len(actions)-1])
	}
	shown := rotationOf(t, d, clock.now).Rounds
	one, other := shown[1].Games[0].A[0], shown[1].Games[1].B[1]
	name := d.Ledger().Club().Name
	must(t, d, SwapPlanned{Round: 2, A: one, B: other, Shown: shown})
	if want := fmt.Sprintf("%s and %s swapped in round 2 by hand", name(one), name(other)); !strings.Contains(told(), want) {
		t.Errorf("got %q, want %q", told(), want)
	}
	must(t, d, CallRound{})
	must(t, d, OpenCourt{"3"}, MoveGame{Game: 1, Court: "3"})
	g := d.Ledger().Night().Game(1)
	club := d.Ledger().Club()
	if want := pairName(club, g.A) + " v " + pairName(club, g.B) + " moved to court 3"; !strings.Contains(told(), want) {
		t.Errorf("got %q, want %q", told(), want)
	}
}

// TestTwoNewPeopleOfAKnownNightAreOne here too, if they turned out to be one there; and nobody whom both files know
// gets another name.
func TestTwoNewPeopleOfAKnownNightAreOne(t *testing.T) {
	a, logA, clockA := laptop(t, "a")
	must(t, a, OpenNight{Name: "shared", Settings: DefaultSettings(5), Courts: 1})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di"} {
		must(t, a, AddGuest{Name: name})
	}
	b, logB, clockB := laptop(t, "b")
	if _, _, err := b.Join(logA.records, AskSame); err != nil {
		t.Fatal(err)
	}
	playRound(t, a, clockA)
	must(t, a, EndNight{})
	clockB.now = clockB.now.Add(time.Minute)
	must(t, b, AddGuest{Name: "Eve"}, AddGuest{Name: "Evelyn"})
	must(t, b, MergePeople{From: named(t, b, "Evelyn"), Into: named(t, b, "Eve")}, EndNight{})

	_, got, err := a.Join(logB.records, TwoAlike)
	if err != nil || got.Known != 1 || len(got.Renamed) != 0 || len(got.Differ) != 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	club := a.Ledger().Club()
	if len(club.People) != 5 || len(club.Aliases) != 1 || named(t, a, "Evelyn") != named(t, a, "Eve") {
		t.Errorf("%d people, aliases %v", len(club.People), club.Aliases)
	}
	checkReplay(t, a, logA)
}

// TestTheRallyThatEndedAGameIsTakenBack by name, and the game goes on; an entry before it is part of a sheet that is
// closed.
func TestTheRallyThatEndedAGameIsTakenBack(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	var last, before uint64
	for game1(d).Running() {
		before = last
		must(t, d, ScoreRally{Game: 1, Rally: scoring.Rally{Won: game1(d).State.Serving}})
		last = d.Ledger().Actions()[len(d.Ledger().Actions())-1].ID
	}
	refused(t, d, UndoAction{before}, "that game is over: correct its score, or undo its end first")
	must(t, d, UndoAction{last})
	if g := game1(d); !g.Running() || g.Final != nil {
		t.Errorf("the game is %+v", g)
	}
	must(t, d, UndoAction{before})
	checkReplay(t, d, log)
}
