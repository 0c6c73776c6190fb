package person

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session"
	"club/quadrille/session/evening"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// stripLabel and stripCell are the columns of the night as a table.
const (
	stripLabel = 8
	stripCell  = 8
)

// shown cuts the parts of the night to so many, around what comes next.
func (f *facts) shown(most int) []evening.Part {
	parts := f.evening.Parts
	at := len(parts) - 1
	for i, p := range parts {
		if p.Kind == evening.OnCourt || p.Kind == evening.Planned || p.Kind == evening.WillSit {
			at = i
			break
		}
	}
	from, until := line.Window(len(parts), max(1, most), at)
	return parts[from:until]
}

// strip is the night as a table: a column for each round or game.
func (f *facts) strip(c ui.Context, width int) []string {
	parts := f.shown((width - stripLabel) / stripCell)
	if len(parts) == 0 {
		return nil
	}
	cell := min(18, max(stripCell, (width-stripLabel)/len(parts)))
	head := "round"
	if f.rolling() {
		head = "called"
	}
	rows := []string{head, "court", "with", "score"}
	out := make([]string, len(rows))
	for i, label := range rows {
		out[i] = c.Theme.Dim.Render(line.Fit(label, stripLabel))
	}
	for _, p := range parts {
		court, with, score := string(p.Court), "", outcome(p)
		if p.Partner != "" {
			with = c.Names.Short(p.Partner)
		}
		switch p.Kind {
		case evening.SatOut, evening.WillSit:
			court, with = "–", "out"
		case evening.Away:
			court, with = "–", "away"
		case evening.Left:
			court, with = string(p.Court), ""
		}
		style := c.Theme.Dim
		switch {
		case p.Kind == evening.OnCourt:
			style = c.Theme.Strong
		case p.Kind == evening.Played:
			style = c.Theme.TeamA
		}
		for i, text := range []string{f.label(c, p), court, with, score} {
			if i == 0 {
				text = c.Theme.Dim.Render(line.Fit(text, cell))
			} else {
				text = style.Render(line.Fit(line.Cut(text, cell-1), cell))
			}
			out[i] += text
		}
	}
	return out
}

// label is the number of a round, or when a game was called.
func (f *facts) label(c ui.Context, p evening.Part) string {
	switch {
	case p.Round > 0:
		return fmt.Sprint(p.Round)
	case p.Called.IsZero():
		return "next"
	}
	return p.Called.In(c.Now.Location()).Format("15:04")
}

// The sizes of a court in the picture of the night, with the words above and below it.
const (
	courtCell   = 25
	widestCourt = 39
	courtRows   = 7
)

// courts is the night as small courts, in at most so many rows of them; with a table of all rounds above
// where not all of them fit.
func (f *facts) courts(c ui.Context, rows int) []string {
	columns := max(1, c.Width/courtCell)
	parts := f.shown(columns * rows)
	if len(parts) == 0 {
		return nil
	}
	out := []string{}
	if len(parts) < len(f.evening.Parts) {
		out = append(out, f.strip(c, c.Width)...)
	}
	columns = min(columns, len(parts))
	cell := min(widestCourt, c.Width/columns)
	first := true
	for len(parts) > 0 {
		k := min(columns, len(parts))
		var row []string
		for i, p := range parts[:k] {
			next := first && (p.Kind == evening.Planned || p.Kind == evening.WillSit)
			if next {
				first = false
			}
			row = line.Beside(row, f.court(c, p, cell-2, next), i*cell, 0)
		}
		out = append(out, row...)
		parts = parts[k:]
	}
	return out
}

// court is one part of the night: what it was, the court from above, and how it went.
func (f *facts) court(c ui.Context, p evening.Part, width int, next bool) []string {
	head := "Round " + f.label(c, p)
	if p.Round == 0 {
		head = f.label(c, p)
	}
	word, style := kindWord(p), c.Theme.Dim
	switch {
	case next && p.Kind == evening.WillSit:
		word, style = "sits out next", c.Theme.Next
	case next && p.Round > 0:
		word, style = "next", c.Theme.Next
	case next:
		head, word, style = "Next", "free court", c.Theme.Next
	case p.Kind == evening.OnCourt:
		style = c.Theme.Key
	}
	out := []string{c.Theme.Strong.Render(head) + " " + style.Render(line.Cut(word, width-line.Width(head)-1))}
	if len(p.Against[0]) == 0 {
		return append(out, f.without(c, p, width)...)
	}
	spot := func(id session.PersonID, style lipgloss.Style) widget.Spot {
		if id == "" {
			return widget.Spot{}
		}
		return widget.Spot{Name: tight(c.Names.Short(id), width/3-1), Style: style.Render}
	}
	out = append(out, widget.Court{
		Left:  [2]widget.Spot{spot(f.person.ID, c.Theme.Strong), spot(p.Partner, c.Theme.TeamA)},
		Right: [2]widget.Spot{spot(p.Against[0], c.Theme.TeamB), spot(p.Against[1], c.Theme.TeamB)},
		Line:  c.Theme.Frame.Render,
	}.Lines(width, widget.LeastHeight)...)
	foot := "court " + string(p.Court)
	if p.Round == 0 && p.Kind == evening.Planned {
		foot = ""
	}
	if text := outcome(p); text != "" && p.Kind != evening.OnCourt || p.Ours+p.Theirs > 0 {
		foot += " · " + text
	}
	if !p.About.IsZero() {
		foot = strings.TrimPrefix(foot+" · about "+p.About.Format("15:04"), " · ")
	}
	return append(out, c.Theme.Dim.Render(line.Cut(foot, width)))
}

// tight makes a short name shorter where it does not fit: AgnesV for Agnes V.
func tight(name string, room int) string {
	if line.Width(name) < room {
		return name
	}
	return strings.TrimSuffix(strings.ReplaceAll(name, " ", ""), ".")
}

// without fills the place of a court in a round without a game.
func (f *facts) without(c ui.Context, p evening.Part, width int) []string {
	var text []string
	switch p.Kind {
	case evening.SatOut:
		text = []string{"", "  bench", "", fmt.Sprintf("  %d people", p.Of), fmt.Sprintf("  for %d places", p.Places)}
	case evening.WillSit:
		text = []string{"", "  bench"}
		if !p.About.IsZero() {
			text = append(text, "", "  about "+p.About.Format("15:04"))
		}
	case evening.Left:
		text = []string{"", "  court " + string(p.Court), "", "  a sub went in"}
	default:
		text = []string{"", "  not in the rotation"}
	}
	for len(text) < courtRows-1 {
		text = append(text, "")
	}
	for i := range text {
		text[i] = c.Theme.Dim.Render(line.Cut(text[i], width))
	}
	return text
}

// kindWord names what a part was or will be.
func kindWord(p evening.Part) string {
	switch p.Kind {
	case evening.Played:
		switch {
		case p.Won:
			return "won"
		case p.Level:
			return "level"
		case outcome(p) == "void":
			return "void"
		}
		return "lost"
	case evening.OnCourt:
		return "on court"
	case evening.SatOut:
		return "sat out"
	case evening.WillSit:
		return "sits out"
	case evening.Planned:
		return "planned"
	case evening.Left:
		return "left it"
	}
	return "away"
}
