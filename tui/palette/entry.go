// Package palette is the box in which everything that can be done, and everybody who can be asked for, is
// found by a few letters. It teaches the short way: the key that does the same stands at the right.
package palette

import (
	"cmp"
	"slices"
	"strings"

	"club/quadrille/session/name"
	"club/quadrille/tui/ui"
)

// Entry is one thing to do or to go to.
type Entry struct {
	Label string
	Note  string // what stands beside it
	Keys  string // the keys that do the same, empty for none
	Why   string // why it cannot be done now; empty when it can
	Take  func() ui.Intent
	Also  string // other words by which it is found; they are not shown

	label, note []string // the words of both, plain, with the other words in note; made when the list is
	made        bool
}

// Ready makes entries ready to be found. Those that are stay as they are.
func Ready(entries []Entry) []Entry {
	for i := range entries {
		if !entries[i].made {
			entries[i].ready()
		}
	}
	return entries
}

// ready makes an entry ready to be found.
func (e *Entry) ready() {
	e.made = true
	e.label = strings.Fields(name.Plain(marks.Replace(e.Label)))
	e.note = strings.Fields(name.Plain(marks.Replace(e.Note + " " + e.Also)))
}

// marks part words as blanks do.
var marks = strings.NewReplacer(":", " ", ",", " ", "(", " ", ")", " ", "/", " ", ";", " ")

// cost tells how well a word of the query is found; less is better, negative when it is not. What is said
// beside a label counts less than the label.
func (e *Entry) cost(query string) int {
	const beside = 3
	inLabel, inNote := grade(query, e.label), grade(query, e.note)
	if inNote == scattered {
		inNote = missing
	}
	switch {
	case inLabel == missing && inNote == missing:
		return -1
	case inNote == missing, inLabel != missing && 2*inLabel <= 2*inNote+beside:
		return 2 * inLabel
	}
	return 2*inNote + beside
}

// How well a word of the query is found; less is better.
const (
	whole     = iota // as a word
	begins           // as the beginning of a word
	inside           // inside a word
	scattered        // its letters in order, in one word
	missing
)

// grade tells how well one word of a query is found in the words of an entry.
func grade(query string, words []string) int {
	best := missing
	for _, w := range words {
		switch {
		case w == query:
			return whole
		case strings.HasPrefix(w, query):
			best = min(best, begins)
		case best <= inside:
		case strings.Contains(w, query):
			best = inside
		case len(query) > 2 && inOrder(query, w):
			best = min(best, scattered)
		}
	}
	return best
}

// inOrder tells whether a word has the letters of a query, one after the other.
func inOrder(query, word string) bool {
	for _, r := range query {
		i := strings.IndexRune(word, r)
		if i < 0 {
			return false
		}
		word = word[i+len(string(r)):]
	}
	return true
}

// Find gives the indices of the entries that have every word of a query, best first; all of them for an
// empty one. The order of the words does not matter, nor do case and accents. Entries found equally well keep
// their order.
func Find(query string, entries []Entry) []int {
	words := strings.Fields(name.Plain(query))
	type hit struct{ at, grade int }
	var hits []hit
	for i, e := range entries {
		sum := 0
		for _, w := range words {
			g := e.cost(w)
			if g < 0 {
				sum = -1
				break
			}
			sum += g
		}
		if sum >= 0 {
			hits = append(hits, hit{i, sum})
		}
	}
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(a.grade, b.grade) })
	out := make([]int, len(hits))
	for i, h := range hits {
		out[i] = h.at
	}
	return out
}
