package wire

import (
	"bytes"
	"encoding/json"
	"io"
	"testing"
)

// TestFrames: what was written is read again; longer than the limit, or cut off, it is refused.
func TestFrames(t *testing.T) {
	two := append(frame([]byte("one")), frame(nil)...)
	r := bytes.NewReader(two)
	if body, err := readFrame(r, 3); string(body) != "one" || err != nil {
		t.Errorf("got %q, %v", body, err)
	}
	if body, err := readFrame(r, 3); len(body) > 0 || err != nil {
		t.Errorf("got %q, %v", body, err)
	}
	if _, err := readFrame(r, 3); err != io.EOF {
		t.Errorf("at the end: %v", err)
	}
	for name, in := range map[string][]byte{"too long": frame([]byte("four")), "cut off": two[:5], "half a length": two[:2], "all ones": {255, 255, 255, 255, 1}} {
		if body, err := readFrame(bytes.NewReader(in), 3); err == nil {
			t.Errorf("%s: got %q", name, body)
		}
	}
}

// FuzzHello feeds the socket's side of the desk what anybody may send: it is refused or a hello, and never
// takes more than the first frame.
func FuzzHello(f *testing.F) {
	good, err := frameOf(newHello(isBoard, "v1"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(good)
	f.Add(good[:7])
	f.Add(frame([]byte(`{"quadrille":"board","protocol":1e400}`)))
	f.Add([]byte{255, 255, 255, 255})
	f.Fuzz(func(t *testing.T, in []byte) {
		r := bytes.NewReader(in)
		h, err := readHello(r, isBoard)
		if read := len(in) - r.Len(); read > headSize+maxHello {
			t.Fatalf("%d bytes were read", read)
		}
		if err != nil {
			return
		}
		desk := newHello(isDesk, "v1")
		if desk.Refused = fits(h, desk); len(desk.Refused) > 300 {
			t.Fatalf("the answer has %d bytes", len(desk.Refused))
		}
		answer, err := frameOf(desk)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := readHello(bytes.NewReader(answer), isDesk); err != nil || back != desk {
			t.Fatalf("%+v is read as %+v, %v", desk, back, err)
		}
	})
}

// FuzzView feeds a board what a desk that is none may send.
func FuzzView(f *testing.F) {
	f.Add([]byte(`{"view":{"version":1,"courts":[{"name":"1"}]}}`))
	f.Add([]byte(`{}`))
	f.Add([]byte(`{"view":null}`))
	f.Fuzz(func(t *testing.T, in []byte) {
		v, err := readView(in)
		if err != nil || v == nil {
			return
		}
		if _, err := json.Marshal(v); err != nil {
			t.Fatal(err)
		}
	})
}
