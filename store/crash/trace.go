package crash

import (
	"fmt"
	"path/filepath"
)

// Kind says what an operation does.
type Kind int

// The kinds of operations that reach a disk, and Ack, by which the program says what is durable.
const (
	Create   Kind = iota // a new file
	Write                // bytes into a file
	Truncate             // a file gets another size
	Sync                 // all of a file is flushed
	SyncDir              // all names in a folder are flushed
	Link                 // a file gets another name
	Rename               // a file changes its name
	Unlink               // a name is taken away
	Ack                  // the program has acknowledged a record
)

// Op is one operation, in the order of a trace.
type Op struct {
	Kind   Kind
	File   int    // which file, numbered in the order in which they were made
	Path   string // a name in the recorded folder
	To     string // the new name of Link and Rename
	Offset int64
	Data   []byte
	Size   int64
	Covers int    // of Sync and SyncDir: how many operations had ended when the flush began
	Last   uint64 // of Ack: the newest acknowledged record

	parts []part // of a Write that was torn, in place of Data
}

// A part is some sectors of a write.
type part struct {
	offset int64
	data   []byte
}

// Trace is what a program did to the files below a folder.
type Trace struct {
	Ops []Op
}

// Acked is the newest record that was acknowledged before operation at.
func (t *Trace) Acked(at int) uint64 {
	last := uint64(0)
	for _, op := range t.Ops[:at] {
		if op.Kind == Ack {
			last = max(last, op.Last)
		}
	}
	return last
}

// Changes lists the moments at which a crash can leave something new: before each operation that changes
// the disk, after each flush, and after the end.
func (t *Trace) Changes() []int {
	var out []int
	for i, op := range t.Ops {
		if op.Kind != Ack {
			out = append(out, i)
		}
	}
	return append(out, len(t.Ops))
}

// String counts the operations.
func (t *Trace) String() string {
	count := map[Kind]int{}
	for _, op := range t.Ops {
		count[op.Kind]++
	}
	return fmt.Sprintf("%d writes, %d flushes of files and %d of folders, %d files made, %d names changed, %d acknowledgements",
		count[Write]+count[Truncate], count[Sync], count[SyncDir], count[Create], count[Link]+count[Rename]+count[Unlink], count[Ack])
}

// dirOf is the folder of a name.
func dirOf(path string) string { return filepath.Dir(path) }
