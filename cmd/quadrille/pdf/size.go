package pdf

import (
	"fmt"
	"strings"
)

// Size is that of a page, in millimetres.
type Size struct {
	name       string
	wide, tall float64
}

// The sizes of paper that printers have.
var (
	A4     = Size{"a4", 210, 297}
	Letter = Size{"letter", 215.9, 279.4}
)

// String is the name of the size.
func (s Size) String() string { return s.name }

// ParseSize reads the name of a size.
func ParseSize(text string) (Size, error) {
	for _, s := range []Size{A4, Letter} {
		if strings.EqualFold(text, s.name) {
			return s, nil
		}
	}
	return Size{}, fmt.Errorf("paper %q is not known: use a4 or letter", text)
}
