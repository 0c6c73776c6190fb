package table

import (
	"club/quadrille/session"
	"club/quadrille/session/standings"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Night is the standings of any night as a page to read.
func Night(c ui.Context, n *session.Night) []string {
	f := facts{night: n}
	f.standings(c)
	if len(f.places) == 0 {
		return []string{"No game of this night is over."}
	}
	l := layoutOf(c)
	out := []string{c.Theme.Dim.Render(l.cells("", "name", "", "last 5", "games", "won", "share", "", "diff", "", "why here"))}
	for i := range f.places {
		out = append(out, f.row(c, l, i))
	}
	return append(append(out, ""), line.Wrap(n.TableNote()+" Order: "+standings.Order+".", c.Width)...)
}
