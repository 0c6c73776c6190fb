package pages

import "fmt"

// Kinds of pages, as bbolt numbers them.
const (
	kindBranch   = 0x01
	kindLeaf     = 0x02
	kindHeader   = 0x04
	kindFreeList = 0x10
)

const elementBytes = 16 // of an entry in the table at the start of a branch or leaf

// A page is one page with those that it runs over into, or the small page inside a bucket's value.
type page struct {
	kind  uint16
	count int
	data  []byte // from the header on
}

// maxRun bounds the memory for one page. A leaf holds two entries at the least, so that this is
// more than the largest that the store can write.
const maxRun = 64 << 20

// read reads page id and those that it runs over into. It checks that all of it lies in the file
// and is what a page of that number looks like.
func (f *File) read(id uint64, buf []byte) (page, []byte, error) {
	size := uint64(f.header.pageSize)
	end := min(f.header.pages, f.whole())
	if id < 2 || id >= end {
		return page{}, buf, fmt.Errorf("it lies outside of the file")
	}
	buf = grow(buf, size)
	if _, err := f.r.ReadAt(buf, int64(id*size)); err != nil {
		return page{}, buf, fmt.Errorf("it cannot be read: %w", err)
	}
	if self := order.Uint64(buf); self != id {
		return page{}, buf, fmt.Errorf("it takes itself for page %d", self)
	}
	run := 1 + uint64(order.Uint32(buf[12:]))
	if run > end-id || run*size > maxRun {
		return page{}, buf, fmt.Errorf("it claims %d pages, more than there can be", run)
	}
	if run > 1 {
		first := buf
		buf = grow(nil, run*size)
		copy(buf, first)
		if _, err := f.r.ReadAt(buf[size:], int64((id+1)*size)); err != nil {
			return page{}, buf, fmt.Errorf("it cannot be read: %w", err)
		}
	}
	return parse(buf), buf, nil
}

func grow(buf []byte, size uint64) []byte {
	if uint64(cap(buf)) < size {
		return make([]byte, size)
	}
	return buf[:size]
}

// parse reads a page's header. data must hold it.
func parse(data []byte) page {
	return page{kind: order.Uint16(data[8:]), count: int(order.Uint16(data[10:])), data: data}
}

// fits tells whether the table of entries lies within the page.
func (p page) fits() bool { return pageHeader+p.count*elementBytes <= len(p.data) }

// packed tells whether what the entries point to lies behind their table without gaps and in order, as
// bbolt writes it. Nothing else shows that a page claims fewer entries than were written.
func (p page) packed() bool {
	at := uint64(pageHeader + p.count*elementBytes)
	for i := range p.count {
		entry := uint64(pageHeader + i*elementBytes)
		e := p.data[entry:]
		pos, size := uint64(order.Uint32(e)), uint64(order.Uint32(e[4:]))
		if p.kind == kindLeaf {
			pos, size = uint64(order.Uint32(e[4:])), uint64(order.Uint32(e[8:]))+uint64(order.Uint32(e[12:]))
		}
		if entry+pos != at {
			return false
		}
		at += size
	}
	return true
}

// branch is entry i of a branch: the first key of a page below, and that page.
func (p page) branch(i int) (key []byte, child uint64, err error) {
	at := pageHeader + i*elementBytes
	e := p.data[at:]
	key, err = p.bytes(at, order.Uint32(e), order.Uint32(e[4:]))
	return key, order.Uint64(e[8:]), err
}

// leaf is entry i of a leaf.
func (p page) leaf(i int) (flags uint32, key, value []byte, err error) {
	at := pageHeader + i*elementBytes
	e := p.data[at:]
	pos, keySize, valueSize := order.Uint32(e[4:]), order.Uint32(e[8:]), order.Uint32(e[12:])
	both, err := p.bytes(at, pos, keySize, valueSize)
	if err != nil {
		return 0, nil, nil, err
	}
	return order.Uint32(e), both[:keySize:keySize], both[keySize:], nil
}

// bytes are those that begin pos behind the entry at offset at and are as long as sizes together.
func (p page) bytes(at int, pos uint32, sizes ...uint32) ([]byte, error) {
	from := uint64(at) + uint64(pos)
	to := from
	for _, n := range sizes {
		to += uint64(n)
	}
	if from < uint64(pageHeader+p.count*elementBytes) || to > uint64(len(p.data)) {
		return nil, fmt.Errorf("an entry points outside of the page")
	}
	return p.data[from:to:to], nil
}
