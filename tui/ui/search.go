package ui

import (
	"slices"
	"strings"

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
// with a word that begins so, then names that contain it, then names of whose words it has the first letters, as bok has
// of Bram Okoro. Letters from anywhere would find long names for any short one, and enter would check in the wrong
// person. Case and accents do not matter. Names that match equally well keep their order.
func (x Index) Search(query string) []int {
	query = name.Plain(query)
	if query == "" {
		out := make([]int, len(x.plain))
		for i := range out {
			out[i] = i
		}
		return out
	}
	var begins, contains, pieced []int
	for i, plain := range x.plain {
		switch {
		case Begins(plain, query):
			begins = append(begins, i)
		case strings.Contains(plain, query):
			contains = append(contains, i)
		case inPieces(strings.Fields(plain), query):
			pieced = append(pieced, i)
		}
	}
	return slices.Concat(begins, contains, pieced)
}

// inPieces tells whether a query is the beginnings of some of a name's words, in their order.
func inPieces(words []string, query string) bool {
	query = strings.ReplaceAll(query, " ", "")
	reached := make([]bool, len(query)+1) // by the words so far, how much of the query
	reached[0] = true
	for _, word := range words {
		for from := len(query) - 1; from >= 0; from-- { // downwards, so that a word gives one piece
			for n := 1; reached[from] && n <= min(len(word), len(query)-from) && word[n-1] == query[from+n-1]; n++ {
				reached[from+n] = true
			}
		}
	}
	return reached[len(query)]
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
