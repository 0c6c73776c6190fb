package courts

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// cardCache keeps finished cards, since joining styled text is what a frame costs most.
type cardCache map[cardKey][]string

// cardKey is everything that a card shows.
type cardKey struct {
	theme         *theme.Theme
	court         session.Court
	text          cardText
	selected      bool
	width, height int
}

// cardText is a card's content before it is laid out.
type cardText struct {
	right  string    // of the title
	short  [2]string // the sides by short names, for narrow cards
	a, b   string
	sa, sb string
	foot   string
	dim    bool
}

// card draws one court.
func (s *Courts) card(c ui.Context, court *session.Court, selected bool, g grid, why *session.Idle) []string {
	key := cardKey{c.Theme, *court, textOf(c, court, why), selected, g.width, g.height}
	if lines, ok := s.cache[key]; ok {
		return lines
	}
	if s.cache == nil || len(s.cache) > 512 {
		s.cache = cardCache{}
	}
	lines := draw(c, key)
	s.cache[key] = lines
	return lines
}

// textOf says what a court's card shows.
func textOf(c ui.Context, court *session.Court, why *session.Idle) cardText {
	n := c.Night()
	if g := n.Game(court.Game); g != nil {
		return gameText(c, n, g)
	}
	t := cardText{right: "free", dim: true}
	if !court.Open {
		t.right = "closed"
	}
	if g := n.LastOn(court.ID); g != nil && court.Open {
		t.name(c, g.A, g.B)
		t.sa, t.sb = finalMarks(*g.Final)
		t.foot = "over"
		if g.Final.How() != scoring.Played {
			t.foot = "over: " + session.ScoreText(*g.Final)
		}
	}
	if why != nil && court.Open {
		if foot := idleFoot(why); foot != "" {
			t.foot = foot
		}
	}
	if p := plannedOn(c, court.ID); p != nil && len(n.Running()) == 0 && t.a == "" {
		t.name(c, p.A, p.B)
		t.foot = fmt.Sprintf("planned for round %d, not called yet", len(n.Rounds)+1)
	}
	return t
}

// name fills in the two sides.
func (t *cardText) name(c ui.Context, a, b session.Side) {
	t.a, t.b = c.Names.FullSide(a), c.Names.FullSide(b)
	t.short = [2]string{c.Names.Side(a), c.Names.Side(b)}
}

// plannedOn is the game that the next round has on a court, nil when it has none.
func plannedOn(c ui.Context, id session.CourtID) *session.PlannedGame {
	if !c.Rotation.Ready || len(c.Rotation.Rounds) == 0 {
		return nil
	}
	for i, g := range c.Rotation.Rounds[0].Games {
		if g.Court == id {
			return &c.Rotation.Rounds[0].Games[i]
		}
	}
	return nil
}

// gameText is the card of a game that goes on.
func gameText(c ui.Context, n *session.Night, g *session.Game) cardText {
	t := cardText{right: elapsed(c, g)}
	t.name(c, g.A, g.B)
	if len(g.Rallies)+len(g.Entries) > 0 {
		t.sa, t.sb = fmt.Sprint(g.State.Score.A), fmt.Sprint(g.State.Score.B)
		t.foot = "call " + g.State.Call()
		if side, ok := g.State.GamePoint(); ok {
			t.foot += ", game point " + c.Names.Side(g.Team(side))
		}
		if g.Pause != nil {
			t.foot = pauseLine(c, g)
		}
	}
	var leaving []session.PersonID
	for _, id := range g.Players() {
		if a := n.Attending(id); a.State != session.Here {
			leaving = append(leaving, id)
		}
	}
	if len(leaving) > 0 {
		t.foot = "last game of " + c.Names.List(leaving) + "; x puts in"
	}
	if n.Hold != nil {
		t.right = "held"
	}
	return t
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

// finalMarks are the two numbers of a final score; the winner's carries a W, since colour alone
// says nothing.
func finalMarks(f scoring.Final) (a, b string) {
	s := f.Score()
	if f.How() == scoring.Void {
		return "", ""
	}
	a, b = fmt.Sprint(s.A), fmt.Sprint(s.B)
	if w, ok := f.Winner(); ok && w == scoring.A {
		return "W " + a, b
	} else if ok {
		return a, "W " + b
	}
	return a, b
}

// draw lays a card out: a frame with the title in its upper edge, the two sides, and a foot.
func draw(c ui.Context, k cardKey) []string {
	w := k.width - 1 // one blank between cards
	inner := w - 4
	frame, body := c.Theme.Frame, c.Theme.Strong
	if k.selected {
		frame = c.Theme.FrameOn
	}
	if k.text.dim {
		body = c.Theme.Dim
	}
	mark := " "
	if k.selected {
		mark = ">"
	}
	title := mark + "Court " + string(k.court.ID) + " "
	right := " " + k.text.right + " "
	rule := strings.Repeat("─", max(0, w-2-line.Width(title)-line.Width(right)))
	top := frame.Render("┌") + titleStyle(c, k.selected).Render(title) + frame.Render(rule) + c.Theme.Dim.Render(right) + frame.Render("┐")
	row := func(text string) string {
		return frame.Render("│") + " " + body.Render(line.Fit(text, inner)) + " " + frame.Render("│") + " "
	}
	a, b := k.text.sides(inner)
	if k.height == lowCard {
		return []string{top + " ", row(a), row(b), lowFoot(c, k, w)}
	}
	bottom := frame.Render("└" + strings.Repeat("─", w-2) + "┘")
	middle := ""
	if k.text.a != "" {
		middle = c.Theme.Dim.Render("v")
	}
	foot := frame.Render("│") + " " + c.Theme.Dim.Render(line.Fit(k.text.foot, inner)) + " " + frame.Render("│") + " "
	return []string{top + " ", row(a), row(middle), row(b), row(""), foot, bottom + " "}
}

// sides are the lines of the two sides, with full names if both fit beside their points.
func (t cardText) sides(width int) (a, b string) {
	room := width - 1 - max(line.Width(t.sa), line.Width(t.sb), 4)
	if line.Width(t.a) > room || line.Width(t.b) > room {
		t.a, t.b = t.short[0], t.short[1]
	}
	return line.Spread(t.a, t.sa, width), line.Spread(t.b, t.sb, width)
}

// lowFoot is the lower edge of a low card, with the foot in it.
func lowFoot(c ui.Context, k cardKey, w int) string {
	frame := c.Theme.Frame
	if k.selected {
		frame = c.Theme.FrameOn
	}
	foot := ""
	if k.text.foot != "" {
		foot = line.Cut(" "+k.text.foot+" ", w-3)
	}
	rule := strings.Repeat("─", max(0, w-2-line.Width(foot)))
	return frame.Render("└") + c.Theme.Dim.Render(foot) + frame.Render(rule+"┘") + " "
}

func titleStyle(c ui.Context, selected bool) lipgloss.Style {
	if selected {
		return c.Theme.Selected
	}
	return c.Theme.Strong
}
