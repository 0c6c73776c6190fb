package session

import (
	"testing"
	"time"
)

// Whoever is announced to leave only is not called expected: most often that person is here already.
func TestAnAnnouncementSaysWhatWasAnnounced(t *testing.T) {
	club := &Club{People: []Person{{ID: "p1", Name: "Eve"}}}
	at := time.Date(2026, 11, 26, 0, 30, 0, 0, time.UTC)
	for want, stays := range map[string][]Stay{
		"Eve expected":     {{}, {Due: at}, {From: 3}, {Due: at.Add(-time.Hour), Leaves: at}, {From: 2, Last: 5}},
		"Eve leaves early": {{Leaves: at}, {Last: 5}},
	} {
		for _, stay := range stays {
			if got := Describe(club, Action{Events: []Event{PersonExpected{"p1", stay}}}); got != want {
				t.Errorf("%+v is told as %q, want %q", stay, got, want)
			}
		}
	}
}
