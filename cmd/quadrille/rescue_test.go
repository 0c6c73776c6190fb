package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// A file in which a record is damaged is told as such; what a rescue makes of it is sound, says what
// was lost and what rests on that, and goes on.
func TestARescuedFileIsSoundAndSaysWhatIsLost(t *testing.T) {
	path := fileWithANight(t)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	damaged := bytes.ReplaceAll(data, []byte(`{"round":3,`), []byte(`{"round":8,`))
	if bytes.Equal(damaged, data) {
		t.Fatal("the file has no third round to damage")
	}
	if err := os.WriteFile(path, damaged, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, errs, code := quadrille(t, "", "check", path); code != exitRefused || !strings.Contains(out, "wrong: event ") || !strings.Contains(errs, "quadrille rescue") {
		t.Fatalf("check exits with %d and says %s%s", code, out, errs)
	}
	saved := path + ".saved"
	if out, errs, code := quadrille(t, "", "rescue", path, saved); code != exitRefused || !strings.Contains(out, " is lost") || !strings.Contains(errs, "quadrille: 1 event is lost") {
		t.Fatalf("rescue exits with %d and says %s%s", code, out, errs)
	}
	out, errs, code := quadrille(t, "", "check", saved)
	for _, want := range []string{
		"nothing is wrong", "played again: 16 people, 1 night, ", "note: 1 event was lost before this file was rescued",
		"note: not used, since it rests on a lost event: event ",
	} {
		if code != exitFine || !strings.Contains(out, want) {
			t.Fatalf("check exits with %d and says %s%s, want %q", code, out[:min(len(out), 600)], errs, want)
		}
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(after, damaged) {
		t.Errorf("the damaged file was touched (%v)", err)
	}
}
