package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/session"
	"club/quadrille/store"
)

// The file of a real night is damaged in 18 ways (900 with QUADRILLE_LONG=1): bits, pages, the end of it,
// pages of another club. Either it opens with every record, or what is wrong is told; then what a rescue
// saves opens as a night, has no record that was never written, and whatever is missing is named.
func TestADamagedNightIsRescuedAndWhatIsLostIsNamed(t *testing.T) {
	trials := 18
	if os.Getenv("QUADRILLE_LONG") == "1" {
		trials = 900
	}
	ours, theirs := bytesOf(t, fileWithANight(t)), bytesOf(t, anotherClub(t))
	path := filepath.Join(t.TempDir(), "club.qdb")
	if err := os.WriteFile(path, ours, 0o600); err != nil {
		t.Fatal(err)
	}
	want := map[uint64]string{}
	for _, r := range records(t, path) {
		want[r.Seq] = fmt.Sprint(r)
	}
	dice := rand.New(rand.NewPCG(3, 4))
	harmless, whole, open := 0, 0, 0
	for i := range trials {
		if err := os.WriteFile(path, harm(dice, i, ours, theirs), 0o600); err != nil {
			t.Fatal(err)
		}
		kept, err := store.Open(path)
		if err == nil {
			notes := strings.Join(kept.Notes(), " ")
			last := kept.Last()
			if err := kept.Close(); err != nil {
				t.Fatal(err)
			}
			if last < uint64(len(want)) && !strings.Contains(notes, "headers was damaged") {
				t.Fatalf("damage %d: it opens with %d of %d records, and says %q", i, last, len(want), notes)
			}
			harmless++
			continue
		}
		to := filepath.Join(t.TempDir(), "rescued.qdb")
		r, err := store.Rescue(path, to)
		if err != nil {
			t.Fatalf("damage %d: %v", i, err)
		}
		missing := mustBeOurs(t, i, to, want)
		if missing > 0 && notAll(r) == nil {
			t.Fatalf("damage %d: %d records are missing, and nothing says so:\n%s", i, missing, r)
		}
		if missing == 0 {
			whole++
		}
		if r.OpenEnd {
			open++
		}
	}
	t.Logf("of %d damages %d were harmless, %d were rescued whole, and after %d records may be missing at the end", trials, harmless, whole, open)
}

// mustBeOurs opens a rescued file as a night and gives how many records it has not.
func mustBeOurs(t *testing.T, damage int, path string, want map[uint64]string) (missing int) {
	t.Helper()
	view, err := store.Look(path)
	if err != nil {
		t.Fatalf("damage %d: %v", damage, err)
	}
	if _, err := session.Open(view); err != nil {
		t.Fatalf("damage %d: the rescued file does not open: %v", damage, err)
	}
	missing = len(want)
	for r, err := range view.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		if r.Kind == store.LostKind {
			continue
		}
		if fmt.Sprint(r) != want[r.Seq] {
			t.Fatalf("damage %d: record %d was never written: %+v", damage, r.Seq, r)
		}
		missing--
	}
	return missing
}

// harm is one way in which the bytes of a file can come to harm.
func harm(dice *rand.Rand, i int, ours, theirs []byte) []byte {
	page := os.Getpagesize()
	used := len(bytes.TrimRight(ours, "\x00"))
	at := 2*page + dice.IntN(used-2*page)
	out := bytes.Clone(ours)
	switch i % 9 {
	case 0:
		out[at] ^= 1 << dice.IntN(8)
	case 1:
		return out[:at]
	case 2:
		clear(out[at/page*page:][:page])
	case 3: // pages of another club in the same place, as a mixed-up disk has them
		for k := range 1 + dice.IntN(4) {
			if from := at/page*page + k*page; from+page <= min(len(out), len(theirs)) {
				copy(out[from:from+page], theirs[from:])
			}
		}
	case 4: // and anywhere
		from := dice.IntN(len(theirs)/page) * page
		copy(out[at/page*page:][:page], theirs[from:])
	case 5: // the end of another club's file behind ours, of which most is left
		at = (used/3*2 + dice.IntN(used/3)) / page * page
		return append(out[:at], theirs[min(at, len(theirs)):]...)
	case 6: // the end is gone, and a header
		out[dice.IntN(2)*page+16+dice.IntN(64)] ^= 1 << dice.IntN(8)
		return out[:at]
	case 7:
		clear(out[at:min(len(out), at+1+dice.IntN(8*page))])
	case 8: // a piece of the file has slipped
		copy(out[at:], ours[at-512*dice.IntN(8):])
	}
	return out
}

func bytesOf(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// anotherClub is the file of another club with a longer night.
func anotherClub(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "theirs.qdb")
	args := []string{"simulate", "--players", "18", "--courts", "4", "--rounds", "10", "--by-rally", "4", "--seed", "9", "--data", path}
	if _, errs, code := quadrille(t, "", args...); code != exitFine {
		t.Fatal(errs)
	}
	return path
}
