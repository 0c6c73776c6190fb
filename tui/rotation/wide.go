package rotation

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// wideFrom is the width from which the map stands beside the rounds.
const wideFrom = 160

// wide is who met whom and how fair that is on the left, and the rounds on the right.
func (r *Rotation) wide(c ui.Context) []string {
	left, right := r.panes(c)
	k, ok := r.certificate(c)
	var under []string
	if ok {
		under = append([]string{""}, bars(left, k)...)
	}
	left.Height = max(heatAround+1, c.Height-len(under))
	rows := append(r.heat(left), under...)
	beside := r.roundsPane(right)
	out := make([]string, c.Height)
	for y := range out {
		var a, b string
		if y < len(rows) {
			a = rows[y]
		}
		if y < len(beside) {
			b = beside[y]
		}
		out[y] = line.Fit(a, left.Width) + c.Theme.Frame.Render(" │ ") + line.Cut(b, right.Width)
	}
	return out
}

// panes are the spaces of the map and of the rounds.
func (r *Rotation) panes(c ui.Context) (left, right ui.Context) {
	left, right = c, c
	need := heatName + 3*len(r.facts.people)
	if c.Width-need-3 < blockWidth {
		need = heatName + 2*len(r.facts.people)
	}
	right.Width = min(76, max(blockWidth, c.Width-need-3))
	left.Width = c.Width - right.Width - 3
	return left, right
}

// longer tells whether the rounds are longer than their pane.
func (r *Rotation) longer(c ui.Context) bool {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		return false
	}
	_, right := r.panes(c)
	k, ok := r.certificate(c)
	rows := len(summary(right, k, ok))
	for _, h := range heights(right) {
		rows += h
	}
	return rows > c.Height
}

// roundsPane is the rounds, or in the rolling flow the calls, the newest first.
func (r *Rotation) roundsPane(c ui.Context) []string {
	k, ok := r.certificate(c)
	head := summary(c, k, ok)
	if c.Night().Settings.Flow == session.Rolling {
		return append(head, calls(c, c.Height-len(head))...)
	}
	rows := r.layout(c)
	room := max(0, c.Height-len(head))
	from := min(r.firstOf(c, rows, room), max(0, len(rows)-room))
	return append(head, rows[from:min(len(rows), from+room)]...)
}

// calls lists the newest calls of a rolling night.
func calls(c ui.Context, room int) []string {
	games := c.Night().Games
	out := []string{c.Theme.Strong.Render(fmt.Sprintf("Calls so far: %d", len(games))) + c.Theme.Dim.Render("  the newest first"), ""}
	for i := range slices.Backward(games) {
		g := &games[i]
		if len(out) >= room {
			break
		}
		text := g.Called.In(c.Now.Location()).Format("15:04") + gameLine(c, g.Court, g.A, g.B, result(g))
		if g.Final != nil {
			text = c.Theme.Dim.Render(text)
		}
		out = append(out, text)
	}
	return out
}
