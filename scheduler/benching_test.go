package scheduler

import (
	"fmt"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestTwiceRunningHasAPrice plans nights on which half of the people sit out. The most is what the better of
// some plans known for them pays, a repeated meeting counting two and a sit-out twice running three.
func TestTwiceRunningHasAPrice(t *testing.T) {
	for _, c := range []struct{ people, courts, rounds, most, strict int }{
		{16, 2, 8, 3 * 12, 2 * 48},
		{16, 2, 10, 3 * 16, 2 * 80},
		{24, 3, 10, 3*6 + 2*13, 2 * 60},
		{8, 1, 8, 3*2 + 2*38, 2 * 72},
		{14, 2, 8, 2 * 18, 2 * 18},
	} {
		t.Run(fmt.Sprintf("%d-%d-%d", c.people, c.courts, c.rounds), func(t *testing.T) {
			p := nighttest.Club(c.people, c.courts, c.rounds)
			rounds := mustPlan(t, p, Budget{})
			mixed := Certify(p, rounds)
			if pays := 2*mixed.MeetingEvenness.Value + 3*mixed.BenchedTwice.Value; pays > c.most {
				t.Errorf("%d repeated meetings and %d sit-outs twice running", mixed.MeetingEvenness.Value, mixed.BenchedTwice.Value)
			}
			for i, times := range runsOfTwo(len(p.People), rounds) {
				if times > 1 {
					t.Errorf("person %d sits out twice running %d times", i, times)
				}
			}
			if mixed.LongestBench.Value > 2 || mixed.SitoutSpread.Gap() > 0 || mixed.SitoutEvenness.Gap() > 0 || mixed.PartnerRepeats.Value > 0 {
				t.Errorf("%+v", mixed)
			}
			p.Benching = StrictBench
			strict := Certify(p, mustPlan(t, p, Budget{}))
			if strict.BenchedTwice.Value != 0 || 2*strict.MeetingEvenness.Value > c.strict {
				t.Errorf("strict: %+v", strict)
			}
		})
	}
}

// runsOfTwo counts how often each person sits out right after a sit-out.
func runsOfTwo(people int, rounds []Round) []int {
	times, last := make([]int, people), make([]int, people)
	for r, round := range rounds {
		for _, i := range round.Out {
			if r > 0 && last[i] == r {
				times[i]++
			}
			last[i] = r + 1
		}
	}
	return times
}

// TestMixingCountsTheHistory plans on after somebody sat out twice running: that one does not do so again.
func TestMixingCountsTheHistory(t *testing.T) {
	p := nighttest.Club(16, 2, 10)
	rounds := mustPlan(t, p, Budget{})
	p.History, p.Rounds = rounds[:5], 5
	again := append(append([]Round(nil), p.History...), mustPlan(t, p, Budget{})...)
	for i, times := range runsOfTwo(16, again) {
		if times > 1 {
			t.Errorf("person %d sits out twice running %d times", i, times)
		}
	}
}

// TestStrangersMustBe compares with what can be told by hand: who never meet because there are too few games.
func TestStrangersMustBe(t *testing.T) {
	p := nighttest.Club(12, 3, 2)
	c := Certify(p, mustPlan(t, p, Budget{}))
	// two games are six others of eleven, so that five are left over to everybody; and the four of a game fall
	// into three games of the next round, so that two of them meet again
	if c.Strangers != (Value{Value: 33, Bound: 33}) {
		t.Errorf("strangers %+v", c.Strangers)
	}
	p = nighttest.Club(13, 1, 4) // nine sit out each round: of any stretch of three rounds one plays in none
	if c = Certify(p, mustPlan(t, p, Budget{})); c.LongestBench != (Value{Value: 3, Bound: 3}) {
		t.Errorf("longest stay on the bench %+v", c.LongestBench)
	}
}
