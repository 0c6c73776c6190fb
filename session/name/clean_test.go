package name

import (
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"  Ada   Alder ":                 "Ada Alder",
		"A\x1b[31mda\x1b[0m":             "Ada",
		"Jose\u0301":                     "Jos\u00e9",
		"Jose\u200b\u0301":               "Jos\u00e9",
		"Ada\u202eevil":                  "Adaevil",
		"A\u200dd\ufe0fa":                "Ada",
		"Zo\u200be\t\r\nB":               "Zoe B",
		strings.Repeat("x", 80):          strings.Repeat("x", 80),
		"\u0645\u0631\u064a\u0645":       "\u0645\u0631\u064a\u0645",
		"\u5c71\u7530 \u82b1\u5b50":      "\u5c71\u7530 \u82b1\u5b50",
		"👩\u200d👩\u200d👧\u200d👦 Noll":    "👩\u200d👩\u200d👧\u200d👦 Noll",
		"❤\ufe0f\u200d🔥":                 "❤\ufe0f\u200d🔥",
		"🧑🏽\u200d⚕\ufe0f":                "🧑🏽\u200d⚕\ufe0f",
		"\u0646\u06cc\u0645\u200c\u0641": "\u0646\u06cc\u0645\u200c\u0641",
		"Le\u0302\u0301":                 "L\u1ebf",
		// The last mark stands for two, so these are eight.
		"q" + strings.Repeat("\u0327", 6) + "\u0344": "q" + strings.Repeat("\u0327", 6) + "\u0308\u0301",
	} {
		if got, err := Clean(in); err != nil || got != want {
			t.Errorf("Clean(%q) = %q, %v, want %q", in, got, err, want)
		}
	}
}

func TestWhatIsNoNameIsRefusedInWords(t *testing.T) {
	for in, want := range map[string]string{
		"\x1b[2J\x00 ":                         "at least one letter",
		"":                                     "at least one letter",
		"\u200b\u200d\u2060\ufeff":             "at least one letter that can be seen",
		"\u202e\u2066\u2069":                   "at least one letter",
		"\u3164\u2800\u115f":                   "at least one letter",
		"\u0301\u0302":                         "at least one letter",
		strings.Repeat("x", 81):                "may be 80 cells wide, and this one is 81",
		strings.Repeat("李", 41):                "this one is 82",
		"a" + strings.Repeat("\u0301", 20_000): "under more than 8 marks",
		"Ada " + strings.Repeat("\u0489", 9) + "b": "under more than 8 marks",
		// One character for a letter with its mark, and one for two marks, count in full.
		"\u00e9" + strings.Repeat("\u0327", 8):       "under more than 8 marks",
		"\u0958" + strings.Repeat("\u0327", 8):       "under more than 8 marks",
		"a" + strings.Repeat("\u0327", 7) + "\u0344": "under more than 8 marks",
	} {
		if got, err := Clean(in); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("Clean(%.30q) = %q, %v, want an error with %q", in, got, err, want)
		}
	}
}

func TestTextIsSafeOnAScreen(t *testing.T) {
	part := rapid.OneOf(rapid.String(), rapid.StringMatching(`[\x00-\x1f\x7f-\x9fa-z\[;0-9m]*`),
		rapid.SampledFrom([]string{"👩\u200d👧", "\u200d", "\u200c", "❤\ufe0f", "\ufe0f", "نی", "\u0301", "\u0d4d", " ", "\u3164", "e"}))
	rapid.Check(t, func(t *rapid.T) {
		in := strings.Join(rapid.SliceOfN(part, 1, 6).Draw(t, "text"), "")
		out := Text(in, 12)
		if ansi.StringWidth(out) > 12 {
			t.Fatalf("%q is wider than 12 cells", out)
		}
		if strings.ContainsFunc(out, unicode.IsControl) || strings.ContainsAny(out, "\u202a\u202b\u202d\u202e\u2066\u2067\u2068") {
			t.Fatalf("control characters are left in %q", out)
		}
		if Text(out, 12) != out {
			t.Fatalf("cleaning %q again gives %q", out, Text(out, 12))
		}
		if name, err := Clean(in); err == nil {
			if again, err := Clean(name); err != nil || again != name {
				t.Fatalf("the name %q comes to %q, %v", name, again, err)
			}
		}
	})
}

func FuzzClean(f *testing.F) {
	f.Add("Ada \x1b[31m👩\u200d👧 \u0301")
	f.Add("a\u0325\u0327\u0327\u0327\u06df\u06df\u06df\u0344")
	f.Fuzz(func(t *testing.T, in string) {
		name, err := Clean(in)
		if err != nil {
			return
		}
		if again, err := Clean(name); err != nil || again != name || ansi.StringWidth(name) > Max || strings.TrimSpace(name) == "" {
			t.Fatalf("the name %q comes to %q, %v", name, again, err)
		}
	})
}
