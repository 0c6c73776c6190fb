package scheduler

import (
	"context"
	"errors"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestImproveInSlices betters plans that were made in a hurry: no slice makes one worse, and together they find what
// more moves from nothing find.
func TestImproveInSlices(t *testing.T) {
	for _, c := range []struct {
		people, courts, rounds int
		benching               Benching
		most                   int // repeated meetings after so many slices
	}{
		{30, 4, 16, StrictBench, 40},
		{19, 2, 12, MixedBench, 12},
		{37, 8, 14, MixedBench, 70},
	} {
		p := nighttest.Club(c.people, c.courts, c.rounds)
		p.Benching = c.benching
		plan := mustPlan(t, p, Budget{Moves: 20_000})
		before := Certify(p, plan)
		found := 0
		for slice := range uint64(8) {
			next, better, err := Improve(t.Context(), p, plan, Budget{Moves: 500_000}, slice)
			if err != nil {
				t.Fatal(err)
			}
			again, _, _ := Improve(t.Context(), p, plan, Budget{Moves: 500_000}, slice)
			if !reflect.DeepEqual(next, again) {
				t.Errorf("%d/%d/%d: slice %d is not the same twice", c.people, c.courts, c.rounds, slice)
			}
			if !better && !reflect.DeepEqual(next, plan) {
				t.Errorf("%d/%d/%d: another plan though nothing was found", c.people, c.courts, c.rounds)
			}
			for _, v := range Audit(p, next) {
				t.Error(v.Text)
			}
			if better {
				found++
			}
			plan = next
		}
		after := Certify(p, plan)
		t.Logf("%d/%d/%d: meetings %d, then %d, in %d finds", c.people, c.courts, c.rounds, before.MeetingEvenness.Value, after.MeetingEvenness.Value, found)
		if after.MeetingEvenness.Value > c.most || after.PartnerRepeats.Gap() > 0 || after.SitoutEvenness.Value > before.SitoutEvenness.Value ||
			2*after.CourtSpread.Value > 3*before.CourtSpread.Value {
			t.Errorf("%d/%d/%d: %+v after %+v", c.people, c.courts, c.rounds, after, before)
		}
	}
}

// TestImproveAnyNight improves plans of nights of every kind: what comes out passes the audit and keeps as many wishes,
// unless sit-outs become fairer, which is more important.
// Sit-outs are as fair where anybody may play in anybody's stead; singles of those left over are no part of the search.
func TestImproveAnyNight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		plan, err := Plan(context.Background(), p, Budget{Moves: 2000})
		if err != nil {
			t.Skip("no plan")
		}
		unkept, sitouts := len(Unkept(p, plan)), Certify(p, plan).SitoutEvenness.Value
		slice := rapid.Uint64Range(0, 7).Draw(t, "slice")
		next, found, err := Improve(context.Background(), p, plan, Budget{Moves: 5000}, slice)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range Audit(p, next) {
			t.Error(v.Text)
		}
		if !found && !reflect.DeepEqual(next, plan) {
			t.Error("another plan though nothing was found")
		}
		fair := Certify(p, next).SitoutEvenness.Value
		if night.New(&p).Free() && !p.LeftoverSingles && fair > sitouts {
			t.Errorf("sit-outs %d, %d before", fair, sitouts)
		}
		if now := len(Unkept(p, next)); now > unkept && fair >= sitouts {
			t.Errorf("%d wishes not kept, %d before, with sit-outs %d and %d", now, unkept, fair, sitouts)
		}
	})
}

// TestImproveRefusesOtherNights gives it rounds that are not the problem's.
func TestImproveRefusesOtherNights(t *testing.T) {
	p := nighttest.Club(9, 2, 4)
	plan := mustPlan(t, p, Budget{Moves: 2000})
	for name, change := range map[string]func(p *Problem){
		"more rounds":    func(p *Problem) { p.Rounds = 5 },
		"somebody left":  func(p *Problem) { p.People[3].Leave = 2 },
		"somebody more":  func(p *Problem) { p.People = append(p.People, Person{Name: "late"}) },
		"a court closed": func(p *Problem) { p.Courts[0].Close = 1 },
	} {
		q := nighttest.Club(9, 2, 4)
		change(&q)
		if rounds, _, err := Improve(t.Context(), q, plan, Budget{Moves: 2000}, 0); !errors.Is(err, ErrOtherNight) || !reflect.DeepEqual(rounds, plan) {
			t.Errorf("%s: %v", name, err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if rounds, found, err := Improve(ctx, p, plan, Budget{}, 0); err != nil || found || !reflect.DeepEqual(rounds, plan) {
		t.Errorf("done before it began: %v", err)
	}
}

// TestNothingSeenGainsPartnerRepeats: whatever else a search betters, it does not pay for it with partner repeats that the
// plan which people saw had not, in slices or in a re-plan of the same night. Only what is more important may cost one:
// sit-outs (others can need more repeats: see the bound), and partners who ask to play together twice, which is a repeat in itself and so left out here.
func TestNothingSeenGainsPartnerRepeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		p.Together = nil
		p.LeftoverSingles = false // who is left over plays after the sit-outs were weighed
		seen, err := Plan(context.Background(), p, Budget{Moves: rapid.SampledFrom([]int{1, 300, 2000}).Draw(t, "moves")})
		if err != nil {
			t.Skip("no plan")
		}
		before := Certify(p, seen)
		if p.Benching == MixedBench && before.BenchedTwice.Value > 0 {
			t.Skip("how evenly people sit out twice running is more important, and stands in no certificate")
		}
		slice := rapid.Uint64Range(0, 7).Draw(t, "slice")
		better, _, err := Improve(context.Background(), p, seen, Budget{Moves: 5000}, slice)
		if err != nil {
			t.Fatal(err)
		}
		again, _, err := Replan(context.Background(), p, seen, Budget{Moves: 5000})
		if err != nil {
			t.Fatal(err)
		}
		for name, rounds := range map[string][]Round{"improve": better, "replan": again} {
			after := Certify(p, rounds)
			if now := after.PartnerRepeats; now.Value > before.PartnerRepeats.Value && now.Bound <= before.PartnerRepeats.Value && after.SitoutEvenness.Value >= before.SitoutEvenness.Value && after.SitoutSpread.Value >= before.SitoutSpread.Value &&
				after.BenchedTwice.Value >= before.BenchedTwice.Value && after.LongestBench.Value >= before.LongestBench.Value && len(Unkept(p, rounds)) >= len(Unkept(p, seen)) {
				t.Errorf("%s: %+v\n seen %+v", name, after, before)
			}
		}
	})
}
