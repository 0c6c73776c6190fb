package courts

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

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

// teamsLine names the teams above their halves of the court, with their points at the net.
func (b *board) teamsLine(c ui.Context, g *session.Game, width int) string {
	half := (width - 1) / 2
	left := b.left(g)
	name := func(s scoring.Team) string { return c.Names.Team(g.Team(s)) }
	points := func(s scoring.Team) string { return fmt.Sprint(g.State.Score.Of(s)) }
	return c.Theme.Strong.Render(line.Fit(name(left), half-3) + line.Right(points(left), 3) + " " +
		line.Fit(points(left.Other()), 3) + line.Right(name(left.Other()), width-half-4))
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

// runRows is what a part of the run of a game takes: its rallies, and a line for each team.
const runRows = 3

// run is the run of the game: for each team a cell for each rally, in as many parts as there is room for,
// the newest at the end.
func (b *board) run(c ui.Context, g *session.Game, width, height int) []string {
	steps := g.Course()
	label := min(max(width/3, width-2-len(steps)), max(line.Width(c.Names.Team(g.A)), line.Width(c.Names.Team(g.B))))
	cells := width - label - 2
	parts := min((len(steps)+cells-1)/max(1, cells), height/runRows)
	if cells < 8 || parts < 1 {
		return nil
	}
	first := max(0, len(steps)-parts*cells)
	var out []string
	for from := first; from < len(steps); from += cells {
		until := min(len(steps), from+cells)
		head := fmt.Sprintf("rallies %d-%d: ■ point  · none", from+1, until)
		out = append(out, c.Theme.Dim.Render(line.Cut(head, width)))
		for _, team := range []scoring.Team{b.left(g), b.left(g).Other()} {
			style := c.Theme.TeamA
			if team == scoring.B {
				style = c.Theme.TeamB
			}
			name := line.Fit(c.Names.Team(g.Team(team)), label)
			out = append(out, c.Theme.Dim.Render(name)+"  "+runCells(style, steps[from:until], team))
		}
	}
	return out
}

// runCells are the moves of one team among those of both.
func runCells(style lipgloss.Style, steps []scoring.Step, team scoring.Team) string {
	var out strings.Builder
	for _, s := range steps {
		switch {
		case s.Team != team:
			out.WriteString(" ")
		case s.Points > 0:
			out.WriteString("■")
		case s.Points < 0:
			out.WriteString("−")
		default:
			out.WriteString("·")
		}
	}
	return style.Render(out.String())
}
