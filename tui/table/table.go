// Package table is the screen of the standings.
package table

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/standings"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Table is the screen of the standings.
type Table struct{ top int }

// New makes the screen.
func New() *Table { return &Table{} }

// Typing implements ui.Screen.
func (t *Table) Typing() bool { return false }

// Click implements ui.Screen.
func (t *Table) Click(ui.Context, int, int) ui.Intent { return nil }

// Press implements ui.Screen.
func (t *Table) Press(c ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	rows := 0
	if n := c.Club().Night(); n != nil {
		rows = len(session.Standings(c.Club(), n))
	}
	last := max(0, rows-room(c))
	switch k.String() {
	case "up":
		t.top = max(0, min(last, t.top)-1)
	case "down":
		t.top = min(last, t.top+1)
	case "pgup":
		t.top = max(0, t.top-room(c))
	case "pgdown", " ":
		t.top = min(last, t.top+room(c))
	case "l":
		return ui.Do{Command: session.DrawLots{}}, true
	default:
		return nil, false
	}
	return nil, true
}

// footRows are the lines under the table: a blank one and two for the order.
const footRows = 3

func room(c ui.Context) int { return max(1, c.Height-1-footRows) }

// Lines implements ui.Screen.
func (t *Table) Lines(c ui.Context) []string {
	n := c.Club().Night()
	if n == nil {
		return nil
	}
	rows := session.Standings(c.Club(), n)
	if len(rows) == 0 {
		return []string{"", "No game is over yet. The table fills with the first score."}
	}
	wide := c.Width >= 110
	out := []string{c.Theme.Dim.Render(cells(c, wide, "rank", "name", "games", "won", "lost", "for", "against", "diff", "win share", "why here"))}
	from := min(t.top, max(0, len(rows)-room(c)))
	until := min(len(rows), from+room(c))
	for _, r := range rows[from:until] {
		text := rowText(c, wide, r)
		if r.Rank == 1 {
			text = c.Theme.Strong.Render(text)
		}
		out = append(out, text)
	}
	for len(out) < c.Height-footRows+1 {
		out = append(out, "")
	}
	foot := line.Wrap("Order: "+standings.Order+".", c.Width)
	if more := len(rows) - until; more > 0 {
		foot[len(foot)-1] += fmt.Sprintf("  (%d more below)", more)
	}
	for _, text := range foot[:min(len(foot), 2)] {
		out = append(out, c.Theme.Dim.Render(line.Cut(text, c.Width)))
	}
	return out
}

func rowText(c ui.Context, wide bool, r standings.Row) string {
	won := fmt.Sprint(r.Wins)
	if r.Draws > 0 {
		won += fmt.Sprintf("+%dd", r.Draws)
	}
	return cells(c, wide, fmt.Sprint(r.Rank), r.Name, fmt.Sprint(r.Games), won, fmt.Sprint(r.Losses),
		fmt.Sprint(r.PointsFor), fmt.Sprint(r.PointsAgainst), fmt.Sprintf("%+d", r.Difference), fmt.Sprintf("%.0f %%", 100*r.WinShare), r.Why)
}

// cells lays one line of the table out.
func cells(c ui.Context, wide bool, rank, name, games, won, lost, pf, pa, diff, share, why string) string {
	const numbers = 5 + 7 + 6 + 6 + 6 + 9 + 6 + 11
	nameWidth := max(10, min(40, c.Width-numbers-1))
	text := line.Right(rank, 4) + " " + line.Fit(name, nameWidth) + line.Right(games, 7) + line.Right(won, 6) + line.Right(lost, 6) +
		line.Right(pf, 6) + line.Right(pa, 9) + line.Right(diff, 6) + line.Right(share, 11)
	if wide {
		text += "   " + why
	}
	return line.Cut(text, c.Width)
}

// Keys implements ui.Screen.
func (t *Table) Keys(ui.Context) []key.Binding {
	return []key.Binding{ui.Bind("scroll", "↑↓", "up", "down"), ui.Bind("draw lots for who is level", "l", "l")}
}
