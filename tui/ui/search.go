package ui

import (
	"slices"
	"strings"

	"github.com/sahilm/fuzzy"

	"club/quadrille/session/name"
)

// Index finds names by what somebody types in a hurry. Making one takes a while; looking names up does not.
type Index struct{ plain []string }

// NewIndex makes the index of some names.
func NewIndex(names []string) Index {
	x := Index{plain: make([]string, len(names))}
	for i, full := range names {
		x.plain[i] = name.Plain(full)
	}
	return x
}

// Search gives the indices of the names that fit, best first: names
// with a word that begins so, then names that contain it, then names that have its letters in
// order. Case and accents do not matter. Names that match equally well keep their order.
func (x Index) Search(query string) []int {
	query = name.Plain(query)
	if query == "" {
		out := make([]int, len(x.plain))
		for i := range out {
			out[i] = i
		}
		return out
	}
	var begins, contains, scattered []int
	sure := make([]bool, len(x.plain))
	for i, plain := range x.plain {
		switch {
		case Begins(plain, query):
			begins = append(begins, i)
		case strings.Contains(plain, query):
			contains = append(contains, i)
		default:
			continue
		}
		sure[i] = true
	}
	for _, m := range fuzzy.Find(query, x.plain) {
		if !sure[m.Index] {
			scattered = append(scattered, m.Index)
		}
	}
	return slices.Concat(begins, contains, scattered)
}

// Search looks names up once; see Index.
func Search(query string, names []string) []int { return NewIndex(names).Search(query) }

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
