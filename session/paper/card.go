package paper

import (
	"strings"

	"club/quadrille/session/care"
)

// Card is the emergency card of the place, for the wall; what nobody has written is left to be written by hand.
func Card(n Night) Sheet {
	s := Sheet{Title: "In an emergency", Under: []string{care.CallFirst}, Large: true, Beside: 1}
	for _, l := range n.Card.Lines() {
		if l.Text == "" {
			l.Text = strings.Repeat("_", 40)
		}
		s.Blocks = append(s.Blocks, Block{Heading: l.Label, Lines: []string{l.Text}})
	}
	return s
}
