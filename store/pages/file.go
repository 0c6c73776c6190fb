// Package pages reads the files of go.etcd.io/bbolt without trusting them.
//
// bbolt maps its file into memory and follows the page numbers that it finds there; in a damaged
// file that ends in a panic or in a fault that no program survives. This package reads the same
// pages through an [io.ReaderAt], checks every number before it uses it, visits no page twice, and
// tells what is wrong in sentences. A file in which [File.Walk] finds no fault is safe for bbolt.
//
// The layout is that of bbolt's format version 2, as its internal/common package defines it: pages
// of one size, in the byte order of the machine; two headers on pages 0 and 1, of which the one
// with the higher transaction counts; a tree of branch and leaf pages for each bucket; a list of
// free pages.
package pages

import (
	"errors"
	"io"
)

// ErrForeign tells that a file is none of bbolt's.
var ErrForeign = errors.New("its first bytes are not those of a club file")

// ErrHeaders tells that a file is bbolt's but neither of its headers can be trusted.
var ErrHeaders = errors.New("both headers of the file are damaged")

// File is a file of bbolt, as its newest sound header describes it.
type File struct {
	r       io.ReaderAt
	size    int64
	header  header
	damaged [2]error // what is wrong with each header, nil if nothing is
}

// Open reads the headers of a file of size bytes. The error is [ErrForeign], [ErrHeaders], or what
// r answers.
func Open(r io.ReaderAt, size int64) (*File, error) {
	f := &File{r: r, size: size}
	return f, f.readHeaders()
}

// TxID is the number of the newest transaction.
func (f *File) TxID() uint64 { return f.header.txid }

// PageSize is the size of a page in bytes.
func (f *File) PageSize() int { return int(f.header.pageSize) }

// Pages is how many pages the newest header says are in use or free to be used again.
func (f *File) Pages() uint64 { return f.header.pages }

// SpareHeader says what is wrong with the header that is not the newest, nil if nothing is. While
// it is damaged, nobody can tell whether it was the newer one.
func (f *File) SpareHeader() error { return errors.Join(f.damaged[0], f.damaged[1]) }

// Moved tells whether another process committed a transaction since Open. Until one did, all that
// Walk read is of one state: bbolt writes only to pages that the newest state does not use.
func (f *File) Moved() bool {
	now, err := Open(f.r, f.size)
	return err != nil || now.header != f.header
}

// whole is how many whole pages the file has.
func (f *File) whole() uint64 { return uint64(f.size) / uint64(f.header.pageSize) }
