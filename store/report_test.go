package store

import (
	"strings"
	"testing"
)

// TestCompactingPaysForALargeFileThatIsMostlyFree, from one MiB on and above a half.
func TestCompactingPaysForALargeFileThatIsMostlyFree(t *testing.T) {
	for _, c := range []struct {
		bytes, free int64
		pays        bool
	}{{1 << 20, 1<<19 + 1, true}, {1 << 20, 1 << 19, false}, {1<<20 - 1, 1<<20 - 2, false}, {8 << 20, 5 << 20, true}} {
		if got := (Report{Bytes: c.bytes, Free: c.free}).Sparse(); got != c.pays {
			t.Errorf("%d of %d bytes free: %t", c.free, c.bytes, got)
		}
	}
}

// TestAReportTellsItsNotes, and is certain of the end by a note that is not behind the newest event.
func TestAReportTellsItsNotes(t *testing.T) {
	r := Report{Faults: []string{"event 3 is damaged"}, Notes: []string{"the file is in use"}}
	if text := r.String(); !strings.Contains(text, "event 3 is damaged") || !strings.Contains(text, "note: the file is in use") {
		t.Error(text)
	}
	for _, c := range []struct {
		noted, last uint64
		certain     bool
	}{{0, 0, false}, {1, 1, true}, {1, 0, true}, {4, 5, false}, {6, 5, true}} {
		if got := (Report{noted: c.noted, Last: c.last}).certain(); got != c.certain {
			t.Errorf("noted %d, last %d: %t", c.noted, c.last, got)
		}
	}
}
