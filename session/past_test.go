package session

import (
	"testing"
	"time"
)

// TestPastIsTheNightAsItEnded: nothing of a later night is in it, its own actions are, and no night that never was
// is found.
func TestPastIsTheNightAsItEnded(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	clock.now = clock.now.Add(11 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 7)})
	must(t, d, EndNight{})
	first, actions := d.Ledger().Club().Night(), len(d.Ledger().Actions())
	clock.now = clock.now.Add(7 * 24 * time.Hour)
	must(t, d, OpenNight{Name: "second", Settings: DefaultSettings(3), Courts: 2})
	must(t, d, AddGuest{Name: "Late Comer"})
	past, err := d.Past(first.ID)
	if err != nil {
		t.Fatal(err)
	}
	n := past.Club().Night()
	if n.ID != first.ID || n.IsOpen() || len(n.Games) != 1 || len(past.Club().Nights) != 1 || len(past.Actions()) != actions {
		t.Errorf("the past night is %+v with %d actions", n, len(past.Actions()))
	}
	if _, known := past.Club().Named("Late Comer"); known {
		t.Error("somebody of a later night is in it")
	}
	if _, err := d.Past(7); err == nil {
		t.Error("a night that never was is found")
	}
	if now, err := d.Past(d.Ledger().Club().Night().ID); err != nil || now.Last() != d.Ledger().Last() {
		t.Errorf("the newest night is not the ledger itself: %v", err)
	}
}
