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
	if first.Benching != StrictBench || first.Once(16) != 0 || last.Once(16) != last.Certificate.BenchedTwice.Value {
		t.Errorf("%d and %d people sit out twice running", first.Once(16), last.Once(16))
	}
	if plain := Certify(p, mustPlan(t, p, Budget{})); plain != last.Certificate {
		t.Errorf("the last way %+v is not what a plan is %+v", last.Certificate, plain)
	}
	if Choosable(nighttest.Club(24, 6, 8)) {
		t.Error("nobody sits out, and still there is a choice")
	}
}
