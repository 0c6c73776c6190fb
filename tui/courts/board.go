package courts

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// scene is where the parts of the board lie. The court is as large as the screen lets it be drawn to scale.
type scene struct {
	head          []string // above the names of the teams
	width, height int      // of the court, 0 where there is no room for one
	beside        int      // cells of the column beside the court, 0 where what it says stands above
	why           int      // lines under the court
}

const (
	leastBeside = 30
	gapBeside   = 3
	whyRows     = 2
)

// scene lays the board out: beside a column that says what is called, or under it where the screen is narrow.
func (b *board) scene(c ui.Context, g *session.Game) scene {
	title := c.Theme.Title.Render("Court " + string(g.Court))
	sc := scene{head: []string{line.Spread(title+"  "+g.Rules.String(), elapsed(c, g), c.Width)}, why: whyRows}
	if b.asks(g) {
		sc.head, sc.why = append(sc.head, b.question(c, g)...), 0
	} else {
		sc.head = append(sc.head, "  "+c.Theme.Dim.Render(b.standing(g)))
	}
	var ok bool
	room := c.Height - len(sc.head) - 1 - sc.why
	if sc.width, sc.height, ok = widget.ToScale(c.Width-gapBeside-max(leastBeside, c.Width/3)-1, room); ok {
		sc.beside = c.Width - 1 - sc.width - gapBeside
		return sc
	}
	if !b.asks(g) {
		sc.head = append(sc.head, b.middle(c, g)...)
	}
	sc.width, sc.height, _ = widget.ToScale(c.Width-2, c.Height-len(sc.head)-1-sc.why)
	return sc
}

// lines draws one game: the call, who stands where, and why.
func (b *board) lines(c ui.Context, g *session.Game) []string {
	sc := b.scene(c, g)
	if sc.height == 0 {
		return b.shortLines(c, g)
	}
	block := append([]string{b.teamsLine(c, g, sc.width)}, b.seats(c, g).Court().Lines(sc.width, sc.height)...)
	if sc.beside > 0 {
		block = line.Beside(block, b.beside(c, g, sc.beside, len(block)), sc.width, gapBeside)
	}
	out := sc.head
	for _, text := range block {
		out = append(out, " "+text)
	}
	if sc.why > 0 {
		for _, text := range line.Wrap(g.State.WhyFor(seatNames(c, g)), c.Width-2) {
			out = append(out, " "+text)
		}
	}
	return out[:min(len(out), c.Height)]
}

// mirrored tells whether team B is drawn on the left: once the teams have changed ends, and the other way
// round where somebody looks from the other side of the hall.
func (b *board) mirrored(g *session.Game) bool { return b.mirror != g.SwitchedEnds() }

// left is the team that is drawn on the left, which the left arrow is about.
func (b *board) left(g *session.Game) scoring.Team {
	if b.mirrored(g) {
		return scoring.B
	}
	return scoring.A
}

// seats are the players in their boxes.
func (b *board) seats(c ui.Context, g *session.Game) widget.Seats {
	return widget.Seats{
		State: g.State, Mirrored: b.mirrored(g),
		Name:  func(s scoring.Seat) string { return c.Names.Short(g.At(s)) },
		TeamA: c.Theme.TeamA.Render, TeamB: c.Theme.TeamB.Render, Server: c.Theme.Strong.Render, Line: c.Theme.Frame.Render,
	}
}

// beside is the column at the right of the court: the call to be read from afar, what needs saying, and the
// run of the game as far as there is room for it.
func (b *board) beside(c ui.Context, g *session.Game, width, height int) []string {
	out := []string{c.Theme.Strong.Render(line.Cut(callText(g), width))}
	style := c.Theme.Strong
	for _, row := range bigCall(g, width, height) {
		out = append(out, style.Render(row))
	}
	add := func(style lipgloss.Style, text string) {
		if text == "" {
			return
		}
		for _, l := range line.Wrap(text, width) {
			out = append(out, style.Render(l))
		}
	}
	if g.Running() {
		add(lipgloss.NewStyle(), serveLine(c, g))
		add(c.Theme.Warn, hint(c, g))
		add(c.Theme.Warn, pauseLine(c, g))
	}
	if g.Running() && len(out) < height-1 {
		out = append(out, c.Theme.Dim.Render(line.Cut(widget.Legend, width)))
	}
	return append(out, b.run(c, g, width, height-len(out))...)
}

// bigCall is the call, or the final score, in digits as large as there is room for.
func bigCall(g *session.Game, width, height int) []string {
	text := g.State.Call()
	if !g.Running() {
		text = g.Final.Score().String()
	}
	if rows := widget.Big(text, false); height >= 4*widget.BigRows && line.Width(rows[0]) <= width {
		return append([]string{""}, append(rows[:], "")...)
	}
	if rows := widget.Digits(text, false); line.Width(rows[0]) <= width {
		return rows[:]
	}
	return nil
}

// callText is the call in words.
func callText(g *session.Game) string {
	if !g.Running() {
		return "Game over: " + session.ScoreText(*g.Final)
	}
	return "Call: " + strings.ReplaceAll(g.State.Call(), "-", " - ")
}

// shortLines is the board for a small terminal: who plays, the call, and why.
func (b *board) shortLines(c ui.Context, g *session.Game) []string {
	left := b.left(g)
	out := []string{
		c.Theme.Strong.Render(fmt.Sprintf("left  %d  %s", g.State.Score.Of(left), c.Names.Team(g.Team(left)))),
		c.Theme.Strong.Render(fmt.Sprintf("right %d  %s", g.State.Score.Of(left.Other()), c.Names.Team(g.Team(left.Other())))),
	}
	middle := b.middle(c, g)
	if b.asks(g) {
		middle = b.question(c, g)
	}
	for _, text := range middle {
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

// half is the arrow to the half of the court that lies at a cell. The names above belong to their halves.
func (b *board) half(c ui.Context, g *session.Game, x, y int) (key string, ok bool) {
	arrows := [2]string{"left", "right"}
	sc := b.scene(c, g)
	if sc.height == 0 { // the lines of the two teams
		if y < 0 || y > 1 {
			return "", false
		}
		return arrows[y], true
	}
	net := 1 + sc.width/2
	if y < len(sc.head) || y > len(sc.head)+sc.height || x < 1 || x > sc.width || x == net {
		return "", false
	}
	if x < net {
		return arrows[0], true
	}
	return arrows[1], true
}

// standing is what both teams have left, and what they lost rallies by where somebody noted it; first the
// team on the left.
func (b *board) standing(g *session.Game) string {
	left := b.left(g)
	pair := func(what string, of func(scoring.Team) int) string {
		return fmt.Sprintf("%s %d and %d", what, of(left), of(left.Other()))
	}
	parts := []string{pair("time-outs left", g.TimeOutsLeft), pair("points to game", g.State.PointsToGame)}
	if t := scoring.TallyFaults(g.Rallies); b.faults || t.Of(scoring.A)+t.Of(scoring.B) > 0 {
		parts = append(parts, pair("faults", t.Of))
	}
	return strings.Join(parts, " · ")
}

// middle is the call and what else needs saying, where nothing stands beside the court.
func (b *board) middle(c ui.Context, g *session.Game) []string {
	if !g.Running() {
		return []string{"  " + c.Theme.Strong.Render(callText(g)), "", ""}
	}
	return []string{
		"  " + c.Theme.Strong.Render(callText(g)) + "   " + serveLine(c, g),
		"  " + c.Theme.Warn.Render(hint(c, g)),
		"  " + c.Theme.Warn.Render(pauseLine(c, g)),
	}
}
