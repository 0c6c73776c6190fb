package ui

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var club = []string{
	"Agnes Vale", "Bram Okoro", "Cleo Hart", "Dario Finch", "Edda Noll", "Finn Noll",
	"Brendan Ash", "Bartholomew Featherstonehaugh-Cholmondeley",
	"Márta Ōno", "Zoë van der Berg", "Nils Corran", "Anna-Lena Åström", "Ng", "李小龍",
}

func TestSearch(t *testing.T) {
	for _, c := range []struct {
		query string
		want  []string // the first that are found, in order; "" for none
	}{
		{"agn", []string{"Agnes Vale"}},
		{"AGN", []string{"Agnes Vale"}},
		{" agn ", []string{"Agnes Vale"}},
		{"vale", []string{"Agnes Vale"}},
		{"noll", []string{"Edda Noll", "Finn Noll"}},
		{"fin", []string{"Dario Finch", "Finn Noll"}},
		{"finn", []string{"Finn Noll"}},
		{"finn n", []string{"Finn Noll"}},
		{"marta", []string{"Márta Ōno"}},
		{"ono", []string{"Márta Ōno"}},
		{"zoe", []string{"Zoë van der Berg"}},
		{"van der", []string{"Zoë van der Berg"}},
		{"astrom", []string{"Anna-Lena Åström"}},
		{"åström", []string{"Anna-Lena Åström"}},
		{"lena", []string{"Anna-Lena Åström"}},
		{"ng", []string{"Ng"}},
		{"小", []string{"李小龍"}},
		{"bok", []string{"Bram Okoro"}}, // the beginnings of words
		{"zvb", []string{"Zoë van der Berg"}},
		{"maro", []string{"Márta Ōno"}},
		{"bra ok", []string{"Bram Okoro"}},
		{"ndl", nil}, // letters in order, but of no beginnings
		{"elod", nil},
		{"ben", nil}, // a new guest of that name, and not Brendan
		{"xyzzy", nil},
	} {
		var got []string
		for _, i := range Search(c.query, club) {
			got = append(got, club[i])
		}
		if len(got) < len(c.want) || !slices.Equal(got[:len(c.want)], c.want) || c.want == nil && got != nil {
			t.Errorf("%q finds %q, want %q first", c.query, got, c.want)
		}
	}
}

func TestAnEmptySearchKeepsAllInOrder(t *testing.T) {
	for _, query := range []string{"", "  ", "\t"} {
		got := Search(query, club)
		if len(got) != len(club) || !slices.IsSorted(got) {
			t.Errorf("%q gives %v", query, got)
		}
	}
}

// TestSearchFindsEveryNameByItsWords: the beginning of any word of a name finds the name, nobody is
// found twice, and what is typed further only narrows what contains it.
func TestSearchFindsEveryNameByItsWords(t *testing.T) {
	name := rapid.StringMatching(`[A-ZÀ-Þ][a-zà-þ]{1,7}( [A-ZÀ-Þ][a-zà-þ]{1,7}){0,2}`)
	rapid.Check(t, func(r *rapid.T) {
		names := rapid.SliceOfN(name, 1, 30).Draw(r, "names")
		i := rapid.IntRange(0, len(names)-1).Draw(r, "who")
		word := []rune(rapid.SampledFrom(strings.Fields(names[i])).Draw(r, "word"))
		query := string(word[:rapid.IntRange(1, len(word)).Draw(r, "letters")])
		got := Search(query, names)
		if !slices.Contains(got, i) {
			r.Fatalf("%q does not find %q", query, names[i])
		}
		if slices.Sort(got); len(slices.Compact(got)) != len(got) {
			r.Fatalf("%q finds somebody twice: %v", query, got)
		}
	})
}

func FuzzSearch(f *testing.F) {
	f.Add("agn", "Agnes Vale")
	f.Add("é", "e\u0301")
	f.Add("\xff", "\xfe\x00")
	f.Fuzz(func(t *testing.T, query, name string) {
		for _, i := range Search(query, []string{name, "Agnes Vale"}) {
			if i < 0 || i > 1 {
				t.Fatalf("index %d of two names", i)
			}
		}
	})
}
