package name

import (
	"strings"

	"github.com/rivo/uniseg"
)

// First is the first word of a name.
func First(full string) string {
	first, _, _ := strings.Cut(full, " ")
	return first
}

// Initial is the first word of a name and as many letters of its last word, with a full stop where that is
// not all of it. A name of one word stays as it is.
func Initial(full string, letters int) string {
	first, rest, ok := strings.Cut(full, " ")
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
