package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/store"
)

// oldFile is a copy of a file of testdata that the program wrote long ago.
func oldFile(t *testing.T, name string) (path string, text []byte) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "format1", name))
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, text
}

// A file that an earlier version wrote is sound, shows the same standings and the same events, and
// takes another night behind the old one.
func TestAFileOfFormat1ShowsTheSameNight(t *testing.T) {
	path, _ := oldFile(t, "club.qdb")
	_, standings := oldFile(t, "standings.json")
	_, events := oldFile(t, "events.jsonl")
	same := func(want []byte, args ...string) {
		t.Helper()
		if out, errs, code := quadrille(t, "", append(args, "--data", path)...); code != exitFine || out != string(want) {
			t.Errorf("%v exits with %d: %s%s", args, code, errs, out)
		}
	}
	same(standings, "standings", "--json")
	same(events, "export")
	keep(t, path, session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1}, session.AddGuest{Name: "Newcomer"}, session.EndNight{})
	same(standings, "standings", "--json", "--night", "1")
	if r, err := store.Check(path); err != nil || !r.Sound() || r.Last != 205 {
		t.Errorf("after another night: %s%v", r, err)
	}
}

// The events of an earlier version make the same club in an empty file.
func TestAnExportOfFormat1MakesTheSameClub(t *testing.T) {
	old, events := oldFile(t, "events.jsonl")
	path := filepath.Join(t.TempDir(), "club.qdb")
	if _, errs, code := quadrille(t, "", "import", old, "--data", path); code != exitFine {
		t.Fatal(errs)
	}
	if out, errs, code := quadrille(t, "", "export", "--data", path); code != exitFine || out != string(events) {
		t.Errorf("the export differs: %s", errs)
	}
}

// A rolling night that an earlier version began, with everything that its desk could write, is sound, stands as it stood,
// and goes on to its end.
func TestANightOfFormat1GoesOn(t *testing.T) {
	path, _ := oldFile(t, "rolling.qdb")
	_, standings := oldFile(t, "rolling-standings.json")
	_, events := oldFile(t, "rolling.jsonl")
	for _, c := range []struct {
		want []byte
		args []string
	}{{standings, []string{"standings", "--json"}}, {events, []string{"export"}}} {
		if out, errs, code := quadrille(t, "", append(c.args, "--data", path)...); code != exitFine || out != string(c.want) {
			t.Errorf("%v exits with %d: %s%s", c.args, code, errs, out)
		}
	}
	s, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	d, err := session.NewDesk(s, time.Now, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	do := func(c session.Command) {
		t.Helper()
		if _, err := d.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
	n := d.Ledger().Night()
	if len(n.Games) != 12 || len(n.Running()) != 2 || n.Settings.Flow != session.Rolling || n.Count(session.Here) != 10 {
		t.Fatalf("%d games, %d of them running, %s, %d here", len(n.Games), len(n.Running()), n.Settings.Flow, n.Count(session.Here))
	}
	do(session.EndCalls{})
	for _, g := range n.Running() {
		final, err := g.Rules.Final(11, 4, scoring.Played)
		if err != nil {
			t.Fatal(err)
		}
		do(session.FinishGame{Game: g.ID, Final: final})
	}
	do(session.EndNight{})
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if r, err := store.Check(path); err != nil || !r.Sound() {
		t.Errorf("after its end: %s%v", r, err)
	}
}
