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
