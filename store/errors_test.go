package store

import (
	"strings"
	"testing"
)

// TestDamageIsToldInFew names three faults and counts the others, in the words of one or of several.
func TestDamageIsToldInFew(t *testing.T) {
	for _, c := range []struct {
		faults []string
		want   string
	}{
		{[]string{"page 1 is torn"}, "club.qdb is damaged: page 1 is torn; see all"},
		{[]string{"a", "b", "c"}, "damaged: a; b; c; see all"},
		{[]string{"a", "b", "c", "d"}, "damaged: a; b; c; and 1 more fault; see all"},
		{[]string{"a", "b", "c", "d", "e"}, "damaged: a; b; c; and 2 more faults; see all"},
	} {
		text := (&DamagedError{Path: "club.qdb", Faults: c.faults}).Error()
		if !strings.Contains(text, c.want) || !strings.Contains(text, "quadrille rescue club.qdb NEW") {
			t.Errorf("%q, want %q", text, c.want)
		}
	}
}

// TestFilesWithoutAName are called this file.
func TestFilesWithoutAName(t *testing.T) {
	for _, err := range []error{&NewerError{What: "file format", Found: 9, Known: 2}, &NotOursError{Why: "it is empty"}, &DamagedError{Faults: []string{"x"}}} {
		if !strings.HasPrefix(err.Error(), "this file ") {
			t.Errorf("%v", err)
		}
	}
	if err := (&NotOursError{"club.qdb", "it is empty"}); err.Error() != "club.qdb is no club file: it is empty" {
		t.Error(err)
	}
}
