package name

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestAlike(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"Müller, Hans", "Hans Müller", true},
		{"Hans Muller", "Hans Müller", true},
		{"Hans Mueller", "Hans Müller", true},
		{"Anna Berg", "Anna Bergh", true},
		{"Anna Berg", "Anna Breg", true},
		{"Anna Berg", "Ana Berg", true},
		{"Anna-Lena Berg", "Anna Lena Berg", true},
		{"Zanna Berg", "Anna Berg", true},
		{"Renée", "Renee", true},
		{"Łukasz Nowak", "Lukasz Nowak", true},
		{"Anna Berg", "anna berg", false}, // the same name
		{"Anna", "Anne", false},           // single words: too many people are called so
		{"Martin", "Martina", false},
		{"Anna Berg", "Anna Stein", false},
		{"Anna Berg", "Ben Berg", false},
		{"Anna Berg 1", "Anna Berg 2", false},
		{"P01", "P02", false},
		{"Anna B.", "Anna S.", false},
		{"Anna B.", "Anna Be.", false},
		{"Person A1", "Person B1", false},
		{"Person A100", "Person B100", false},
		{"Annalena Berg", "Anna Lena Berg", true},
		{"Berg Zanna", "Anna Berg", true},
		{"Anna Anna", "Anna Berg", false},
		{"李小龍", "李小明", false},
		{"", "Anna", false},
		{"!", "?", false},
	} {
		if got := Alike(c.a, c.b); got != c.want {
			t.Errorf("Alike(%q, %q) = %v", c.a, c.b, got)
		}
		if Alike(c.a, c.b) != Alike(c.b, c.a) {
			t.Errorf("%q and %q are alike one way only", c.a, c.b)
		}
	}
}

// The index finds just those whom a comparison of each with each finds.
func TestTheIndexFindsWhoIsAlike(t *testing.T) {
	word := rapid.StringMatching(`[abé]{1,4}`)
	name := rapid.Custom(func(t *rapid.T) string { return word.Draw(t, "first") + " " + word.Draw(t, "last") })
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfN(name, 0, 12).Draw(t, "names")
		var x Index
		for _, n := range names {
			x.Add(n)
		}
		of := name.Draw(t, "of")
		var want []int
		for i, n := range names {
			if Alike(of, n) {
				want = append(want, i)
			}
		}
		if got := x.Like(of); !slices.Equal(got, want) {
			t.Fatalf("alike to %q in %q: %v, want %v", of, names, got, want)
		}
	})
}

func TestKeysAreEqualForNamesThatDifferInCase(t *testing.T) {
	part := rapid.SampledFrom([]string{"k", "K", "\u212a", "ß", "ẞ", "ſ", "s", "S", "Å", "å", "\u212b", "İ", "i", "I", "ı", "x", "李"})
	rapid.Check(t, func(t *rapid.T) {
		a, b := strings.Join(rapid.SliceOfN(part, 0, 3).Draw(t, "a"), ""), strings.Join(rapid.SliceOfN(part, 0, 3).Draw(t, "b"), "")
		if (Key(a) == Key(b)) != strings.EqualFold(a, b) {
			t.Fatalf("%q and %q have the keys %q and %q", a, b, Key(a), Key(b))
		}
	})
}
