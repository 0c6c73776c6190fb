package person

import (
	"strings"

	"club/quadrille/session"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// From this size on the night is drawn as courts, and there is room for pictures beside the words.
const (
	pictureWidth  = 100
	pictureHeight = 26
)

// Lines implements ui.Screen.
func (p *Page) Lines(c ui.Context) []string {
	f := &p.facts
	if !f.known {
		return []string{"", "Nobody is shown: esc goes back."}
	}
	var out []string
	if c.Width >= pictureWidth && c.Height >= pictureHeight {
		out = f.picture(c)
	} else {
		out = f.text(c)
	}
	out = out[:min(len(out), c.Height)]
	for i, text := range out {
		out[i] = line.Cut(text, c.Width)
	}
	return out
}

// section is a part of the page that is shown whole, and before others.
type section struct {
	lines []string
	rank  int  // which parts give way first: the highest
	tight bool // no blank line above it
}

// text is the page on a small screen: lines of words, of which the last give way where they do not fit.
func (f *facts) text(c ui.Context) []string {
	sections := []section{
		{lines: []string{f.head(c)}},
		{lines: append(labelled(c, "Now", f.now(c), 2), labelled(c, "Next", f.next(c), 2)...), rank: 1},
		{lines: labelled(c, "Hurt", f.injuries(c), 2), rank: 1, tight: true},
		{lines: f.strip(c, c.Width), rank: 3},
		{lines: labelled(c, "Fair", f.fairness(), 3), rank: 2},
		{lines: whyNot(c, c.Width, f.brief), rank: 2},
		{lines: f.metLines(c), rank: 4},
		{lines: labelled(c, "Rating", strings.TrimSpace(f.run(10)+" "+f.ratingText()), 1), rank: 6},
		{lines: labelled(c, "Place", f.standing(), 1), rank: 5, tight: true},
		{lines: f.wishLine(c), rank: 5, tight: true},
	}
	return fit(sections, c.Height)
}

// fit joins sections on so many lines: parts that do not fit give way by their ranks, and what room is left
// goes into blank lines between them.
func fit(sections []section, height int) []string {
	used := func() int {
		k := 0
		for _, s := range sections {
			k += len(s.lines)
		}
		return k
	}
	for used() > height {
		last := -1
		for i, s := range sections {
			if len(s.lines) > 0 && (last < 0 || s.rank >= sections[last].rank) {
				last = i
			}
		}
		if last <= 0 {
			break
		}
		over := used() - height
		sections[last].lines = sections[last].lines[:max(0, len(sections[last].lines)-over)]
	}
	var out []string
	left := height - used()
	for _, s := range sections {
		if len(s.lines) == 0 {
			continue
		}
		if len(out) > 0 && !s.tight && left > 0 {
			out = append(out, "")
			left--
		}
		out = append(out, s.lines...)
	}
	return out
}

// head names the person.
func (f *facts) head(c ui.Context) string {
	left := c.Theme.Title.Render(f.person.Name) + c.Theme.Dim.Render("  "+f.about(c))
	if f.row == "" {
		return line.Cut(left, c.Width)
	}
	return line.Spread(left, c.Theme.Dim.Render(f.row), c.Width)
}

// labelWidth is the column of the words at the left.
const labelWidth = 8

// labelled is a text with a word at its left, in at most so many lines; nothing for no text.
func labelled(c ui.Context, label, text string, most int) []string {
	if text == "" {
		return nil
	}
	lines := line.Wrap(text, max(1, c.Width-labelWidth))
	if len(lines) > most {
		lines[most-1] = line.Cut(lines[most-1]+" …", c.Width-labelWidth)
		lines = lines[:most]
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		if i > 0 {
			label = ""
		}
		out[i] = c.Theme.Strong.Render(line.Fit(label, labelWidth)) + l
	}
	return out
}

// whyNot says why somebody on the bench is not called next.
func whyNot(c ui.Context, width int, why []string) []string {
	narrow := c
	narrow.Width = width
	var out []string
	for i, text := range why {
		label := ""
		if i == 0 {
			label = "Why not"
		}
		out = append(out, labelled(narrow, label, text, 3)...)
	}
	return out
}

// wishLine is all wishes in a line.
func (f *facts) wishLine(c ui.Context) []string {
	text := ""
	for i, w := range f.evening.Wishes {
		if i > 0 {
			text += "   "
		}
		text += wish(c, w)
	}
	if own := f.evening.Person.Courts; len(own) > 0 {
		text = strings.TrimLeft(text+"   only on "+session.CourtNames(own), " ")
	}
	if text == "" {
		text = c.Theme.Dim.Render("none; w takes one")
	}
	return labelled(c, "Wishes", text, 2)
}
