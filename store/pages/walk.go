package pages

import (
	"bytes"
	"fmt"
)

// Fault is something in a file that is not as it should be.
type Fault struct {
	Page uint64
	What string
}

// Error says where and what.
func (f Fault) Error() string { return fmt.Sprintf("page %d: %s", f.Page, f.What) }

// Survey is what a walk through a file found.
type Survey struct {
	Faults  []Fault           // in the order in which they were met, at most [MaxFaults]
	Buckets []string          // names of the buckets that were found, at most [MaxFaults]
	Notes   map[string]uint64 // the number that each of these buckets keeps beside its entries, its sequence
	Used    uint64            // pages that hold content, with the two headers and the list of free pages
	Free    uint64            // pages that are free to be used again
}

// MaxFaults is the most faults that a walk lists: a file of garbage has no end of them.
const MaxFaults = 1000

// maxDepth bounds how deep pages and buckets nest. A tree of pages with two entries each that deep
// would be larger than any disk.
const maxDepth = 64

// Visit is called with every entry of a bucket. The bytes are valid until it returns.
type Visit func(bucket string, key, value []byte)

// Walk goes through all of the file, calls visit with every entry of every bucket, and checks the
// structure: that pages are what and where they should be, that keys ascend, that every page is
// either used once or free. It goes on after a fault with what it can still reach. Buckets inside
// of buckets have the names of both, joined by a slash.
func (f *File) Walk(visit Visit) Survey {
	w := &walk{file: f, visit: visit, survey: Survey{Notes: map[string]uint64{}}}
	w.state = make([]byte, min(f.header.pages, f.whole()))
	if have := f.whole(); have < f.header.pages {
		w.fault(have, "the file is cut short: it should have %d pages and has %d", f.header.pages, have)
	}
	w.headerPage(0)
	w.headerPage(1)
	w.tree(f.header.root, span{}, "", 0)
	w.freeList()
	w.leftOver()
	return w.survey
}

// What is known about a page.
const (
	unseen byte = iota
	used
	free
)

type walk struct {
	file    *File
	visit   Visit
	survey  Survey
	state   []byte   // of each page
	buffers [][]byte // to be used again
}

// A span is the range of keys that a page may hold, from lo on and before hi. Nil is no limit.
type span struct{ lo, hi []byte }

func (w *walk) fault(page uint64, format string, args ...any) {
	if len(w.survey.Faults) < MaxFaults {
		w.survey.Faults = append(w.survey.Faults, Fault{page, fmt.Sprintf(format, args...)})
	}
}

// claim notes that run pages from id on are used, and tells whether none of them was known before.
func (w *walk) claim(id, run uint64) bool {
	for i := id; i < min(id+run, uint64(len(w.state))); i++ {
		if w.state[i] != unseen {
			w.fault(i, "it is used twice")
			return false
		}
		w.state[i] = used
		w.survey.Used++
	}
	return true
}

// headerPage checks the page around a sound header. bbolt does not care when it opens a file, but
// its own check does.
func (w *walk) headerPage(id uint64) {
	w.claim(id, 1)
	if w.file.damaged[id] != nil {
		return
	}
	var b [pageHeader]byte
	if _, err := w.file.r.ReadAt(b[:], int64(id)*int64(w.file.header.pageSize)); err != nil {
		w.fault(id, "it cannot be read: %v", err)
	} else if self := order.Uint64(b[:]); self != id || parse(b[:]).kind != kindHeader {
		w.fault(id, "it does not take itself for header %d", id)
	}
}

// tree walks through the pages below id.
func (w *walk) tree(id uint64, keys span, bucket string, depth int) {
	if depth > maxDepth {
		w.fault(id, "it lies too deep")
		return
	}
	p, buf, err := w.file.read(id, w.take())
	defer w.give(buf)
	if err != nil {
		w.fault(id, "%v", err)
		return
	}
	if w.claim(id, uint64(len(p.data))/uint64(w.file.header.pageSize)) {
		w.page(p, id, keys, bucket, depth)
	}
}

