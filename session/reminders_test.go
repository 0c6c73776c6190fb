package session

import "testing"

// The club's wish holds for all nights to come, and is undone and replayed like anything else.
func TestRemindersAreTheClubsChoice(t *testing.T) {
	d, log, _ := newTestDesk(t)
	refused(t, d, ChooseReminders{Off: false}, "so already")
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, ChooseReminders{Off: true}, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	if !d.Ledger().Club().NoReminders {
		t.Error("the next night reminds again")
	}
	must(t, d, ChooseReminders{Off: false}, Undo{})
	if !d.Ledger().Club().NoReminders {
		t.Error("the undo did not bring back the choice")
	}
	checkReplay(t, d, log)
}
