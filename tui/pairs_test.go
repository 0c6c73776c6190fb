package tui

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// TestBothOfASetPairCanBeReadInTheStandings, however long their names are; where there is room, in full.
func TestBothOfASetPairCanBeReadInTheStandings(t *testing.T) {
	s := newStage(t)
	settings := session.DefaultSettings(7)
	settings.Format = scheduler.Pairs
	s.do(session.OpenNight{Name: "Pairs", Settings: settings, Courts: 1})
	for _, name := range []string{"Gunnhild Thorvaldsdottir", "Kwame Osei", "Bea Lund", "Fatima Alaoui"} {
		s.do(session.AddGuest{Name: name})
	}
	s.do(session.CallRound{})
	s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 7)})
	s.press("s")
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		s.resize(size[0], size[1]).shows("Gunnhild", "Kwame")
	}
	s.shows("Gunnhild Thorvaldsdottir & Kwame Osei ")
}
