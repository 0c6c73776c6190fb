package session

import (
	"slices"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// TestPlacesTellWhoMoved: the winner of the second round passes whoever won the first and lost now.
func TestPlacesTellWhoMoved(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	for round, score := range [][2]int{{11, 9}, {2, 11}} {
		must(t, d, CallRound{})
		clock.now = clock.now.Add(10 * time.Minute)
		must(t, d, FinishGame{Game: GameID(round + 1), Final: final(t, score[0], score[1])})
	}
	n := d.Ledger().Night()
	first, second := n.Game(1), n.Game(2)
	for _, p := range Places(d.Ledger().Club(), n) {
		id := p.People[0]
		want := 1
		if first.B.Has(id) {
			want = 3
		}
		if p.Was != want {
			t.Errorf("%s was %d, want %d", p.Name, p.Was, want)
		}
		form := []Outcome{Won, Won}
		if first.B.Has(id) {
			form[0] = Lost
		}
		if second.A.Has(id) {
			form[1] = Lost
		}
		if !slices.Equal(p.Form, form) {
			t.Errorf("%s has the form %v, want %v", p.Name, p.Form, form)
		}
		if up, ok := p.Moved(); !ok || up != p.Was-p.Rank {
			t.Errorf("%s moved %d, %v", p.Name, up, ok)
		}
	}
}

// TestPlacesOfTheFirstRound: nobody had a place before it.
func TestPlacesOfTheFirstRound(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	playRound(t, d, clock)
	places := Places(d.Ledger().Club(), d.Ledger().Night())
	if len(places) != 4 {
		t.Fatalf("%d places", len(places))
	}
	for _, p := range places {
		if _, ok := p.Moved(); ok {
			t.Errorf("%s moved in the first round", p.Name)
		}
	}
}

// TestPlacesInTheRollingFlow: with one court a round is one game.
func TestPlacesInTheRollingFlow(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 5, Rolling)
	must(t, d, BeginPlay{})
	for i := range 2 {
		clock.now = clock.now.Add(10 * time.Minute)
		must(t, d, FinishGame{Game: GameID(i + 1), Final: final(t, 11, 3)})
	}
	n := d.Ledger().Night()
	for _, p := range Places(d.Ledger().Club(), n) {
		if had := n.Game(1).Has(p.People[0]); had != (p.Was > 0) {
			t.Errorf("%s had a game before the newest: %v, and was %d", p.Name, had, p.Was)
		}
	}
}

// TestPlacesOfSetPairs: a line is about both of a pair.
func TestPlacesOfSetPairs(t *testing.T) {
	d, _, clock := newTestDesk(t)
	s := DefaultSettings(7)
	s.Format = scheduler.Pairs
	must(t, d, OpenNight{Name: "pairs", Settings: s, Courts: 1})
	for _, name := range []string{"Ada Alder", "Ben Brook", "Cora Crane", "Dov Dale"} {
		must(t, d, AddGuest{Name: name})
	}
	playRound(t, d, clock)
	n := d.Ledger().Night()
	places := Places(d.Ledger().Club(), n)
	if len(places) != 2 {
		t.Fatalf("%d places", len(places))
	}
	for _, p := range places {
		if len(p.People) != 2 || len(p.Form) != 1 {
			t.Errorf("%s is about %v, with the form %v", p.Name, p.People, p.Form)
		}
		if g := n.Game(1); !g.A.Has(p.People[0]) && !g.B.Has(p.People[0]) || g.A.Has(p.People[0]) != g.A.Has(p.People[1]) {
			t.Errorf("%s is about %v, who are no pair", p.Name, p.People)
		}
	}
}

// TestCourseEndsWhereTheTableIs: the places after the newest round are those of the table, and the ones before
// it what Places calls before; in both flows.
func TestCourseEndsWhereTheTableIs(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		d, _, clock := newTestDesk(t)
		withPeople(t, d, 2, 11, flow)
		if flow == Rolling {
			must(t, d, BeginPlay{})
		}
		for range 4 {
			if flow == Rounds {
				must(t, d, CallRound{})
			}
			clock.now = clock.now.Add(11 * time.Minute)
			for i, g := range d.Ledger().Night().Running() {
				must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3+i)})
			}
		}
		club, n := d.Ledger().Club(), d.Ledger().Night()
		stages, course := Course(club, n)
		if stages != 4 {
			t.Errorf("%s: %d stages, want 4", flow, stages)
		}
		for _, p := range Places(club, n) {
			line := course[p.Name]
			if len(line) != stages || line[stages-1] != p.Rank || line[stages-2] != p.Was {
				t.Errorf("%s: %s went %v, has place %d and had %d", flow, p.Name, line, p.Rank, p.Was)
			}
		}
	}
}

// TestLeastGames: half of the most, rounded up.
func TestLeastGames(t *testing.T) {
	for most, want := range []int{0, 1, 1, 2, 2, 3} {
		p := Place{}
		p.Games = most
		if got := LeastGames([]Place{{}, p}); got != want {
			t.Errorf("of %d games the least is %d, want %d", most, got, want)
		}
	}
}
