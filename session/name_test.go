package session

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestCleanName(t *testing.T) {
	for in, want := range map[string]string{
		"  Ada   Alder ":            "Ada Alder",
		"A\x1b[31mda\x1b[0m":        "Ada",
		"Jose\u0301":                "Jos\u00e9",
		"Jose\u200b\u0301":          "Jos\u00e9",
		"Ada\u202eevil":             "Adaevil",
		"Zo\u200be\t\r\nB":          "Zoe B",
		strings.Repeat("x", 60):     strings.Repeat("x", 40),
		"\u0645\u0631\u064a\u0645":  "\u0645\u0631\u064a\u0645",
		"\u5c71\u7530 \u82b1\u5b50": "\u5c71\u7530 \u82b1\u5b50",
	} {
		if got, err := CleanName(in); err != nil || got != want {
			t.Errorf("CleanName(%q) = %q, %v, want %q", in, got, err, want)
		}
	}
	if _, err := CleanName("\x1b[2J\x00 "); err == nil {
		t.Error("a name without letters was taken")
	}
}

func TestCleanTextIsSafeOnAScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.OneOf(rapid.String(), rapid.StringMatching(`[\x00-\x1f\x7f-\x9fa-z\[;0-9m]*`)).Draw(t, "text")
		out := CleanText(in, 12)
		if ansi.StringWidth(out) > 12 {
			t.Fatalf("%q is wider than 12 cells", out)
		}
		if strings.ContainsFunc(out, func(r rune) bool { return r < ' ' || r >= 0x7f && r < 0xa0 }) {
			t.Fatalf("control characters are left in %q", out)
		}
		if CleanText(out, 12) != out {
			t.Fatalf("cleaning %q again gives %q", out, CleanText(out, 12))
		}
	})
}
