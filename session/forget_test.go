package session

import (
	"encoding/json"
	"slices"
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
		change, label := forgetting(t, NewForgotten(name), log)
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

// forgetting is how somebody is forgotten in a log. Change is nil where nothing is to be done.
func forgetting(t *testing.T, f *Forgotten, log Log) (change func(Record) Record, label string) {
	t.Helper()
	l, err := Load(log.Records(1))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Learn(log); err != nil {
		t.Fatal(err)
	}
	if change, label, err = f.In(log, l.Club()); err != nil {
		t.Fatal(err)
	}
	return change, label
}

// copied is a log after a change.
func copied(t *testing.T, log Log, change func(Record) Record) *MemoryLog {
	t.Helper()
	out := &MemoryLog{}
	for r, err := range log.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		if err := out.Append([]Record{change(r)}); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// texts is all that a log has in writing.
func texts(t *testing.T, log *MemoryLog) string {
	t.Helper()
	text, err := json.Marshal(log.records)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A person is found by any name that the person ever had, in any of the logs, and all of the person's
// names go from all of them; whoever has one of those names by now keeps it.
func TestAPersonIsForgottenInEveryLogThatKnowsTheName(t *testing.T) {
	d, log, _ := newTestDesk(t)
	must(t, d, OpenNight{Name: "Ann Otter's night", Settings: DefaultSettings(1), Courts: 1}, AddGuest{Name: "Ann Otter"}, AddGuest{Name: "Bea"})
	backup := copied(t, log, func(r Record) Record { return r })
	ann, _ := d.Ledger().Club().Named("Ann Otter")
	must(t, d, ChangePerson{Person{ID: ann.ID, Name: "Ann Other"}}, AddGuest{Name: "Cai"})
	for _, name := range []string{"Ann Other", "ann otter"} {
		f := NewForgotten(name)
		for _, l := range []*MemoryLog{log, backup} {
			if err := f.Learn(l); err != nil {
				t.Fatal(err)
			}
		}
		for i, l := range []*MemoryLog{log, backup} {
			change, label := forgetting(t, f, l)
			if change == nil || label != "Somebody 1" {
				t.Fatalf("%s, log %d: the label is %q", name, i, label)
			}
			after := copied(t, l, change)
			if text := texts(t, after); strings.Contains(text, "Ann") || !strings.Contains(text, "Somebody 1's night") || !strings.Contains(text, "Bea") {
				t.Errorf("%s, log %d: %s", name, i, text)
			}
			if again, _ := forgetting(t, f, after); again != nil {
				t.Errorf("%s, log %d: there is still something to do", name, i)
			}
		}
	}
	f := NewForgotten("Dov")
	if change, _ := forgetting(t, f, log); f.Known() || change != nil {
		t.Error("somebody is known whom nobody added")
	}
}

// Where the club file has forgotten a person and a backup has not, the name is found there.
func TestANameThatOnlyABackupHasIsFound(t *testing.T) {
	d, log, _ := newTestDesk(t)
	must(t, d, OpenNight{Name: "night", Settings: DefaultSettings(1), Courts: 1}, AddGuest{Name: "Ann Other"})
	f := NewForgotten("Ann Other")
	change, _ := forgetting(t, f, log)
	club := copied(t, log, change)
	f = NewForgotten("Ann Other")
	for _, l := range []*MemoryLog{club, log} {
		if err := f.Learn(l); err != nil {
			t.Fatal(err)
		}
	}
	if change, _ := forgetting(t, f, club); change != nil {
		t.Error("the club file has it still")
	}
	change, label := forgetting(t, f, log)
	if change == nil || label != "Somebody 1" || !slices.Equal(f.Names(), []string{"Ann Other"}) {
		t.Errorf("the label is %q, the names are %q", label, f.Names())
	}
	if !f.MentionedIn([]byte(`x{"name":"ANN OTHER"}`)) || f.MentionedIn([]byte("Joann Others")) {
		t.Error("a mention is not told from no mention")
	}
}

// Two that were merged are forgotten as one, whichever of the names is asked for.
func TestWhoWasMergedIsForgottenUnderBothNames(t *testing.T) {
	for _, name := range []string{"Ann Other", "Anja Oder"} {
		d, log, _ := newTestDesk(t)
		must(t, d, OpenNight{Name: "night", Settings: DefaultSettings(1), Courts: 1}, AddGuest{Name: "Ann Other"}, AddGuest{Name: "Anja Oder"}, AddGuest{Name: "Bea"})
		from, _ := d.Ledger().Club().Named("Anja Oder")
		into, _ := d.Ledger().Club().Named("Ann Other")
		must(t, d, MergePeople{From: from.ID, Into: into.ID})
		change, _ := forgetting(t, NewForgotten(name), log)
		if change == nil {
			t.Fatalf("%s is not found", name)
		}
		after := copied(t, log, change)
		if text := texts(t, after); strings.Contains(text, "Ann Other") || strings.Contains(text, "Anja Oder") {
			t.Errorf("%s: a name is left in %s", name, text)
		}
		if _, err := Load(after.Records(1)); err != nil {
			t.Error(err)
		}
	}
}
