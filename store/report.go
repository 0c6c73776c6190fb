package store

import (
	"fmt"
	"strings"
)

// maxFaults is the most sentences of one sort that a report lists.
const maxFaults = 1000

// Report is what reading all of a file has shown.
type Report struct {
	Path    string
	Head    Head     // zero if the head is damaged
	Records uint64   // sound records
	Last    uint64   // Seq of the newest record
	Bytes   int64    // size of the file
	Free    int64    // of these, bytes that wait to be used again
	Faults  []string // what is wrong, in sentences
	Notes   []string // what is worth knowing though nothing is wrong
	OpenEnd bool     // records after Last may be missing: nothing tells how many there were

	noted    uint64 // the number of the newest record as the file has noted it, 0 if it has not
	sum      uint32 // checksum of the newest record
	snapshot []byte // as the file keeps it, nil if it has none
	moved    bool   // another process wrote meanwhile, so that nothing here can be relied on
}

// Sound tells whether nothing is wrong.
func (r Report) Sound() bool { return len(r.Faults) == 0 }

// certain tells whether the file's own note of the newest record's number shows where the log ends.
func (r Report) certain() bool { return r.noted > 0 && r.noted >= r.Last }

// Sparse tells whether compacting the file pays: it is large enough to care, and more than half of it
// waits to be used again. A log only grows, so that this is rare: what leaves room behind are the
// snapshots, and actions that were far longer than usual.
func (r Report) Sparse() bool {
	const least = 1 << 20
	return r.Bytes >= least && r.Free > r.Bytes/2
}

// Report reads all of the file as it is now and says what is in it.
func (s *Store) Report() (Report, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if s.closed {
		return Report{}, ErrClosed
	}
	return inspectShared(s.path, func() func(frame) { return func(frame) {} })
}

// String tells the report in lines.
func (r Report) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %d events in %d KiB, %d KiB of them free\n", r.Path, r.Records, r.Bytes>>10, r.Free>>10)
	for _, n := range r.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	for _, f := range r.Faults {
		fmt.Fprintf(&b, "wrong: %s\n", f)
	}
	switch {
	case r.OpenEnd:
		fmt.Fprintf(&b, "%s: events after %d may be missing\n", map[bool]string{true: "note", false: "wrong"}[r.Sound()], r.Last)
	case r.Sound():
		b.WriteString("nothing is wrong\n")
	}
	return b.String()
}
