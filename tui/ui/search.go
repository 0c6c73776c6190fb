package ui

import (
	"slices"
	"strings"

	"github.com/sahilm/fuzzy"

	"club/quadrille/session/name"
)

// Search finds names by what somebody types in a hurry and gives their indices, best first: names
// with a word that begins so, then names that contain it, then names that have its letters in
// order. Case and accents do not matter. Names that match equally well keep their order.
func Search(query string, names []string) []int {
	query = name.Plain(query)
	if query == "" {
		out := make([]int, len(names))
		for i := range out {
			out[i] = i
		}
		return out
	}
	var begins, contains, scattered []int
	plain := make([]string, len(names))
	for i, full := range names {
		plain[i] = name.Plain(full)
		switch {
		case Begins(plain[i], query):
			begins = append(begins, i)
		case strings.Contains(plain[i], query):
			contains = append(contains, i)
		}
	}
	sure := slices.Concat(begins, contains)
	for _, m := range fuzzy.Find(query, plain) {
		if !slices.Contains(sure, m.Index) {
			scattered = append(scattered, m.Index)
		}
	}
	return slices.Concat(sure, scattered)
}

// Begins tells whether the words of a full name, from one of them on, begin as query goes. Both are plain, see
// name.Plain.
func Begins(full, query string) bool {
	for rest := full; ; {
		if strings.HasPrefix(rest, query) {
			return true
		}
		_, next, ok := strings.Cut(rest, " ")
		if !ok {
			return false
		}
		rest = next
	}
}
