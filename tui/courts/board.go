package courts

import (
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// pressBoard handles keys while a game is scored rally by rally: one key a rally.
func (s *Courts) pressBoard(c ui.Context, g *session.Game, key string) (ui.Intent, bool) {
	switch key {
	case "left", "a":
		return s.rally(g, scoring.A), true
	case "right", "b":
		return s.rally(g, scoring.B), true
	case "backspace":
		return ui.Do{Command: session.UndoRally{Game: g.ID}}, true
	case "esc", "enter":
		s.board = 0
		return nil, true
	case "m":
		court := c.Night().Court(g.Court)
		return ui.Show{Dialog: courtMenu(c, *court)}, true
	case "?":
		return nil, false
	}
	return nil, len(key) == 1
}

func (s *Courts) rally(g *session.Game, won scoring.Side) ui.Intent {
	return ui.Do{
		Command: session.ScoreRally{Game: g.ID, Rally: scoring.Rally{Won: won}},
		After: func(l *session.Ledger) {
			if after := l.Club().Night().Game(g.ID); !after.Running() {
				s.board = 0
				s.next(l.Night(), g.Court)
			}
		},
	}
}

// Next implements ui.Adviser.
func (s *Courts) Next(c ui.Context) (string, bool) {
	switch n := c.Night(); {
	case n == nil:
		return "", false
	case s.board != 0 && n.Game(s.board) != nil && n.Game(s.board).Running():
		return "after each rally press ← if the left side won it, → if the right side did", true
	case !s.entry.empty():
		return "type both numbers, then enter; t if time ran out, r if a side gave up", true
	}
	return "", false
}

// boardLines draws one game: the call, who stands where, and why.
func boardLines(c ui.Context, g *session.Game) []string {
	st := g.State
	title := c.Theme.Title.Render("Court " + string(g.Court))
	out := []string{
		line.Spread(title+"  "+g.Rules.String(), elapsed(c, g), c.Width),
		"",
		"  " + c.Theme.Strong.Render("Call: "+strings.ReplaceAll(st.Call(), "-", " - ")) + "   " + serveLine(c, g),
		"  " + hint(c, g),
		"",
		"  " + sidesLine(c, g),
	}
	for _, text := range plan(c, g) {
		out = append(out, "  "+text)
	}
	for _, text := range line.Wrap(st.WhyFor(seatNames(c, g)), c.Width-4) {
		out = append(out, "  "+text)
	}
	return out
}

// seatNames are the short names of the players by their seats.
func seatNames(c ui.Context, g *session.Game) scoring.Names {
	var n scoring.Names
	for i, s := range []session.Side{g.A, g.B} {
		for j, id := range s {
			if id != "" {
				n[i][j] = c.Names.Short(id)
			}
		}
	}
	return n
}

// sidesLine names the sides above their halves of the court, with their points.
func sidesLine(c ui.Context, g *session.Game) string {
	const half = boxWidth + 8
	text := func(s scoring.Side) string {
		return fmt.Sprintf("%s  %d", c.Names.Side(sideOf(g, s)), g.State.Score.Of(s))
	}
	return c.Theme.Strong.Render(line.Fit(text(scoring.A), half) + " " + line.Right(text(scoring.B), half))
}

// hint is what needs saying now besides the call.
func hint(c ui.Context, g *session.Game) string {
	text := ""
	if side, ok := g.State.GamePoint(); ok {
		text = "Game point for " + c.Names.Side(sideOf(g, side)) + ". "
	}
	if g.State.EndsChange() {
		text += "Change ends now."
	}
	return c.Theme.Warn.Render(text)
}

// serveLine says who serves from where to whom.
func serveLine(c ui.Context, g *session.Game) string {
	st := g.State
	return fmt.Sprintf("%s serves from the %s box to %s.",
		c.Names.Short(seated(g, st.Server)), st.Box, c.Names.Short(seated(g, st.Receiver)))
}

// seated is the person of a seat.
func seated(g *session.Game, s scoring.Seat) session.PersonID {
	return sideOf(g, s.Side)[s.Index]
}

// boxWidth is the width of a service box on the screen, in cells.
const boxWidth = 24

// plan is the court from above, side A on the left. Each side sees its right box at its own right
// hand: the lower one on the left side, the upper one on the right side.
func plan(c ui.Context, g *session.Game) []string {
	const box = boxWidth
	name := func(side scoring.Side, b scoring.Box) string {
		seat, ok := g.State.On(side, b)
		if !ok {
			return ""
		}
		text := c.Names.Short(seated(g, seat))
		switch seat {
		case g.State.Server:
			text = "* " + text
		case g.State.Receiver:
			text = "o " + text
		}
		return text
	}
	edge := "+" + strings.Repeat("-", box) + "+------+------+" + strings.Repeat("-", box) + "+"
	half := func(left, right string) string {
		return "|" + line.Fit(" "+left, box) + "|      |      |" + line.Right(right+" ", box) + "|"
	}
	rows := []string{
		edge,
		half(name(scoring.A, scoring.Left), name(scoring.B, scoring.Right)),
		half("left", "right"),
		"+" + strings.Repeat("-", box) + "|   kitchen   |" + strings.Repeat("-", box) + "+",
		half("right", "left"),
		half(name(scoring.A, scoring.Right), name(scoring.B, scoring.Left)),
		edge,
		"* serves   o receives",
	}
	return rows
}
