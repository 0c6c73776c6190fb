package session

import (
	"strings"
	"testing"
)

// TestHowManyNightsCountIsKept: by the club, whatever goes on, undone like anything else, and told in words.
func TestHowManyNightsCountIsKept(t *testing.T) {
	d, log, _ := newTestDesk(t)
	refused(t, d, ChooseLeague{-1}, "or 0 for all")
	refused(t, d, ChooseLeague{MaxBest + 1}, "or 0 for all")
	refused(t, d, ChooseLeague{}, "all nights count for the league already")
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, ChooseLeague{8})
	refused(t, d, ChooseLeague{8}, "the best 8 nights of each person count for the league already")
	if d.Ledger().Club().Best != 8 || !strings.Contains(d.Ledger().Newest(), "the best 8 nights") {
		t.Errorf("%d nights count, told as %q", d.Ledger().Club().Best, d.Ledger().Newest())
	}
	must(t, d, Undo{})
	if d.Ledger().Club().Best != 0 {
		t.Errorf("after the undo %d nights count", d.Ledger().Club().Best)
	}
	must(t, d, Redo{}, EndNight{})
	checkReplay(t, d, log)
	if d.Ledger().Club().Best != 8 {
		t.Errorf("after the night %d nights count", d.Ledger().Club().Best)
	}
}
