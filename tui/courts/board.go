package courts

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// lines draws one game: the call, who stands where, and why.
func (b *board) lines(c ui.Context, g *session.Game) []string {
	title := c.Theme.Title.Render("Court " + string(g.Court))
	out := []string{
		line.Spread(title+"  "+g.Rules.String(), elapsed(c, g), c.Width),
		"  " + c.Theme.Dim.Render(b.standing(g)),
	}
	out = append(out, b.middle(c, g)...)
	out = append(out, "  "+teamsLine(c, g))
	if c.Height < fullBoard {
		return b.shortLines(c, g)
	}
	for _, text := range plan(c, g) {
		out = append(out, "  "+text)
	}
	for _, text := range line.Wrap(g.State.WhyFor(seatNames(c, g)), c.Width-4) {
		out = append(out, "  "+text)
	}
	return out
}

// fullBoard is the least height with room for the court from above.
const fullBoard = 16

// shortLines is the board for a small terminal: who plays, the call, and why.
func (b *board) shortLines(c ui.Context, g *session.Game) []string {
	out := []string{
		c.Theme.Strong.Render(fmt.Sprintf("left  %d  %s", g.State.Score.A, c.Names.Team(g.A))),
		c.Theme.Strong.Render(fmt.Sprintf("right %d  %s", g.State.Score.B, c.Names.Team(g.B))),
	}
	for _, text := range b.middle(c, g) {
		if text = strings.TrimSpace(text); text != "" {
			out = append(out, line.Wrap(text, c.Width)...)
		}
	}
	out = append(out, line.Wrap(g.State.WhyFor(seatNames(c, g)), c.Width)...)
	return out[:min(len(out), c.Height)]
}

// clickHalf does what the arrow to the half of the court that was clicked does.
func (s *Courts) clickHalf(c ui.Context, g *session.Game, x, y int) ui.Intent {
	key, ok := s.board.half(c, g, x, y)
	if !ok {
		return nil
	}
	for _, a := range s.boardActions(c, g) {
		if slices.Contains(a.Key.Keys(), key) {
			return a.Take(key)
		}
	}
	return nil
}

// half is the arrow to the half of the court that lies at a cell.
func (b *board) half(c ui.Context, g *session.Game, x, y int) (key string, ok bool) {
	arrows := [2]string{"left", "right"}
	if c.Height < fullBoard { // the lines of the two teams
		if y < 0 || y > 1 {
			return "", false
		}
		return arrows[y], true
	}
	top := 2 + len(b.middle(c, g)) // the names above the court belong to their halves
	net := 2 + 1 + boxWidth + 7
	if y < top || y > top+len(plan(c, g))-1 || x < 2 || x > 2*net-2 || x == net {
		return "", false
	}
	if x < net {
		return arrows[0], true
	}
	return arrows[1], true
}

// standing is what both teams have left, and what they lost rallies by where somebody noted it.
func (b *board) standing(g *session.Game) string {
	pair := func(what string, of func(scoring.Team) int) string {
		return fmt.Sprintf("%s %d and %d", what, of(scoring.A), of(scoring.B))
	}
	parts := []string{pair("time-outs left", g.TimeOutsLeft), pair("points to game", g.State.PointsToGame)}
	if t := scoring.TallyFaults(g.Rallies); b.faults || t.Of(scoring.A)+t.Of(scoring.B) > 0 {
		parts = append(parts, pair("faults", t.Of))
	}
	return strings.Join(parts, " · ")
}

// middle is the call and what else needs saying, or the question that waits for its answer.
func (b *board) middle(c ui.Context, g *session.Game) []string {
	switch {
	case !g.Running():
		return []string{"  " + c.Theme.Strong.Render("Game over: "+session.ScoreText(*g.Final)), "", ""}
	case b.asks(g):
		return b.question(c, g)
	}
	return []string{
		"  " + c.Theme.Strong.Render("Call: "+strings.ReplaceAll(g.State.Call(), "-", " - ")) + "   " + serveLine(c, g),
		"  " + c.Theme.Warn.Render(hint(c, g)),
		"  " + c.Theme.Warn.Render(pauseLine(c, g)),
	}
}

// seatNames are the short names of the players by their seats.
func seatNames(c ui.Context, g *session.Game) scoring.Names {
	var n scoring.Names
	for i, s := range []session.Team{g.A, g.B} {
		for j, id := range s {
			if id != "" {
				n[i][j] = c.Names.Short(id)
			}
		}
	}
	return n
}

// teamsLine names the teams above their halves of the court, with their points.
func teamsLine(c ui.Context, g *session.Game) string {
	const half = boxWidth + 8
	text := func(s scoring.Team) string {
		return fmt.Sprintf("%s  %d", c.Names.Team(g.Team(s)), g.State.Score.Of(s))
	}
	return c.Theme.Strong.Render(line.Fit(text(scoring.A), half) + " " + line.Right(text(scoring.B), half))
}

// hint is what needs saying now besides the call.
func hint(c ui.Context, g *session.Game) string {
	text := ""
	if side, ok := g.State.GamePoint(); ok {
		text = "Game point for " + c.Names.Team(g.Team(side)) + ". "
	}
	if g.EndsDue() {
		text += "Switch ends now; press e when it is done."
	}
	return text
}

// pauseLine says who has a time-out, and until when.
func pauseLine(c ui.Context, g *session.Game) string {
	p := g.Pause
	if p == nil {
		return ""
	}
	until := p.Until()
	if until.IsZero() {
		return "Referee time-out: the next rally ends it."
	}
	what := "Time-out"
	if p.Kind == scoring.MedicalTimeOut {
		what = "Medical time-out"
	}
	return fmt.Sprintf("%s of %s until %s.", what, c.Names.Team(g.Team(p.Side)), until.In(c.Now.Location()).Format("15:04:05"))
}

// serveLine says who serves from where to whom.
func serveLine(c ui.Context, g *session.Game) string {
	st := g.State
	return fmt.Sprintf("%s serves from the %s box to %s.",
		c.Names.Short(g.At(st.Server)), st.Box, c.Names.Short(g.At(st.Receiver)))
}

// boxWidth is the width of a service box on the screen, in cells.
const boxWidth = 24

// plan is the court from above, team A on the left. Each side sees its right box at its own right
// hand: the lower one on the left side, the upper one on the right side.
func plan(c ui.Context, g *session.Game) []string {
	const box = boxWidth
	name := func(side scoring.Team, b scoring.Box) string {
		seat, ok := g.State.On(side, b)
		if !ok {
			return ""
		}
		text := c.Names.Short(g.At(seat))
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

// elapsed is how long a game has gone on, without holds, in whole minutes, and of how many where the
// clock stops it.
func elapsed(c ui.Context, g *session.Game) string {
	played, limit := int(c.Night().GameTime(g, c.Now).Minutes()), g.Rules.Minutes
	switch {
	case limit > 0 && played >= limit:
		return "time is up"
	case limit > 0:
		return fmt.Sprintf("%d of %d min", played, limit)
	}
	return fmt.Sprintf("%d min", played)
}
