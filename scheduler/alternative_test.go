package scheduler

import (
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestAlternativesTradeRestsForMeetings: from each way to the next more sit out twice running, and fewer meet again.
func TestAlternativesTradeRestsForMeetings(t *testing.T) {
	p := nighttest.Club(16, 2, 8)
	if !Choosable(p) {
		t.Fatal("no choice")
	}
	ways, err := Alternatives(t.Context(), p, Budget{})
	if err != nil || len(ways) < 2 {
		t.Fatalf("%d ways, %v", len(ways), err)
	}
	for k, a := range ways {
		if k > 0 && (a.Certificate.BenchedTwice.Value <= ways[k-1].Certificate.BenchedTwice.Value ||
			a.Certificate.MeetingEvenness.Value >= ways[k-1].Certificate.MeetingEvenness.Value) {
			t.Errorf("way %d: %+v after %+v", k+1, a.Certificate, ways[k-1].Certificate)
		}
		for _, v := range Audit(p, a.Rounds) {
			t.Error(v.Text)
		}
	}
	first, last := ways[0], ways[len(ways)-1]
	if first.Benching != StrictBench || TwicePeople(p, first.Rounds) != 0 || TwicePeople(p, last.Rounds) != last.Certificate.BenchedTwice.Value {
		t.Errorf("%d and %d people sit out twice running", TwicePeople(p, first.Rounds), TwicePeople(p, last.Rounds))
	}
	if plain := Certify(p, mustPlan(t, p, Budget{})); plain != last.Certificate {
		t.Errorf("the last way %+v is not what a plan is %+v", last.Certificate, plain)
	}
	if Choosable(nighttest.Club(24, 6, 8)) {
		t.Error("nobody sits out, and still there is a choice")
	}
}

// TestLevelAlternativesTradeMeetingsForEvenGames: from each step to the next fewer games have a sure winner, and more
// people meet again; never is it paid with partner repeats.
func TestLevelAlternativesTradeMeetingsForEvenGames(t *testing.T) {
	p := nighttest.Leveled(16, 4, 10)
	if !LevelsChoosable(p) || LevelsChoosable(nighttest.Club(16, 4, 10)) {
		t.Fatal("the choice is not where levels are")
	}
	steps, err := LevelAlternatives(t.Context(), p, Budget{})
	if err != nil || len(steps) < 2 {
		t.Fatalf("%d steps, %v", len(steps), err)
	}
	for k, a := range steps {
		c := a.Certificate
		if k > 0 {
			before := steps[k-1].Certificate
			if c.Levels.Onesided >= before.Levels.Onesided || c.MeetingEvenness.Value < before.MeetingEvenness.Value {
				t.Errorf("%s: %d one-sided games and %d repeated meetings after %d and %d", a.Leveling,
					c.Levels.Onesided, c.MeetingEvenness.Value, before.Levels.Onesided, before.MeetingEvenness.Value)
			}
		}
		if c.PartnerRepeats.Value > 0 {
			t.Errorf("%s: paid with %d partner repeats", a.Leveling, c.PartnerRepeats.Value)
		}
		for _, v := range Audit(p, a.Rounds) {
			t.Error(v.Text)
		}
	}
	if last := steps[len(steps)-1]; last.Certificate.Levels.Onesided != 0 {
		t.Errorf("%d games with a sure winner at the last step", last.Certificate.Levels.Onesided)
	}
}
