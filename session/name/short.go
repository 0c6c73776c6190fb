package name

import (
	"strings"

	"github.com/rivo/uniseg"
)

// spoken is a name in the order in which people say it: "O'Brien, Pat" is Pat O'Brien.
func spoken(full string) string {
	last, first, ok := strings.Cut(full, ", ")
	if !ok || last == "" || first == "" {
		return full
	}
	return first + " " + last
}

// First is the first word of a name as people say it.
func First(full string) string {
	first, _, _ := strings.Cut(spoken(full), " ")
	return first
}

// Initial is the first word of a name and as many letters of its last word, with a full stop where that is
// not all of it. A name of one word stays as it is.
func Initial(full string, letters int) string {
	first, rest, ok := strings.Cut(spoken(full), " ")
	if !ok {
		return first
	}
	last := rest[strings.LastIndexByte(rest, ' ')+1:]
	var part strings.Builder
	for state, left := -1, last; letters > 0 && left != ""; letters-- {
		var letter string
		letter, left, _, state = uniseg.FirstGraphemeClusterInString(left, state)
		part.WriteString(letter)
	}
	if part.Len() == len(last) && letters > 0 {
		return first + " " + last
	}
	return first + " " + strings.TrimSuffix(part.String(), ".") + "."
}
