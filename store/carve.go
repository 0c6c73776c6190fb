package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
)

// carve looks for records at every byte of r, in use or not, reachable or not, and calls found with
// each whose own bytes are sound. What it finds may be out of date: pages that are free again keep
// what was on them, and an action that was never acknowledged may have left its records. Where r
// cannot be read, it goes on behind.
//
// The error is errTooMany for a file that is made to look like nothing but records, which would
// take forever.
func carve(r io.ReaderAt, size int64, found func(frame)) error {
	const step = 8 << 20
	const longest = keySize + maxFrame
	budget := 4*size + 1<<30
	buf := make([]byte, min(size, step+longest))
	for at := int64(0); at < size; {
		n, err := r.ReadAt(buf[:min(int64(len(buf)), size-at)], at)
		passed, spent := carveWindow(buf[:n], step, found)
		if budget -= spent; budget < 0 {
			return errTooMany
		}
		at += passed
		switch {
		case errors.Is(err, io.EOF):
			size = at + int64(n) - passed // somebody cut the file short meanwhile
		case err != nil:
			const sector = 4 << 10
			at = (at/sector + 1) * sector
		}
	}
	return nil
}

// carveWindow looks for records that begin in the first step bytes of b. It says how many bytes it
// is done with, and how many it had to add up for checksums.
func carveWindow(b []byte, step int64, found func(frame)) (passed, spent int64) {
	end := min(step, int64(len(b)))
	for passed < end {
		length := plausible(b[passed:])
		if length == 0 {
			passed++
			continue
		}
		spent += int64(length)
		f, err := decodeFrame(b[passed:passed+keySize], b[passed+keySize:passed+keySize+int64(length)])
		if err != nil {
			passed++
			continue
		}
		found(f)
		passed += keySize + int64(length)
	}
	return passed, spent
}

var errTooMany = errors.New("the search for events was given up: too much of the file looks like one")

// plausible is the length of the frame that may begin behind the key at the start of b, 0 if none
// can: the layout is known, the length possible, and the number below 2^40.
func plausible(b []byte) int {
	if len(b) < keySize+frameMin || b[keySize] == 0 || b[keySize] > frameLayout || b[0]|b[1]|b[2] != 0 {
		return 0
	}
	length := binary.BigEndian.Uint32(b[keySize+1:])
	if length < frameMin || length > maxFrame || int(length) > len(b)-keySize {
		return 0
	}
	return int(length)
}

// carveHeads looks for heads of files at every byte of r and calls found with each, until that says to
// stop. A file has many copies of its own.
func carveHeads(r io.ReaderAt, size int64, found func(Head) (more bool)) {
	const step = 1 << 20
	longest := int64(len(headMark) + headFixed + maxMaker + sumSize)
	buf := make([]byte, min(size, step+longest))
	for at := int64(0); at < size; at += step {
		n, err := r.ReadAt(buf, at)
		if n == 0 && err != nil {
			continue
		}
		for b := buf[:n]; ; b = b[1:] {
			i := bytes.Index(b, headMark)
			if i < 0 {
				break
			}
			b = b[i:]
			if h, err := decodeHead(b[:headLength(b)]); err == nil && !found(h) {
				return
			}
		}
	}
}

// headLength is how long the head at the start of b says that it is, at most all of b.
func headLength(b []byte) int {
	fixed := len(headMark) + headFixed
	if len(b) < fixed {
		return len(b)
	}
	return min(len(b), fixed+int(b[fixed-1])+sumSize)
}
