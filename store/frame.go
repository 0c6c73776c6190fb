package store

import (
	"cmp"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"math"
	"time"

	"club/quadrille/session"
)

// A record is kept as a key and a frame. The key is the sequence number, eight bytes, big-endian,
// so that the order of keys is the order of time. The frame is, all numbers big-endian:
//
//	offset  bytes  what
//	     0      1  layout of the frame, 2
//	     1      4  length of the whole frame
//	     5      4  checksum of the record before; for the first record, the file's seed
//	     9      4  how many records of the same Append follow this one
//	    13      8  action
//	    21      8  time, milliseconds since 1970 UTC
//	    29      4  night
//	    33      2  version of the payload
//	    35      1  length of the kind
//	    36      4  the file's seed, so that a record of another club's file is told from ours
//	    40      …  kind, then payload
//	   end      4  checksum: CRC-32C of the key and of all of the frame before it
//
// Layout 1, which the first programs wrote, has no seed: kind and payload begin at 36. Files may have
// records of both.
//
// The length makes a frame recognisable anywhere in a file, which is what Rescue lives on. The
// first byte and the last four mean the same in every layout to come, so that a newer layout is
// told from a damaged record.
const (
	frameLayout = 2
	seedless    = 1 // the older layout
	keySize     = 8
	frameFixed  = 36 // of both layouts
	sealSize    = 4  // the seed of layout 2
	sumSize     = 4
	frameMin    = frameFixed + sumSize
)

// MaxPayload is the most bytes that the payload of a record may have.
const MaxPayload = 4 << 20

const maxFrame = frameMin + sealSize + math.MaxUint8 + MaxPayload

// castagnoli is the polynomial of CRC-32C (RFC 3720, appendix B.4), which processors compute
// themselves.
var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// A frame is a record and its place in the chain.
type frame struct {
	session.Record
	before uint32 // checksum of the record before
	more   uint32 // records of the same Append that follow
	sum    uint32 // checksum of this record
	layout byte   // as it is in the file, 0 for one that is not in a file yet
	seed   uint32 // of the file that it was written for; layout 1 does not say
	lost   bool   // stands for a record that was not found; never set by decodeFrame
}

var (
	errAltered = errors.New("its bytes are not what was written")
	errLayout  = errors.New("it is laid out in a newer way")
)

// seqKey is the key of a sequence number.
func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

// encode gives the key and the frame of f and sets its checksum.
func (f *frame) encode() (key, value []byte, err error) {
	switch {
	case len(f.Kind) > math.MaxUint8:
		return nil, nil, fmt.Errorf("the kind of an event has at most %d bytes, not %d", math.MaxUint8, len(f.Kind))
	case len(f.Payload) > MaxPayload:
		return nil, nil, fmt.Errorf("the payload of an event has at most %d bytes, not %d", MaxPayload, len(f.Payload))
	}
	layout := cmp.Or(f.layout, frameLayout)
	size := frameMin + len(f.Kind) + len(f.Payload)
	if layout != seedless {
		size += sealSize
	}
	b := make([]byte, 0, keySize+size)
	b = binary.BigEndian.AppendUint64(b, f.Seq)
	b = append(b, layout)
	b = binary.BigEndian.AppendUint32(b, uint32(size))
	b = binary.BigEndian.AppendUint32(b, f.before)
	b = binary.BigEndian.AppendUint32(b, f.more)
	b = binary.BigEndian.AppendUint64(b, f.Action)
	b = binary.BigEndian.AppendUint64(b, uint64(f.Time.UnixMilli()))
	b = binary.BigEndian.AppendUint32(b, uint32(f.Night))
	b = binary.BigEndian.AppendUint16(b, f.Version)
	b = append(b, byte(len(f.Kind)))
	if layout != seedless {
		b = binary.BigEndian.AppendUint32(b, f.seed)
	}
	b = append(b, f.Kind...)
	b = append(b, f.Payload...)
	f.sum = crc32.Checksum(b, castagnoli)
	b = binary.BigEndian.AppendUint32(b, f.sum)
	return b[:keySize:keySize], b[keySize:], nil
}

// decodeFrame reads what encode wrote. The result shares no memory with its arguments. The error
// is errAltered, or errLayout for a sound frame of a layout that this program does not know.
func decodeFrame(key, value []byte) (frame, error) {
	if len(key) != keySize || len(value) < 1+sumSize {
		return frame{}, errAltered
	}
	body := value[:len(value)-sumSize]
	sum := crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, body)
	if binary.BigEndian.Uint32(value[len(body):]) != sum {
		return frame{}, errAltered
	}
	if body[0] == 0 || body[0] > frameLayout {
		return frame{}, errLayout
	}
	fixed := frameFixed
	if body[0] != seedless {
		fixed += sealSize
	}
	if len(body) < fixed || int(binary.BigEndian.Uint32(body[1:])) != len(value) {
		return frame{}, errAltered
	}
	kindEnd := fixed + int(body[35])
	if kindEnd > len(body) {
		return frame{}, errAltered
	}
	f := frame{
		before: binary.BigEndian.Uint32(body[5:]),
		more:   binary.BigEndian.Uint32(body[9:]),
		sum:    sum,
		layout: body[0],
		Record: session.Record{
			Seq:     binary.BigEndian.Uint64(key),
			Action:  binary.BigEndian.Uint64(body[13:]),
			Time:    time.UnixMilli(int64(binary.BigEndian.Uint64(body[21:]))).UTC(),
			Night:   session.NightID(binary.BigEndian.Uint32(body[29:])),
			Version: binary.BigEndian.Uint16(body[33:]),
			Kind:    string(body[fixed:kindEnd]),
		},
	}
	if f.layout != seedless {
		f.seed = binary.BigEndian.Uint32(body[frameFixed:])
	}
	if kindEnd < len(body) {
		f.Payload = append(json.RawMessage(nil), body[kindEnd:]...)
	}
	return f, nil
}
