package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/events"
	"club/quadrille/session"
)

// deskOn is a desk on a log in memory with a closed night of four people in it.
func deskOn(t testing.TB) (*session.Desk, *session.MemoryLog) {
	t.Helper()
	log, now := &session.MemoryLog{}, time.Date(2026, 1, 8, 19, 0, 0, 0, time.UTC)
	desk, err := session.NewDesk(log, func() time.Time { return now }, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	commands := []session.Command{session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1}}
	for _, name := range []string{"Ada", "Ben", "Cy", "Zoë"} {
		commands = append(commands, session.AddGuest{Name: name})
	}
	for _, c := range append(commands, session.EndNight{}) {
		if _, err := desk.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	return desk, log
}

// exported is what an export of a log writes.
func exported(t testing.TB, log session.Log) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := session.ExportEvents(&out, log.Records(1)); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// FuzzImport takes in whatever bytes there may be, as an export of another laptop: it is refused, or
// it is joined and the log of ours can be read again, exported, and joined a second time for nothing.
func FuzzImport(f *testing.F) {
	_, other := deskOn(f)
	f.Add(exported(f, other))
	f.Add([]byte(`{"quadrille":"events","format":1}` + "\n"))
	f.Add(bytes.ReplaceAll(exported(f, other), []byte("Ada"), []byte(`\u001b[2J`+"\u009b"+`31mEve`)))
	f.Fuzz(func(t *testing.T, text []byte) {
		theirs, err := events.Read(bytes.NewReader(text))
		if err != nil {
			return
		}
		desk, log := deskOn(t)
		before := log.Last()
		if _, _, err := desk.Join(theirs, session.TwoAlike); err != nil {
			if log.Last() != before {
				t.Fatalf("refused with %v, and still %d records were taken", err, log.Last()-before)
			}
			return
		}
		l, err := session.Load(log.Records(1))
		if err != nil {
			t.Fatalf("what was joined cannot be read again: %v", err)
		}
		state, err := json.Marshal(l.Club())
		if err != nil {
			t.Fatal(err)
		}
		if got := printable(string(state)); got != string(state) {
			t.Fatalf("a screen would be given %q", state)
		}
		if out := string(exported(t, log)); printable(out) != out {
			t.Fatalf("an export would print %q", out)
		}
	})
}

// What foreign names hold never reaches a screen, whichever command shows them.
func TestForeignNamesReachNoScreen(t *testing.T) {
	_, log := deskOn(t)
	text := bytes.ReplaceAll(exported(t, log), []byte("Ada"), []byte(`\u001b]0;owned\u0007\u001b[2J`+"\u009b"+`Eve`))
	data := t.TempDir() + "/club.qdb"
	if out, errs, code := quadrille(t, string(text), "import", "-", "--data", data); code != exitFine {
		t.Fatalf("%s%s", out, errs)
	}
	for _, args := range [][]string{
		{"standings"}, {"standings", "--json"}, {"standings", "--csv"}, {"export"}, {"export", "--people"}, {"export", "--games"}, {"check"},
	} {
		out, errs, code := quadrille(t, "", append(args, "--data", data)...)
		if args[0] == "check" {
			out, errs, code = quadrille(t, "", "check", data)
		}
		if code != exitFine || printable(out) != out || printable(errs) != errs {
			t.Errorf("%s exits with %d and writes %q %q", strings.Join(args, " "), code, out, errs)
		}
	}
	if out, _, _ := quadrille(t, "", "export", "--people", "--data", data); !strings.Contains(out, "\nEve,") {
		t.Errorf("the name that is left is not Eve:\n%s", out)
	}
}

// A roster of names that are nearly known is asked about, and --same is the answer.
func TestImportAsksAboutNamesThatAreAlike(t *testing.T) {
	open := func() (data string) {
		data = t.TempDir() + "/club.qdb"
		if err := work(data, func(desk *session.Desk) error {
			for _, c := range []session.Command{session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1}, session.AddGuest{Name: "Anna Berg"}} {
				if _, err := desk.Do(c); err != nil {
					return err
				}
			}
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		return data
	}
	const roster = "name;Hat\nAnna Bergh;\nCy Crane;\n"
	data := open()
	_, errs, code := quadrille(t, roster, "import", "-", "--data", data)
	if code != exitRefused || !strings.Contains(errs, `"Anna Bergh" on line 2 is nearly Anna Berg, whom the club knows: say whether that is one person or two: add --same one or --same two`) {
		t.Errorf("exits with %d: %s", code, errs)
	}
	for same, people := range map[string]int{"one": 2, "two": 3} {
		data := open()
		_, errs, code := quadrille(t, roster, "import", "-", "--same", same, "--data", data)
		out, _, _ := quadrille(t, "", "export", "--people", "--data", data)
		if n := strings.Count(out, "\n") - 1; code != exitFine || n != people || !strings.Contains(errs, "roster: not used: the column Hat") {
			t.Errorf("--same %s exits with %d and leaves %d people: %s", same, code, n, errs)
		}
	}
}
