package session

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring/rating"
)

// TestWhyNotMe plays a rolling night. At each moment everybody on the bench asks why: who is said to be next is
// called next, and who is said to be certain for the court after plays there.
func TestWhyNotMe(t *testing.T) {
	whyNotAllNight(t, nil)
}

// TestWhyNotMeOnMyCourts: the same with some who play only on the first court or on the last two.
func TestWhyNotMeOnMyCourts(t *testing.T) {
	whyNotAllNight(t, map[int][]CourtID{0: {"1"}, 5: {"2", "3"}, 9: {"1"}, 14: {"3"}})
}

func whyNotAllNight(t *testing.T, own map[int][]CourtID) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 3, 20, Rolling)
	for i, courts := range own {
		p := d.Ledger().Club().People[i].clone()
		p.Courts = courts
		must(t, d, ChangePerson{p})
	}
	must(t, d, BeginPlay{})
	passed, again, kept, certain := 0, 0, 0, map[PersonID]bool{}
	for call := range 40 {
		clock.now = clock.now.Add(3 * time.Minute)
		n := d.Ledger().Night()
		next, err := NextGame(d.Ledger().Club(), n, n.callCourt(), clock.now)
		if err != nil {
			t.Fatal(err)
		}
		after := map[PersonID]bool{}
		for place, a := range n.Bench() {
			w, err := d.Ledger().WhyNot(a.Person, clock.now)
			if err != nil {
				t.Fatal(err)
			}
			words := strings.Join(w.Words(d.Ledger().Club().Name), " ")
			switch {
			case w.Called != next, w.IsNext != next.has(a.Person), w.Place != place+1:
				t.Fatalf("call %d: %+v, and next is %+v", call, w, next)
			case w.IsNext && !strings.Contains(words, "is next"), !w.IsNext && !strings.Contains(words, "After that"):
				t.Fatalf("call %d: %s", call, words)
			case !w.IsNext && (!w.Possible || !w.With.has(a.Person) || len(w.Instead) == 0):
				t.Fatalf("call %d: nothing keeps %s out of a game, but %+v", call, a.Person, w)
			case certain[a.Person] && !w.IsNext:
				t.Fatalf("call %d: %s was certain for this court: %s", call, a.Person, words)
			}
			if certain[a.Person] {
				kept++
			}
			if !w.IsNext {
				passed++
				after[a.Person] = w.Certain
			}
			for _, m := range w.Again {
				if w.IsNext {
					break
				}
				again++
				if _, all := n.metBefore(a.Person, m.Other); all == 0 || !strings.Contains(words, d.Ledger().Club().Name(m.Other)+" for the ") {
					t.Fatalf("%s meets %+v again: %s", a.Person, m, words)
				}
			}
		}
		certain = after
		score(t, d, clock, 1)
	}
	if passed == 0 || again == 0 || kept == 0 && own == nil {
		t.Errorf("%d were passed over, %d were certain, and would meet %d again: the night shows nothing", passed, kept, again)
	}
}

// TestWhyNotWhereNobodyIsCalled: what keeps everybody waiting is said instead.
func TestWhyNotWhereNobodyIsCalled(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 7, Rolling)
	must(t, d, BeginPlay{})
	n := d.Ledger().Night()
	waits, plays := n.Bench()[0].Person, n.Running()[0].A[0]
	if _, err := d.Ledger().WhyNot(waits, clock.now); err == nil || !strings.Contains(err.Error(), "takes four people, and 3 wait") {
		t.Errorf("three who wait are told %v", err)
	}
	for _, id := range []PersonID{plays, "nobody"} {
		if _, err := d.Ledger().WhyNot(id, clock.now); !errors.Is(err, ErrNotWaiting) {
			t.Errorf("%s is told %v", id, err)
		}
	}
}

// TestWhyNotKeptApart: who may not be on a court with the longest wait is told so, with the name.
func TestWhyNotKeptApart(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 10, Rolling)
	must(t, d, BeginPlay{})
	clock.now = clock.now.Add(3 * time.Minute)
	bench := d.Ledger().Night().Bench()
	first, last := bench[0].Person, bench[len(bench)-1].Person
	p, _ := d.Ledger().Club().Person(last)
	w, err := d.Ledger().WhyNot(last, clock.now)
	if err != nil {
		t.Fatal(err)
	}
	p.KeepApart = []PersonID{w.First}
	must(t, d, ChangePerson{Person: p})
	w, err = d.Ledger().WhyNot(last, clock.now)
	if err != nil || w.Possible || w.IsNext {
		t.Fatalf("%+v, %v", w, err)
	}
	if words := strings.Join(w.Words(d.Ledger().Club().Name), " "); !strings.Contains(words, "may not be on a court with "+d.Ledger().Club().Name(w.First)) {
		t.Errorf("%s (first %s)", words, first)
	}
}

// TestRatingOverNights: one point a night, the last one as the table has it.
func TestRatingOverNights(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	who := d.Ledger().Night().Roll[0].Person
	for night := range 3 {
		if night > 0 {
			must(t, d, EndNight{}, OpenNight{Name: fmt.Sprint("night ", night), Settings: DefaultSettings(7), Courts: 1})
			for _, p := range d.Ledger().Club().People {
				must(t, d, CheckIn{Person: p.ID})
			}
		}
		for range 2 {
			playRound(t, d, clock)
		}
		clock.now = clock.now.AddDate(0, 0, 7)
	}
	club := d.Ledger().Club()
	over, err := RatingOver(club, rating.Club(), who)
	table, _ := Ratings(club, rating.Club())
	last, _ := table.Of(who)
	if err != nil || len(over) != 3 || over[2].Rating != last.Rating || over[0].Games != 2 || over[1].Night != club.Nights[1] {
		t.Errorf("over the nights %+v, %v; the table has %+v", over, err, last)
	}
	games, _ := ratedGames(club, rating.Club())
	if weeks := games[4].Week - games[0].Week; weeks < 1.9 || weeks > 2.1 {
		t.Errorf("from the first night to the third are %g weeks, want two", weeks)
	}
	if over, err = RatingOver(club, rating.Club(), "nobody"); err != nil || over != nil {
		t.Errorf("who never played has %v, %v", over, err)
	}
}
