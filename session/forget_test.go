package session

import (
	"strings"
	"testing"

	"club/quadrille/scoring"
)

// TestForgettingLeavesTheWordsOfTheFileAlone: names that are also words of the file format, or parts of
// them, can be forgotten, and the log still folds to the same results.
func TestForgettingLeavesTheWordsOfTheFileAlone(t *testing.T) {
	for _, name := range []string{"Ed", "A", "Net", "Rounds", "side-out", "played"} {
		d, log, _ := newTestDesk(t)
		settings := DefaultSettings(1)
		settings.Rounds = 1
		must(t, d, OpenNight{Name: "Party of " + name, Settings: settings, Courts: 1}, AddGuest{Name: name})
		for _, other := range []string{"Bea", "Cai", "Dov"} {
			must(t, d, AddGuest{Name: other})
		}
		must(t, d, CallRound{}, ScoreRally{1, scoring.Rally{Won: scoring.A, Fault: scoring.Net}},
			NoteGame{1, scoring.Entry{Kind: scoring.Remark, Note: "so says " + name}},
			HoldPlay{"injury of " + name}, ResumePlay{}, FinishGame{Game: 1, Final: final(t, 11, 3)})
		p, _ := d.Ledger().Club().Named(name)
		change, label, err := Forget(d.Ledger().Club(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		after := &MemoryLog{}
		for r, err := range log.Records(1) {
			if err != nil {
				t.Fatal(err)
			}
			if err := after.Append([]Record{change(r)}); err != nil {
				t.Fatal(err)
			}
		}
		l, err := Load(after.Records(1))
		if err != nil {
			t.Fatalf("%s is forgotten and the log broken: %v", name, err)
		}
		n := l.Night()
		if got := n.Name; got != "Party of "+label {
			t.Errorf("the night is called %q", got)
		}
		if got := n.Games[0].Sheet().Entries[1].Note; got != "so says "+label {
			t.Errorf("the sheet says %q", got)
		}
		if g := n.Games[0]; g.Final.String() != "11-3" || !strings.Contains(l.Club().Name(p.ID), "Somebody") {
			t.Errorf("the game ended %v with %s in it", g.Final, l.Club().Name(p.ID))
		}
	}
}
