package pages

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
)

const (
	magic         = 0xED0CDAED
	formatVersion = 2
	pageHeader    = 16 // bytes at the start of a page: id 8, kind 2, count 2, overflow 4
	headerBytes   = 64
	minPageSize   = 1 << 10
	maxPageSize   = 1 << 16
	noFreeList    = ^uint64(0)
)

// order is the byte order of bbolt's numbers: it copies memory as it is.
var order = binary.NativeEndian

var errNoMagic = errors.New("it does not carry the mark of one")

// A header says where everything is as of one transaction.
type header struct {
	pageSize uint32
	root     uint64 // page of the tree of buckets
	freeList uint64 // page of the list of free pages
	pages    uint64 // pages that are used or free; those behind were never written
	txid     uint64
}

// readHeaders fills in both headers' state and chooses the newest.
func (f *File) readHeaders() error {
	var found [2]header
	found[0], f.damaged[0] = f.headerAt(0, 0)
	if f.damaged[0] == nil {
		found[1], f.damaged[1] = f.headerAt(int64(found[0].pageSize), found[0].pageSize)
	} else {
		// The first header would say how large pages are: without it, the second is searched
		// where it can be.
		for size := uint32(minPageSize); size <= maxPageSize; size *= 2 {
			found[1], f.damaged[1] = f.headerAt(int64(size), size)
			if !errors.Is(f.damaged[1], errNoMagic) {
				break
			}
		}
	}
	switch {
	case f.damaged[0] == nil && (f.damaged[1] != nil || found[0].txid >= found[1].txid):
		f.header = found[0]
	case f.damaged[1] == nil:
		f.header = found[1]
	case errors.Is(f.damaged[0], errNoMagic) && errors.Is(f.damaged[1], errNoMagic):
		return ErrForeign
	default:
		return ErrHeaders
	}
	return nil
}

// headerAt reads the header of the page that begins at offset. pageSize is the size of pages if it
// is known, 0 otherwise.
func (f *File) headerAt(offset int64, pageSize uint32) (header, error) {
	page := 0
	if offset > 0 {
		page = 1
	}
	var b [pageHeader + headerBytes]byte
	if _, err := f.r.ReadAt(b[:], offset); err != nil {
		if errors.Is(err, io.EOF) {
			err = errNoMagic
		}
		return header{}, fmt.Errorf("header %d: %w", page, err)
	}
	m := b[pageHeader:]
	if order.Uint32(m) != magic {
		return header{}, fmt.Errorf("header %d: %w", page, errNoMagic)
	}
	h := header{
		pageSize: order.Uint32(m[8:]),
		root:     order.Uint64(m[16:]),
		freeList: order.Uint64(m[32:]),
		pages:    order.Uint64(m[40:]),
		txid:     order.Uint64(m[48:]),
	}
	sum := fnv.New64a()
	sum.Write(m[:56])
	switch known := h.pageSize&(h.pageSize-1) == 0 && h.pageSize >= minPageSize && h.pageSize <= maxPageSize; {
	case order.Uint64(m[56:]) != sum.Sum64():
		return header{}, fmt.Errorf("header %d: its checksum is wrong", page)
	case order.Uint32(m[4:]) != formatVersion:
		return header{}, fmt.Errorf("header %d: it is of version %d, not %d", page, order.Uint32(m[4:]), formatVersion)
	case !known || pageSize != 0 && pageSize != h.pageSize:
		return header{}, fmt.Errorf("header %d: pages of %d bytes are impossible", page, h.pageSize)
	}
	return h, nil
}
