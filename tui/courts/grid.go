package courts

import (
	"errors"
	"fmt"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// grid is where the cards of the courts lie.
type grid struct {
	columns, rows int
	width, height int // of one card with the space around it
	top           int // first row shown
	shown         int // rows shown
	courts        int
}

// Sizes of cards: the narrowest that is still readable, and the heights of the two kinds.
const (
	minCard   = 26
	maxCard   = 66
	lowCard   = 4
	tallCard  = 7
	panelRows = 2 // under the grid: the selected court in full, or the score being typed
)

// grid lays the cards out: as many columns as fit, and tall cards when all rows fit so.
func (s *Courts) grid(c ui.Context) grid {
	n := c.Night()
	g := grid{courts: len(n.Courts)}
	if g.courts == 0 {
		return g
	}
	space := c.Height - panelRows
	g.columns = max(1, min(g.courts, c.Width/minCard))
	rowsFor := func(columns int) int { return (g.courts + columns - 1) / columns } // and the other way round
	for g.columns > 1 && c.Width/(g.columns-1) <= maxCard && rowsFor(g.columns-1)*tallCard <= space {
		g.columns--
	}
	g.rows = rowsFor(g.columns)
	g.columns = rowsFor(g.rows) // even rows: four courts as two and two, not as three and one
	g.width, g.height = min(maxCard, c.Width/g.columns), lowCard
	if g.rows*tallCard <= space {
		g.height = tallCard
	}
	from, until := line.Window(g.rows, max(1, space/g.height), s.current(n)/g.columns)
	g.top, g.shown = from, until-from
	return g
}

// at finds the court at a cell.
func (g grid) at(x, y int) (int, bool) {
	if g.width == 0 || x < 0 || y < 0 || y >= g.shown*g.height || x >= g.columns*g.width {
		return 0, false
	}
	i := (g.top+y/g.height)*g.columns + x/g.width
	return i, i < g.courts
}

// Lines implements ui.Screen.
func (s *Courts) Lines(c ui.Context) []string {
	n := c.Night()
	if n == nil {
		return []string{"", "No night is open."}
	}
	if g := s.board.on(n); g != nil {
		return s.board.lines(c, g)
	}
	g := s.grid(c)
	out := make([]string, 0, c.Height)
	current := s.current(n)
	why := idleOf(c)
	for row := g.top; row < g.top+g.shown; row++ {
		cards := make([][]string, 0, g.columns)
		for i := row * g.columns; i < min((row+1)*g.columns, g.courts); i++ {
			cards = append(cards, s.card(c, &n.Courts[i], i == current, g, why))
		}
		for y := range g.height {
			var b strings.Builder
			for _, card := range cards {
				b.WriteString(card[y])
			}
			out = append(out, b.String())
		}
	}
	out = out[:min(len(out), max(0, c.Height-panelRows))] // the panel is seen on any terminal
	room := c.Height - panelRows - len(out)
	out = append(out, outlook(c, room)...)
	for len(out) < c.Height-panelRows {
		out = append(out, "")
	}
	return append(out, s.panel(c, n.Courts[current], g)...)
}

// panel says under the grid what the selected court is about.
func (s *Courts) panel(c ui.Context, court session.Court, g grid) []string {
	more := ""
	if g.shown < g.rows {
		more = c.Theme.Dim.Render(fmt.Sprintf("rows %d-%d of %d", g.top+1, g.top+g.shown, g.rows))
	}
	game := c.Night().Game(court.Game)
	switch {
	case !s.entry.empty():
		if g := target(c.Night(), court); g != nil {
			return s.entryPanel(c, g)
		}
		fallthrough
	case game == nil:
		text := line.Wrap(fmt.Sprintf("Court %s: %s", court.ID, idleText(c, court)), c.Width)
		if len(text) > 1 {
			return []string{text[0], line.Cut(strings.Join(text[1:], " "), c.Width)}
		}
		return []string{more, text[0]}
	}
	who := fmt.Sprintf("Court %s: %s  v  %s", court.ID, c.Names.FullSide(game.A), c.Names.FullSide(game.B))
	return []string{more, line.Cut(who, c.Width)}
}

// entryPanel shows the score being typed with the names it gives it to.
func (s *Courts) entryPanel(c ui.Context, g *session.Game) []string {
	typed := strings.ReplaceAll(s.entry.text, " ", "-")
	how := ""
	if s.entry.how != 0 {
		how = " " + s.entry.how.String()
	}
	what := "score"
	if !g.Running() {
		what = "corrected to"
	}
	head := c.Theme.Next.Render(fmt.Sprintf("Court %s %s: %s_%s", g.Court, what, typed, how))
	final, err := s.entry.final(g.Rules)
	if s.entry.refused && err != nil && !errors.Is(err, errWhoRetired) {
		return refusal(c, fmt.Sprintf("Court %s %s: %s_%s  ! %v", g.Court, what, typed, how, err))
	}
	switch {
	case errors.Is(err, errWhoRetired):
		question := c.Theme.Dim.Render("   which team retired?")
		if s.entry.refused {
			question = c.Theme.Bad.Render("   ! which team retired? a or b")
		}
		text := fmt.Sprintf("  a  %s    b  %s", c.Names.Side(g.A), c.Names.Side(g.B))
		return []string{line.Cut(head+question, c.Width), line.Cut(c.Theme.Strong.Render(text), c.Width)}
	case err != nil:
		text := c.Names.Side(g.A) + " first"
		if s.entry.swapped {
			text = c.Names.Side(g.B) + " first"
		}
		return []string{line.Cut(head, c.Width), line.Cut("  "+text, c.Width)}
	}
	sc := final.Score()
	text := fmt.Sprintf("  %s %d - %d %s", c.Names.FullSide(g.A), sc.A, sc.B, c.Names.FullSide(g.B))
	if s.entry.how == scoring.Retired {
		text = fmt.Sprintf("  %s retired at %d-%d. %s", c.Names.Side(g.Team(s.entry.retired)), sc.A, sc.B, session.RetiredText(g, final))
	}
	return []string{line.Cut(head+c.Theme.Dim.Render("   enter saves · tab if it is the other way round"), c.Width), line.Cut(c.Theme.Strong.Render(text), c.Width)}
}

// refusal says why a score is none, over both lines of the panel, since the way out stands at the end.
func refusal(c ui.Context, text string) []string {
	lines := line.Wrap(text, c.Width)
	if len(lines) > panelRows {
		lines = append(lines[:panelRows-1], line.Cut(strings.Join(lines[panelRows-1:], " "), c.Width))
	}
	for i := range lines {
		lines[i] = c.Theme.Bad.Render(lines[i])
	}
	return lines
}

// idleText says why nothing is played on a court.
func idleText(c ui.Context, court session.Court) string {
	n := c.Night()
	why := idleOf(c)
	free := "free"
	if why != nil && court.Game == 0 {
		if words := why.Words(c.Club(), c.Now.Location()); words != "" {
			free += "; " + words
		}
		if why.Cause == session.TooLate {
			free += "; m calls it all the same"
		}
	}
	switch {
	case !court.Open:
		return "closed (m opens it again)"
	case n.Hold != nil:
		return "free; play is held"
	case target(n, court) != nil && free != "free":
		return free + "; over before: type a score to correct it"
	case target(n, court) != nil:
		return "over; type a score to correct it"
	}
	return free
}

// idleOf is why the free courts are not called, nil when there is nothing to say.
func idleOf(c ui.Context) *session.Idle {
	why := c.Advice.Idle
	if c.Night().Settings.Flow != session.Rolling || why.Cause == session.Callable {
		return nil
	}
	return &why
}

// idleFoot is the cause in the few words that a card has room for.
func idleFoot(why *session.Idle) string {
	switch why.Cause {
	case session.TooFew:
		return fmt.Sprintf("needs four: %d wait", why.Waiting)
	case session.NoGroup:
		return "a group is missing"
	case session.Contradiction:
		return "wishes clash"
	case session.NoFour:
		return "no four go together"
	case session.TooLate:
		return fmt.Sprintf("%.0f %% in time: m calls", 100*why.Chance)
	case session.PastClosing:
		return "closing time has passed"
	case session.LastGames:
		return "no more games"
	}
	return ""
}
