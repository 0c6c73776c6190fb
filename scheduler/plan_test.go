package scheduler

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"testing"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/night/nighttest"
)

// TestNobodyMeetsTwice plans the short nights for which published designs reach the most rounds
// without a repeated meeting, and all shorter ones.
func TestNobodyMeetsTwice(t *testing.T) {
	for _, c := range []struct{ people, most int }{
		{16, 5}, {20, 5}, {24, 7}, {28, 9}, {32, 10}, {36, 11}, {40, 13}, {44, 14}, {48, 15},
	} {
		for rounds := 1; rounds <= c.most; rounds++ {
			p := nighttest.Club(c.people, c.people/4, rounds)
			cert := Certify(p, mustPlan(t, p, Budget{}))
			if cert.MeetingEvenness.Value != 0 || cert.PartnerRepeats.Value != 0 {
				t.Errorf("%d people, %d rounds: %+v", c.people, rounds, cert)
			}
		}
	}
}

// TestNobodyMeetsTwiceWithSomeOver does the same with one to three people more than the courts hold.
func TestNobodyMeetsTwiceWithSomeOver(t *testing.T) {
	for _, c := range []struct{ people, courts, rounds int }{
		{25, 6, 5}, {29, 7, 7}, {33, 8, 8}, {41, 10, 10}, {45, 11, 13}, {47, 11, 14}, {50, 12, 12},
	} {
		p := nighttest.Club(c.people, c.courts, c.rounds)
		cert := Certify(p, mustPlan(t, p, Budget{}))
		if cert.MeetingEvenness.Value != 0 || cert.SitoutSpread.Gap() != 0 || cert.BenchedTwice.Value != 0 {
			t.Errorf("%d people, %d courts, %d rounds: %+v", c.people, c.courts, c.rounds, cert)
		}
	}
}

// TestWholeWhistTournaments has everybody partner everybody once and oppose everybody twice.
func TestWholeWhistTournaments(t *testing.T) {
	for v := 4; v <= 53; v++ {
		rounds, ok := design.Whist(v)
		if !ok {
			continue
		}
		p := nighttest.Club(v, v/4, len(rounds))
		cert := Certify(p, mustPlan(t, p, Budget{}))
		wantValue(t, fmt.Sprintf("%d people: partner repeats", v), cert.PartnerRepeats, 0)
		wantValue(t, fmt.Sprintf("%d people: partner evenness", v), cert.PartnerEvenness, 0)
		wantValue(t, fmt.Sprintf("%d people: opponents", v), cert.OpponentEvenness, v*(v-1)/2)
		wantValue(t, fmt.Sprintf("%d people: meetings", v), cert.MeetingEvenness, 3*v*(v-1)/2)
	}
}

// TestParticularNights holds what clubs of the usual sizes may count on.
func TestParticularNights(t *testing.T) {
	p := nighttest.Club(18, 4, 9)
	cert := Certify(p, mustPlan(t, p, Budget{}))
	if cert.PartnerRepeats.Value != 0 || cert.SitoutSpread.Value > 1 || cert.BenchedTwice.Value != 0 {
		t.Errorf("18 people on 4 courts, 9 rounds: %+v", cert)
	}
	p = nighttest.Club(8, 2, 7)
	wantValue(t, "8 people, 7 rounds: meetings", Certify(p, mustPlan(t, p, Budget{})).MeetingEvenness, 84)
}

func TestPlanIsDeterministic(t *testing.T) {
	p := nighttest.Club(19, 4, 6)
	b := Budget{Moves: 20_000}
	first := mustPlan(t, p, b)
	if again := mustPlan(t, p, b); !reflect.DeepEqual(first, again) {
		t.Error("the same problem gave two plans")
	}
	p.Seed++
	if other := mustPlan(t, p, b); reflect.DeepEqual(first, other) {
		t.Error("another seed gave the same plan")
	}
}

// pollCtx is done after it was asked so many times.
type pollCtx struct {
	context.Context
	left int
}

func (c *pollCtx) Err() error {
	if c.left--; c.left < 0 {
		return context.Canceled
	}
	return nil
}

func TestCancelledPlanIsTheBestSoFar(t *testing.T) {
	p := nighttest.Club(37, 7, 14)
	if _, err := Plan(&pollCtx{context.Background(), 0}, p, Budget{}); !errors.Is(err, context.Canceled) {
		t.Errorf("a plan cancelled before it began gave %v", err)
	}
	ctx := &pollCtx{context.Background(), 5}
	rounds, err := Plan(ctx, p, Budget{})
	if err != nil || len(Audit(p, rounds)) > 0 {
		t.Errorf("a plan cancelled on its way is no valid plan: %v", err)
	}
	if ctx.left < -20 {
		t.Errorf("the search went on for %d looks after it was cancelled", -ctx.left)
	}
}

// TestReplanAfterDeparture keeps what was played and plans on without somebody who left.
func TestReplanAfterDeparture(t *testing.T) {
	p := nighttest.Club(48, 12, 10)
	all := mustPlan(t, p, Budget{})
	p.History, p.Rounds = all[:3], 7
	p.People[17].Leave = 3
	cert := Certify(p, mustPlan(t, p, Budget{}))
	if v := cert.MeetingEvenness; 100*v.Value > 103*v.Bound+300 {
		t.Errorf("meetings %d against a bound of %d after a departure", v.Value, v.Bound)
	}
	if cert.SitoutSpread.Gap() != 0 || cert.BenchedTwice.Gap() != 0 || cert.PartnerRepeats.Value != 0 {
		t.Errorf("unfair after a departure: %+v", cert)
	}
}

// TestLateArrivalOwesNothing: somebody who comes late sits out about as often in a round as others.
func TestLateArrivalOwesNothing(t *testing.T) {
	p := nighttest.Club(18, 4, 12)
	p.People[17].Arrive = 6
	rounds := mustPlan(t, p, Budget{})
	outs := make([]int, 18)
	for _, r := range rounds {
		for _, i := range r.Out {
			outs[i]++
		}
	}
	if outs[17] > 1 { // 6 rounds at 2 of 18 benched: a share of 2/3
		t.Errorf("the late one sits out %d times in six rounds", outs[17])
	}
	for i, n := range outs[:17] {
		if n > 2 || n < 1 { // 6/17 + 2/3·... = 6 at 1 of 17 and 6 at 2 of 18: a share of 1.02
			t.Errorf("%s sits out %d times, a fair share is 1 or 2", p.People[i].Name, n)
		}
	}
}