// page walks through one page and what is below it.
func (w *walk) page(p page, id uint64, keys span, bucket string, depth int) {
	switch {
	case p.kind != kindBranch && p.kind != kindLeaf:
		w.fault(id, "it is neither branch nor leaf")
	case !p.fits():
		w.fault(id, "it claims %d entries, more than fit", p.count)
	case !p.packed():
		w.fault(id, "its entries do not fill it as they should")
		w.entries(p, id, keys, bucket, depth)
	default:
		w.entries(p, id, keys, bucket, depth)
	}
}

// entries walks through the entries of a page and what is below them.
func (w *walk) entries(p page, id uint64, keys span, bucket string, depth int) {
	switch {
	case p.kind == kindLeaf:
		w.leaf(p, id, keys, bucket, depth)
	case p.count == 0:
		w.fault(id, "it is a branch without entries")
	default:
		w.branch(p, id, keys, bucket, depth)
	}
}

func (w *walk) branch(p page, id uint64, keys span, bucket string, depth int) {
	for i := range p.count {
		key, child, err := p.branch(i)
		if err != nil {
			w.fault(id, "%v", err)
			continue
		}
		below := span{key, keys.hi}
		if i+1 < p.count {
			if next, _, err := p.branch(i + 1); err == nil {
				below.hi = next
			}
		}
		if !keys.holds(key) || below.hi != nil && bytes.Compare(key, below.hi) >= 0 {
			w.fault(id, "its keys are out of order")
		}
		w.tree(child, below, bucket, depth+1)
	}
}

func (w *walk) leaf(p page, id uint64, keys span, bucket string, depth int) {
	var before []byte
	for i := range p.count {
		flags, key, value, err := p.leaf(i)
		if err != nil {
			w.fault(id, "%v", err)
			continue
		}
		if bytes.Compare(before, key) >= 0 || !keys.holds(key) {
			w.fault(id, "its keys are out of order")
		}
		before = key
		switch flags {
		case 0:
			w.visit(bucket, key, value)
		case 1:
			w.bucket(value, id, join(bucket, key), depth)
		default:
			w.fault(id, "an entry is neither bucket nor value")
		}
	}
}

// bucket walks through a bucket: its value holds the number of its root page, or 0 and, behind the
// bucket's counter, a small page of its own.
func (w *walk) bucket(value []byte, id uint64, name string, depth int) {
	const bucketHeader = 16
	if len(w.survey.Buckets) < MaxFaults {
		w.survey.Buckets = append(w.survey.Buckets, name)
		if len(value) >= bucketHeader {
			w.survey.Notes[name] = order.Uint64(value[8:])
		}
	}
	switch {
	case len(value) < bucketHeader:
		w.fault(id, "a bucket is cut short")
	case order.Uint64(value) != 0:
		w.tree(order.Uint64(value), span{}, name, depth+1)
	case len(value) < bucketHeader+pageHeader:
		w.fault(id, "a bucket is cut short")
	case depth > maxDepth:
		w.fault(id, "a bucket lies too deep")
	default:
		p := parse(value[bucketHeader:])
		if p.kind != kindLeaf {
			w.fault(id, "a bucket inside of it is no leaf")
			return
		}
		w.page(p, id, span{}, name, depth+1)
	}
}

func join(bucket string, key []byte) string {
	if bucket == "" {
		return string(key)
	}
	return bucket + "/" + string(key)
}

func (s span) holds(key []byte) bool {
	return (s.lo == nil || bytes.Compare(s.lo, key) <= 0) && (s.hi == nil || bytes.Compare(key, s.hi) < 0)
}

func (w *walk) take() []byte {
	if n := len(w.buffers); n > 0 {
		b := w.buffers[n-1]
		w.buffers = w.buffers[:n-1]
		return b
	}
	return nil
}

func (w *walk) give(b []byte) { w.buffers = append(w.buffers, b) }
