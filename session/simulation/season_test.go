package simulation

import (
	"os"
	"testing"

	"club/quadrille/session"
)

// TestASeasonIsRemembered: of those who were partners on the last night at most half as many are so again, as if the
// nights before were forgotten, and no night is judged otherwise for it. In the rolling flow, in which one thing leads to
// another, partner repeats stay as they are. With QUADRILLE_LONG=1 over 50 nights.
func TestASeasonIsRemembered(t *testing.T) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		s := Season{People: 60, Each: 24, Courts: 5, Rounds: 8, Nights: 6, Flow: flow, Seed: 1}
		if os.Getenv("QUADRILLE_LONG") != "" {
			s.Nights = 50
		}
		remembered, err := s.Play()
		if err != nil {
			t.Fatal(err)
		}
		s.Forget = true
		forgotten, err := s.Play()
		if err != nil {
			t.Fatal(err)
		}
		with, without := Again(remembered), Again(forgotten)
		t.Logf("%s: %d pairs are partners on two nights running, without memory %d", flow, with, without)
		if without == 0 || 2*with > without {
			t.Errorf("%s: %d pairs are partners on two nights running, without memory %d", flow, with, without)
		}
		more := 0
		for i := range remembered {
			if flow == session.Rounds && !remembered[i].Alike(forgotten[i]) {
				t.Errorf("night %d is judged as\n%+v\nwithout memory as\n%+v", i+1, remembered[i].Certificate, forgotten[i].Certificate)
			}
			more += remembered[i].Certificate.PartnerRepeats.Value - forgotten[i].Certificate.PartnerRepeats.Value
		}
		if more > s.Nights/6 {
			t.Errorf("%s: %d partner repeats more within the nights", flow, more)
		}
	}
}

// TestRatingsMakeGamesEven: in a club that knows nobody's level the stronger team of a game is less likely to win once
// teams are balanced by ratings, and people meet no less for it. With QUADRILLE_LONG=1 over 200 nights of clubs whose
// people are alike, as usual and very unlike.
func TestRatingsMakeGamesEven(t *testing.T) {
	s := Season{People: 40, Each: 20, Courts: 5, Rounds: 7, Nights: 8, Flow: session.Rounds, Spread: 1, Seed: 2}
	spreads := []float64{1}
	if os.Getenv("QUADRILLE_LONG") != "" {
		s, spreads = Season{People: 60, Each: 24, Courts: 5, Rounds: 8, Nights: 200, Flow: session.Rounds, Seed: 1}, []float64{0.3, 0.6, 1}
	}
	for _, s.Spread = range spreads {
		var chance [2]float64
		var meetings, repeats [2]int
		for k, rated := range []bool{false, true} {
			s.Rated = rated
			nights, err := s.Play()
			if err != nil {
				t.Fatal(err)
			}
			for _, n := range nights {
				if n.Stronger < 0.5 || n.Stronger > 1 {
					t.Errorf("the stronger team wins with %.3f", n.Stronger)
				}
				chance[k] += n.Stronger / float64(len(nights))
				meetings[k] += n.Certificate.MeetingEvenness.Value
				repeats[k] += n.Certificate.PartnerRepeats.Value
			}
		}
		t.Logf("levels differ by %.1f: the stronger team has %.3f in the mean, and %.3f by ratings; meetings %v, repeats %v", s.Spread, chance[0], chance[1], meetings, repeats)
		if chance[1] > chance[0]-0.015 || meetings[1] > meetings[0]+max(4, meetings[0]/20) || repeats[1] > repeats[0] {
			t.Errorf("levels differ by %.1f: the stronger team has %.3f in the mean, and %.3f by ratings; meetings %v, repeats %v", s.Spread, chance[0], chance[1], meetings, repeats)
		}
	}
}
