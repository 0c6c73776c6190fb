package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"syscall"
	"testing"

	"club/quadrille/session"
)

// TestCarveFindsTheRecordsAtTheSeamsOfWhatItReads: records lie close together over more than is read at once.
func TestCarveFindsTheRecordsAtTheSeamsOfWhatItReads(t *testing.T) {
	var file []byte
	var wrote int
	for len(file) < 17<<20 {
		wrote++
		f := frame{Record: session.Record{Seq: uint64(wrote), Action: 1, Kind: "long", Payload: bytes.Repeat([]byte{byte(wrote)}, 3000)}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		if wrote%5 == 0 { // what only looks like a record comes before some
			spoilt := bytes.Clone(value)
			spoilt[len(spoilt)-1] ^= 1
			file = append(append(file, key...), spoilt...)
		}
		file = append(append(append(file, key...), value...), byte(wrote%7))
	}
	found := uint64(0)
	err := carve(bytes.NewReader(file), int64(len(file)), func(f frame) {
		if f.Seq != found+1 {
			t.Fatalf("event %d was found behind event %d", f.Seq, found)
		}
		found = f.Seq
	})
	if err != nil || found != uint64(wrote) {
		t.Errorf("%d of %d events were found: %v", found, wrote, err)
	}
}

// TestCarveHeadsFindsEachUntilItIsEnough, past what only begins like one.
func TestCarveHeadsFindsEachUntilItIsEnough(t *testing.T) {
	heads := []Head{newHead("first"), newHead("second"), newHead("third")}
	var file []byte
	for _, h := range heads {
		file = append(append(append(file, "some bytes"...), headMark...), h.encode()...)
	}
	file = append(file, headMark[:3]...)
	for enough := 1; enough <= 4; enough++ {
		var found []Head
		carveHeads(bytes.NewReader(file), int64(len(file)), func(h Head) bool {
			found = append(found, h)
			return len(found) < enough
		})
		if want := heads[:min(enough, 3)]; !slices.Equal(found, want) {
			t.Errorf("%d are enough: found %v, want %v", enough, found, want)
		}
	}
}

// TestAFileThatLooksLikeNothingButRecordsIsGivenUp: to add all of them up would take for ever.
func TestAFileThatLooksLikeNothingButRecordsIsGivenUp(t *testing.T) {
	const size = 512 << 10
	file := make([]byte, 0, size)
	for len(file) < size {
		begin := make([]byte, 16)
		begin[keySize] = frameLayout
		binary.BigEndian.PutUint32(begin[keySize+1:], uint32(max(frameMin, min(maxFrame, size-len(file)-keySize))))
		file = append(file, begin...)
	}
	if err := carve(bytes.NewReader(file), size, func(f frame) { t.Fatalf("found %+v", f) }); !errors.Is(err, errTooMany) {
		t.Errorf("it says %v", err)
	}
	if err := carve(bytes.NewReader(file[:8<<10]), 8<<10, func(f frame) { t.Fatalf("found %+v", f) }); err != nil {
		t.Errorf("of a part: %v", err)
	}
}

// spoilt is a disk on which some bytes cannot be read.
type spoilt struct {
	data     []byte
	from, to int64
}

func (s spoilt) ReadAt(p []byte, off int64) (int, error) {
	end := min(off+int64(len(p)), int64(len(s.data)))
	switch {
	case off >= s.from && off < s.to:
		return 0, syscall.EIO
	case off < s.from && end > s.from:
		return copy(p, s.data[off:s.from]), syscall.EIO
	case off >= int64(len(s.data)):
		return 0, io.EOF
	}
	n := copy(p, s.data[off:end])
	if n < len(p) {
		return n, io.EOF
	}
	return n, nil
}

// TestCarveGoesOnBehindABadSector: only what lies in it is not found.
func TestCarveGoesOnBehindABadSector(t *testing.T) {
	var file []byte
	var want []uint64
	bad := [2]int64{100<<10 + 700, 112 << 10}
	for seq := uint64(1); len(file) < 300<<10; seq++ {
		f := frame{Record: session.Record{Seq: seq, Action: 1, Kind: "short", Payload: bytes.Repeat([]byte{byte(seq)}, 90)}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		from := int64(len(file))
		file = append(append(file, key...), value...)
		if to := int64(len(file)); to <= bad[0] || from >= bad[1] {
			want = append(want, seq)
		}
	}
	var found []uint64
	err := carve(spoilt{file, bad[0], bad[1]}, int64(len(file)), func(f frame) { found = append(found, f.Seq) })
	if err != nil || !slices.Equal(found, want) {
		t.Errorf("%d events were found of %d: %v", len(found), len(want), err)
	}
}

// TestCarveFindsTheLongestRecord that there can be.
func TestCarveFindsTheLongestRecord(t *testing.T) {
	f := frame{Record: session.Record{Seq: 9, Action: 9, Kind: strings.Repeat("k", math.MaxUint8), Payload: bytes.Repeat([]byte{7}, MaxPayload)}}
	key, value, err := f.encode()
	if err != nil || len(value) != maxFrame {
		t.Fatalf("%d bytes, %v", len(value), err)
	}
	file := append(append([]byte("before"), key...), value...)
	found := 0
	err = carve(bytes.NewReader(file), int64(len(file)), func(g frame) { found += int(g.Seq) })
	if err != nil || found != 9 {
		t.Errorf("found %d, %v", found, err)
	}
}
