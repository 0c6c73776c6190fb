package scheduler

import (
	"context"
	"testing"

	"pgregory.net/rapid"

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
		{AnyLevels, 4, 0}, {GentleLevels, 2, 6}, {EvenLevels, 0, 24},
	} {
		p := nighttest.Leveled(16, 4, 10)
		p.Leveling = c.step
		k := Certify(p, mustPlan(t, p, Budget{}))
		if k.Levels.Games != 40 || k.Levels.Onesided > c.onesided || k.MeetingEvenness.Value > without+c.extra || k.PartnerRepeats.Value > 0 {
			t.Errorf("%s: %+v, meetings %+v (without levels %d), partner repeats %+v", c.step, k.Levels, k.MeetingEvenness, without, k.PartnerRepeats)
		}
	}
}

// TestEvenGamesAreNeverPaidWithPartners plans any nights of any levels in all steps: none has more partner repeats
// than the same night without levels, and where levels are off nobody meets anybody more often for them.
func TestEvenGamesAreNeverPaidWithPartners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		courts := rapid.IntRange(1, 4).Draw(t, "courts")
		people := rapid.IntRange(4*courts, 4*courts+5).Draw(t, "people")
		p := nighttest.Club(people, courts, rapid.IntRange(2, 10).Draw(t, "rounds"))
		p.Seed = rapid.Uint64().Draw(t, "seed")
		moves := Budget{Moves: 8_000}
		plan := func() Certificate {
			rounds, err := Plan(context.Background(), p, moves)
			if err != nil {
				t.Fatal(err)
			}
			return Certify(p, rounds)
		}
		without := plan()
		for i := range p.People {
			p.People[i].Level = float64(rapid.IntRange(20, 60).Draw(t, "level")) / 10
		}
		for _, p.Leveling = range Levelings() {
			k := plan()
			if k.PartnerRepeats.Value > without.PartnerRepeats.Value {
				t.Errorf("%s: %d partner repeats, %d without levels", p.Leveling, k.PartnerRepeats.Value, without.PartnerRepeats.Value)
			}
			if p.Leveling == AnyLevels && k.MeetingEvenness.Value > without.MeetingEvenness.Value {
				t.Errorf("%d repeated meetings, %d without levels", k.MeetingEvenness.Value, without.MeetingEvenness.Value)
			}
			if k.SureWinners.Gap() < 0 || k.TeamGap.Gap() < 0 || k.CourtLevels.Gap() < 0 {
				t.Errorf("%s: below a bound: %+v", p.Leveling, k)
			}
		}
	})
}
