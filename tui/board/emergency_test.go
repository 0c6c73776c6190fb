package board

import (
	"slices"
	"strings"
	"testing"

	"club/quadrille/session/public"
)

// TestTheCardTakesItsTurn: a board shows the emergency card among its lists where the organiser wants it, and whole.
func TestTheCardTakesItsTurn(t *testing.T) {
	v := hall(4, 2)
	has := func(v *public.View) (lines []string) {
		for _, p := range panels(v) {
			if p.title == "In an emergency" {
				lines = p.items
			}
		}
		return lines
	}
	if got := has(v); got != nil {
		t.Fatalf("nobody wants it shown, and the board says %q", got)
	}
	access := "through the gate in the yard, code 1234; Bram meets it there"
	v.Emergency = []public.Line{{Label: "Address", Text: "12 Mill Lane"}, {Label: "Access", Text: access}}
	got := has(v)
	if !slices.Contains(got, "Address: 12 Mill Lane") || !strings.Contains(strings.Join(got, " "), "Access: "+access) {
		t.Errorf("the board says %q", got)
	}
}
