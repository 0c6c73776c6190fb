package terminal

import (
	"io"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// pasted is all that a program reads of pieces that come one after the other, each after a pause.
func pasted(pieces []string, pauses []time.Duration) string {
	f, at := &file{}, time.Date(2026, 1, 1, 19, 0, 0, 0, time.UTC)
	p := NewPastes(f, func() time.Time { return at })
	var out []byte
	buffer := make([]byte, 16)
	for i, piece := range pieces {
		at = at.Add(pauses[i])
		f.pieces = append(f.pieces, []byte(piece))
		for {
			n, err := p.Read(buffer)
			out = append(out, buffer[:n]...)
			if err == io.EOF {
				break
			}
		}
	}
	return string(out)
}

// A paste that lost its end ends with the first key after a pause; one that is slow, or cut anywhere, is
// left alone.
func TestAPasteWithoutItsEndIsEnded(t *testing.T) {
	const short, long = PastePause / 2, PastePause
	for name, c := range map[string]struct {
		pieces []string
		pauses []time.Duration
		want   string
	}{
		"whole":                {[]string{"\x1b[200~Zoe\x1b[201~", "q"}, []time.Duration{0, long}, "\x1b[200~Zoe\x1b[201~q"},
		"end lost":             {[]string{"\x1b[200~Zoe", "q", "q"}, []time.Duration{0, long, short}, "\x1b[200~Zoe\x1b[201~qq"},
		"end cut in two":       {[]string{"\x1b[200~Zoe\x1b[20", "1~", "q"}, []time.Duration{0, short, long}, "\x1b[200~Zoe\x1b[201~q"},
		"start cut in two":     {[]string{"\x1b[2", "00~Zoe", "q"}, []time.Duration{0, short, long}, "\x1b[200~Zoe\x1b[201~q"},
		"longer than a buffer": {[]string{"\x1b[200~" + "0123456789abcdef0123456789", "q"}, []time.Duration{0, long}, "\x1b[200~0123456789abcdef0123456789\x1b[201~q"},
		"goes on slowly":       {[]string{"\x1b[200~Zo", "e\x1b[201~"}, []time.Duration{0, short}, "\x1b[200~Zoe\x1b[201~"},
		"keys alone":           {[]string{"a", "\x1b", "[A"}, []time.Duration{long, long, long}, "a\x1b[A"},
		"lost twice":           {[]string{"\x1b[200~Zoe", "\x1b[200~Max", "q"}, []time.Duration{0, long, long}, "\x1b[200~Zoe\x1b[201~\x1b[200~Max\x1b[201~q"},
	} {
		t.Run(name, func(t *testing.T) {
			if got := pasted(c.pieces, c.pauses); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// Keys and whole pastes go through as they are, however they are cut.
func TestWholePastesGoThrough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for range rapid.IntRange(0, 5).Draw(t, "parts") {
			part := rapid.StringOfN(rapid.SampledFrom([]rune("a1\x1b[20~é")), 0, 8, -1).Draw(t, "text")
			if rapid.Bool().Draw(t, "paste") {
				part = pasteStart + rapid.StringOfN(rapid.SampledFrom([]rune("a1[20~é")), 0, 20, -1).Draw(t, "pasted") + pasteEnd
			}
			text += part
		}
		var pieces []string
		for rest := text; rest != ""; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "cut")
			pieces, rest = append(pieces, rest[:n]), rest[n:]
		}
		if got := pasted(pieces, make([]time.Duration, len(pieces))); got != text {
			t.Errorf("got %q, want %q", got, text)
		}
	})
}
