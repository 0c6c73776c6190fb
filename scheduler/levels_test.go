package scheduler

import (
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestEvenGamesNeedNotCostMeetings plans a night of levels from 2.5 to 4.5, without levels and in the three steps.
func TestEvenGamesNeedNotCostMeetings(t *testing.T) {
	plain := nighttest.Club(16, 4, 10)
	without := Certify(plain, mustPlan(t, plain, Budget{})).MeetingEvenness.Value
	for _, c := range []struct {
		step            Leveling
		onesided, extra int // at most, of 40 games, and at so many repeated meetings more
	}{
		{AnyLevels, 11, 0}, {GentleLevels, 11, 12}, {EvenLevels, 0, 30},
	} {
		p := nighttest.Club(16, 4, 10)
		p.Leveling = c.step
		for i := range p.People {
			p.People[i].Level = 2.5 + 2*float64(i)/15
		}
		k := Certify(p, mustPlan(t, p, Budget{}))
		if k.Levels.Games != 40 || k.Levels.Onesided > c.onesided || k.MeetingEvenness.Value > without+c.extra || k.PartnerRepeats.Value > 0 {
			t.Errorf("%s: %+v, meetings %+v (without levels %d), partner repeats %+v", c.step, k.Levels, k.MeetingEvenness, without, k.PartnerRepeats)
		}
	}
}
