package store

import (
	"bytes"
	"encoding/hex"
	"errors"
	"hash/crc32"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/session"
)

// The vectors are those of RFC 3720, appendix B.4, and the usual check value of "123456789".
func TestChecksumIsCRC32C(t *testing.T) {
	ascending := make([]byte, 32)
	for i := range ascending {
		ascending[i] = byte(i)
	}
	for _, v := range []struct {
		name string
		data []byte
		sum  uint32
	}{
		{"zeros", make([]byte, 32), 0x8a9136aa},
		{"ones", bytes.Repeat([]byte{0xff}, 32), 0x62a8ab43},
		{"ascending", ascending, 0x46dd794e},
		{"digits", []byte("123456789"), 0xe3069283},
	} {
		if got := crc32.Checksum(v.data, castagnoli); got != v.sum {
			t.Errorf("%s: %08x, want %08x", v.name, got, v.sum)
		}
	}
}

// A file of today must be readable for ever. These bytes were put together field by field from the
// layout in frame.go, with a bitwise CRC-32C, by a script of a few lines in another language.
func TestFramesAreLaidOutAsTheyAlwaysWere(t *testing.T) {
	const middle = "89abcdef" + "00000002" + "0000000000000006" + "000001a0c4519a7b" + "00000003" + "0001" + "08"
	for layout, written := range map[byte]string{
		1: "0000000000000007" + "01" + "00000032" + middle + "52616c6c79576f6e" + "7b7d" + "d73c8b22",
		2: "0000000000000007" + "02" + "00000036" + middle + "0badcafe" + "52616c6c79576f6e" + "7b7d" + "e06eb806",
	} {
		f := frame{before: 0x89abcdef, more: 2, layout: layout, Record: session.Record{
			Seq: 7, Action: 6, Time: time.UnixMilli(1790000077435).UTC(), Night: 3,
			Kind: "RallyWon", Version: 1, Payload: []byte("{}"),
		}}
		if layout == 2 {
			f.seed = 0x0badcafe
		}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		if got := hex.EncodeToString(append(bytes.Clone(key), value...)); got != written {
			t.Errorf("wrote %s, want %s", got, written)
		}
		if got, err := decodeFrame(key, value); err != nil || !reflect.DeepEqual(got, f) {
			t.Errorf("read %+v, %v, want %+v", got, err, f)
		}
	}
}

// genFrame draws any frame that can be written.
func genFrame(t *rapid.T) frame {
	payload := rapid.SliceOfN(rapid.Byte(), 0, 300).Draw(t, "payload")
	if len(payload) == 0 {
		payload = nil
	}
	layout := rapid.ByteRange(1, frameLayout).Draw(t, "layout")
	seed := uint32(0)
	if layout != seedless {
		seed = rapid.Uint32().Draw(t, "seed")
	}
	return frame{
		layout: layout,
		seed:   seed,
		before: rapid.Uint32().Draw(t, "before"),
		more:   rapid.Uint32().Draw(t, "more"),
		Record: session.Record{
			Seq:     rapid.Uint64().Draw(t, "seq"),
			Action:  rapid.Uint64().Draw(t, "action"),
			Time:    time.UnixMilli(rapid.Int64Range(-62135596800000, 253402300799999).Draw(t, "time")).UTC(),
			Night:   session.NightID(rapid.Uint32().Draw(t, "night")),
			Kind:    string(rapid.SliceOfN(rapid.Byte(), 0, 255).Draw(t, "kind")),
			Version: rapid.Uint16().Draw(t, "version"),
			Payload: payload,
		},
	}
}

func TestFramesReadBackAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := genFrame(t)
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		got, err := decodeFrame(key, value)
		if err != nil || !reflect.DeepEqual(got, f) {
			t.Fatalf("%+v, %v, want %+v", got, err, f)
		}
	})
}

func TestEveryFlippedBitOfAFrameShows(t *testing.T) {
	f := frame{Record: actionAt(1)[0]}
	key, value, err := f.encode()
	if err != nil {
		t.Fatal(err)
	}
	both := append(bytes.Clone(key), value...)
	for bit := range len(both) * 8 {
		both[bit/8] ^= 1 << (bit % 8)
		if _, err := decodeFrame(both[:keySize], both[keySize:]); err == nil {
			t.Fatalf("bit %d was flipped unnoticed", bit)
		}
		both[bit/8] ^= 1 << (bit % 8)
	}
}

func TestNewerLayoutIsToldFromDamage(t *testing.T) {
	key := seqKey(1)
	value := []byte{9, 'n', 'e', 'w'}
	sum := crc32.Checksum(append(bytes.Clone(key), value...), castagnoli)
	value = append(value, byte(sum>>24), byte(sum>>16), byte(sum>>8), byte(sum))
	if _, err := decodeFrame(key, value); !errors.Is(err, errLayout) {
		t.Fatalf("got %v", err)
	}
}

func TestWhatDoesNotFitIsRefused(t *testing.T) {
	for name, r := range map[string]session.Record{
		"kind":    {Kind: strings.Repeat("k", 256)},
		"payload": {Payload: make([]byte, MaxPayload+1)},
	} {
		if _, _, err := (&frame{Record: r}).encode(); err == nil {
			t.Errorf("a %s that is too long was taken", name)
		}
	}
}

func FuzzDecodeFrame(f *testing.F) {
	for _, r := range season(20) {
		key, value, err := (&frame{Record: r}).encode()
		if err != nil {
			f.Fatal(err)
		}
		f.Add(key, value)
	}
	f.Fuzz(func(t *testing.T, key, value []byte) {
		// With the right checksum behind them, hostile bytes get past the first gate.
		sum := crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, value)
		sealed := append(bytes.Clone(value), byte(sum>>24), byte(sum>>16), byte(sum>>8), byte(sum))
		for _, v := range [][]byte{value, sealed} {
			got, err := decodeFrame(key, v)
			if err != nil {
				continue
			}
			k, again, err := got.encode()
			if err != nil || !bytes.Equal(k, key) || !bytes.Equal(again, v) {
				t.Fatalf("%x %x read and written is %x %x (%v)", key, v, k, again, err)
			}
		}
	})
}

// TestARecordMayHaveFourMiB and no byte more.
func TestARecordMayHaveFourMiB(t *testing.T) {
	for size, ok := range map[int]bool{4 << 20: true, 4<<20 + 1: false} {
		f := frame{Record: session.Record{Seq: 1, Kind: "k", Payload: make([]byte, size)}}
		if _, _, err := f.encode(); (err == nil) != ok {
			t.Errorf("%d bytes: %v", size, err)
		}
	}
}

// TestARecordThatIsCutShortIsNone, wherever it is cut, in each layout.
func TestARecordThatIsCutShortIsNone(t *testing.T) {
	for _, layout := range []uint8{seedless, frameLayout} {
		f := frame{layout: layout, Record: session.Record{Seq: 3, Action: 3, Kind: "k", Payload: []byte("{}")}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		for n := range len(value) {
			if got, err := decodeFrame(key, value[:n]); err == nil {
				t.Errorf("layout %d, %d bytes of %d: %+v", layout, n, len(value), got)
			}
		}
		if got, err := decodeFrame(key, value); err != nil || got.Seq != 3 || got.Kind != "k" || string(got.Payload) != "{}" {
			t.Errorf("layout %d: %+v, %v", layout, got, err)
		}
		if _, err := decodeFrame(key[1:], value); err == nil {
			t.Error("a short key is taken")
		}
	}
}
