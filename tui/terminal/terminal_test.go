package terminal

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// file is a terminal that gives what was typed in the pieces in which it came.
type file struct {
	pieces [][]byte
	wrote  bytes.Buffer
}

func (f *file) Read(p []byte) (int, error) {
	if len(f.pieces) == 0 {
		return 0, io.EOF
	}
	n := copy(p, f.pieces[0])
	f.pieces[0] = f.pieces[0][n:]
	if len(f.pieces[0]) == 0 {
		f.pieces = f.pieces[1:]
	}
	return n, nil
}
func (f *file) Write(p []byte) (int, error) { return f.wrote.Write(p) }
func (f *file) Close() error                { return nil }
func (f *file) Fd() uintptr                 { return 0 }

// stand is a terminal with a clock that a test moves, and what it told.
type stand struct {
	*Terminal
	file  *file
	at    time.Time
	heard []bool
}

func newStand() *stand {
	s := &stand{file: &file{}, at: time.Date(2026, 1, 1, 19, 0, 0, 0, time.UTC)}
	s.Terminal = Wrap(s.file, s.file, func() time.Time { return s.at }, func(light bool) { s.heard = append(s.heard, light) })
	return s
}

// keys are all that the program reads of what was typed in these pieces.
func (s *stand) keys(pieces ...string) string {
	for _, p := range pieces {
		s.file.pieces = append(s.file.pieces, []byte(p))
	}
	var out []byte
	p := make([]byte, 256)
	for {
		n, err := s.Input().Read(p)
		out = append(out, p[:n]...)
		if err != nil {
			return string(out)
		}
	}
}

// TestAsksBehindTheFirstFrame: nothing before Ask, nor behind a mode, the question behind the frame that
// follows, once.
func TestAsksBehindTheFirstFrame(t *testing.T) {
	s := newStand()
	out := s.Output()
	for _, text := range []string{"mode", "mode 2", "a\nframe", "frame\n2"} {
		if text == "mode 2" {
			s.Ask()
		}
		if n, err := out.Write([]byte(text)); n != len(text) || err != nil {
			t.Fatalf("%q: %d, %v", text, n, err)
		}
		s.Terminal.Ask()
	}
	// the Ask after "mode" is what arms the question here; it goes out behind the frame and never again
	if got, want := s.file.wrote.String(), "modemode 2a\nframe"+question+"frame\n2"; got != want {
		t.Errorf("wrote %q, want %q", got, want)
	}
}

func TestTakesTheAnswerOutOfTheKeys(t *testing.T) {
	const white, black = "\x1b]11;rgb:ffff/ffff/ffff\x1b\\", "\x1b]11;rgb:1e1e/1e1e/1e1e\a"
	for _, c := range []struct {
		name   string
		after  time.Duration
		pieces []string
		keys   string
		heard  []bool
	}{
		{"light", 5 * time.Millisecond, []string{white}, "", []bool{true}},
		{"dark, with a bell", 5 * time.Millisecond, []string{black}, "", []bool{false}},
		{"between keys", 0, []string{"11" + white + "7"}, "117", []bool{true}},
		{"in pieces", 0, []string{"1\x1b]11;rg", "b:ffff/ff", "ff/ffff\x1b", "\\7"}, "17", []bool{true}},
		{"twice", 0, []string{white, black + "x"}, "x", []bool{true}},
		{"late", 2 * Limit, []string{"a" + white + "b"}, "ab", nil},
		{"an escape alone", 0, []string{"\x1b"}, "\x1b", nil},
		{"an escape before the rest of an answer", 0, []string{"\x1b", "]11;rgb:0/0/0\a7"}, "\x1b7", []bool{false}},
		{"alt and a bracket", 0, []string{"\x1b]", "x"}, "\x1b]x", nil},
		{"a title, which is no answer", 0, []string{"\x1b]12;x\a"}, "\x1b]12;x\a", nil},
		{"a colour without an end", 0, []string{"\x1b]11;" + strings.Repeat("f", 50)}, "\x1b]11;" + strings.Repeat("f", 50), nil},
		{"an arrow", 0, []string{"\x1b[A"}, "\x1b[A", nil},
		{"no colour", 0, []string{"\x1b]11;none\a!"}, "!", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newStand()
			s.Ask()
			if _, err := s.Output().Write([]byte("a\nframe")); err != nil {
				t.Fatal(err)
			}
			s.at = s.at.Add(c.after)
			if got := s.keys(c.pieces...); got != c.keys {
				t.Errorf("keys are %q, want %q", got, c.keys)
			}
			if len(s.heard) != len(c.heard) || len(c.heard) > 0 && s.heard[0] != c.heard[0] {
				t.Errorf("heard %v, want %v", s.heard, c.heard)
			}
		})
	}
}

// TestNothingIsTakenUnasked: before the question everything is a key.
func TestNothingIsTakenUnasked(t *testing.T) {
	s := newStand()
	const text = "a\x1b]11;rgb:ffff/ffff/ffff\ab"
	if got := s.keys(text); got != text {
		t.Errorf("keys are %q", got)
	}
}

// TestNoKeyIsLost: whatever is typed, in whatever pieces, comes through in order; only answers do not.
func TestNoKeyIsLost(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		key := rapid.SampledFrom([]string{"1", "q", "\x1b[A", "é", "\x1b", "]", ";", "\\", "\x1b]8;;x\x1b\\"})
		typed, want := "", ""
		for _, k := range rapid.SliceOfN(key, 0, 20).Draw(rt, "keys") {
			typed, want = typed+k, want+k
			if rapid.IntRange(0, 5).Draw(rt, "answer") == 0 {
				typed += "\x1b]11;rgb:0000/0000/0000\x1b\\"
			}
		}
		typed, want = typed+"end", want+"end"
		var pieces []string
		for typed != "" {
			n := rapid.IntRange(1, len(typed)).Draw(rt, "piece")
			pieces, typed = append(pieces, typed[:n]), typed[n:]
		}
		s := newStand()
		s.Ask()
		_, _ = s.Output().Write([]byte("a\nframe"))
		// an escape at the end of a piece is a key for all that anybody can know, even if it begins an answer
		without := func(text string) string { return strings.ReplaceAll(text, "\x1b", "") }
		got := s.keys(pieces...)
		if without(got) != without(want) || strings.Count(got, "\x1b") < strings.Count(want, "\x1b") {
			rt.Fatalf("keys are %q, want %q", got, want)
		}
	})
}

func TestLight(t *testing.T) {
	for _, c := range []struct {
		colour    string
		light, ok bool
	}{
		{"rgb:ffff/ffff/ffff", true, true},
		{"rgb:fdfd/f6f6/e3e3", true, true},
		{"rgb:00/2b/36", false, true},
		{"rgba:0/0/0/f", false, true},
		{"rgb:f/f/f", true, true},
		{"rgb:ffff/ffff", false, false},
		{"rgb:xx/00/00", false, false},
		{"#ffffff", false, false},
		{"", false, false},
	} {
		if light, ok := Light(c.colour); light != c.light || ok != c.ok {
			t.Errorf("%q: %v, %v", c.colour, light, ok)
		}
	}
}
