package spreadsheet

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNoTextIsTakenForAFormula(t *testing.T) {
	for text, want := range map[string]string{
		"":          "",
		"Ada":       "Ada",
		"'Tis I":    "'Tis I",
		"a=b":       "a=b",
		"=1+1":      "'=1+1",
		"+49":       "'+49",
		"-Minus":    "'-Minus",
		"@home":     "'@home",
		"\tTab":     "'\tTab",
		"\rReturn":  "'\rReturn",
		"\nLine":    "'\nLine",
		"'=quoted":  "''=quoted",
		"''=quoted": "'''=quoted",
	} {
		if got := Text(text); got != want {
			t.Errorf("Text(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestTextComesBack(t *testing.T) {
	begin := rapid.SampledFrom([]string{"", "'", "''", "=", "'=", "+", "-", "@", "\t", "\r", "'\r"})
	rapid.Check(t, func(t *rapid.T) {
		text := begin.Draw(t, "begin") + rapid.String().Draw(t, "text")
		safe := Text(text)
		if safe != "" && strings.IndexByte(formula, safe[0]) >= 0 {
			t.Fatalf("%q is taken for a formula", safe)
		}
		if got := Plain(safe); got != text {
			t.Fatalf("%q came back as %q", text, got)
		}
	})
}
