package scoring

import (
	"fmt"
	"strings"
	"unicode"
)

// Rally is one rally that counted: who won it and, where somebody noted it, the fault that ended it.
// A rally that is replayed is no rally; a [Sheet] can note it.
type Rally struct {
	Won   Team  `json:"won"`
	Fault Fault `json:"fault,omitzero"`
	// By is the player who committed the fault: 1 for the starting server of the losing side, 2 for
	// the partner, 0 where nobody noted it. Whoever commits a fault loses the rally, so the side is
	// known.
	By uint8 `json:"by,omitzero"`
}

// Player is the seat of the player who committed the fault, and false where nobody noted it.
func (r Rally) Player() (Seat, bool) {
	if r.By != 1 && r.By != 2 {
		return Seat{}, false
	}
	return Seat{r.Won.Other(), r.By - 1}, true
}

// ParseRallies reads the winners of rallies, a letter each: "a b b b a" or "abbba". White space is
// ignored, and upper case is fine. The error names the first place that is no rally.
func ParseRallies(text string) ([]Rally, error) {
	rallies := make([]Rally, 0, len(text))
	place := 0
	for _, c := range text {
		place++
		switch {
		case c == 'a' || c == 'A':
			rallies = append(rallies, Rally{Won: A})
		case c == 'b' || c == 'B':
			rallies = append(rallies, Rally{Won: B})
		case unicode.IsSpace(c):
		default:
			return nil, fmt.Errorf("character %d, after %s, is %q: write a or b for the team that won the rally",
				place, counted(len(rallies), "rally", "rallies"), c)
		}
	}
	return rallies, nil
}

// FormatRallies writes the winners of rallies as [ParseRallies] reads them. Faults are left out.
func FormatRallies(rallies []Rally) string {
	var b strings.Builder
	b.Grow(len(rallies))
	for _, r := range rallies {
		b.WriteByte('a' + byte(r.Won))
	}
	return b.String()
}

// counted is a number with the right form of its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
