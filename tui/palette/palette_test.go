package palette

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// listed are entries by their labels.
func listed(labels ...string) []Entry {
	out := make([]Entry, len(labels))
	for i, l := range labels {
		out[i].Label = l
		out[i].ready()
	}
	return out
}

func TestFind(t *testing.T) {
	entries := listed("undo", "close court 12", "close court 1", "court 12: put somebody in", "Cora Okoro", "Márta Ōno", "standings of Club night 12", "hold play: wet court")
	for _, c := range []struct {
		query string
		want  []string // the first that are found, in order; nil for none
	}{
		{"close court 12", []string{"close court 12"}},
		{"12 close", []string{"close court 12"}},
		{"court 1", []string{"close court 1", "close court 12"}},
		{"cora", []string{"Cora Okoro"}},
		{"marta", []string{"Márta Ōno"}},
		{"ONO", []string{"Márta Ōno"}},
		{"wet", []string{"hold play: wet court"}},
		{"stndng", []string{"standings of Club night 12"}},
		{"undo redo", nil},
		{"xyzzy", nil},
	} {
		var got []string
		for _, i := range Find(c.query, entries) {
			got = append(got, entries[i].Label)
		}
		if len(got) < len(c.want) || !slices.Equal(got[:len(c.want)], c.want) || c.want == nil && got != nil {
			t.Errorf("%q finds %q, want %q first", c.query, got, c.want)
		}
	}
	if got := Find(" ", entries); len(got) != len(entries) || !slices.IsSorted(got) {
		t.Errorf("nothing typed gives %v", got)
	}
}

// TestFindNeedsNoOrder: the beginnings of some words of a label, in any order, find it.
func TestFindNeedsNoOrder(t *testing.T) {
	label := rapid.StringMatching(`[a-z]{1,6}( [a-z0-9]{1,6}){0,4}`)
	rapid.Check(t, func(r *rapid.T) {
		labels := rapid.SliceOfN(label, 1, 20).Draw(r, "labels")
		at := rapid.IntRange(0, len(labels)-1).Draw(r, "which")
		words := rapid.Permutation(strings.Fields(labels[at])).Draw(r, "words")
		for i, w := range words {
			words[i] = w[:rapid.IntRange(1, len(w)).Draw(r, "letters")]
		}
		if got := Find(strings.Join(words, " "), listed(labels...)); !slices.Contains(got, at) {
			r.Fatalf("%q does not find %q", words, labels[at])
		}
	})
}
