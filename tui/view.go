package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// frameRows are the lines around the body: the head, the tabs and what wants attention above it; what is
// next (two lines, since a caution must never be cut), the first line of the message and the keys below.
const (
	bodyTop   = 3
	nextRows  = 2
	frameRows = bodyTop + nextRows + 2
)

// The smallest terminal on which the desk can be used.
const (
	minWidth  = 40
	minHeight = 12
)

// View implements tea.Model. It is never wider or taller than the terminal.
func (m *Model) View() string {
	if m.width == 0 {
		return ""
	}
	if m.width < minWidth || m.height < minHeight {
		return m.tooSmall()
	}
	c := m.context()
	if d := m.dialog(); d != nil && whole(d) {
		return m.wholeScreen(c, d)
	}
	lines := make([]string, 0, m.height)
	lines = append(lines, m.head(c), m.tabLine(c), m.attentionLine(c))
	body := m.body(c)
	for i := range c.Height {
		if i < len(body) {
			lines = append(lines, body[i])
			continue
		}
		lines = append(lines, "")
	}
	lines = append(lines, m.nextLines(c)...)
	lines = append(lines, m.message(c.Theme)...)
	lines = append(lines, m.footer(c))
	for i, text := range lines {
		lines[i] = c.Theme.Finish(line.Cut(text, m.width))
	}
	return strings.Join(lines, "\n")
}

// whole tells whether a dialog wants all of the screen but the line of keys.
func whole(d ui.Dialog) bool {
	w, ok := d.(interface{ Whole() bool })
	return ok && w.Whole()
}

// wholeScreen draws a dialog that wants all of the screen.
func (m *Model) wholeScreen(c ui.Context, d ui.Dialog) string {
	lines := make([]string, m.height)
	message := m.messageOver(c.Theme, d)
	copy(lines[:m.height-1-len(message)], d.Lines(m.dialogContext(d)))
	copy(lines[m.height-1-len(message):], message)
	lines[m.height-1] = m.footer(c)
	for i, text := range lines {
		lines[i] = c.Theme.Finish(line.Cut(text, m.width))
	}
	return strings.Join(lines, "\n")
}

// messageOver is the message on a dialog that wants all of the screen: what is wrong always stands there, and
// what was done last where the dialog wants it.
func (m *Model) messageOver(t *theme.Theme, d ui.Dialog) []string {
	if _, ok := d.(interface{ Told() bool }); ok || m.wrong != nil || m.trouble != nil || m.long() {
		return m.message(t)
	}
	return nil
}

// nextLines is what to do next, broken into the lines that it has.
func (m *Model) nextLines(c ui.Context) []string {
	text := line.Wrap("Next: "+m.nextLine(), m.width)
	if len(text) > nextRows {
		text = append(text[:nextRows-1], line.Cut(strings.Join(text[nextRows-1:], " "), m.width))
	}
	out := make([]string, nextRows)
	for i := range text {
		out[i] = c.Theme.Next.Render(text[i])
	}
	return out
}

func (m *Model) tooSmall() string {
	lines := line.Wrap(fmt.Sprintf("The desk needs %d by %d cells; this is %d by %d.", minWidth, minHeight, m.width, m.height), m.width)
	return strings.Join(lines[:min(len(lines), m.height)], "\n")
}

// body is the screen, with the dialog over it if there is one.
func (m *Model) body(c ui.Context) []string {
	var lines []string
	if m.showsScreen(c) {
		lines = m.screens[m.active].Lines(c)
	} else {
		lines = m.welcome(c)
	}
	for _, below := range m.dialogs[:max(0, len(m.dialogs)-1)] {
		if whole(below) {
			lines = below.Lines(c)
		}
	}
	if d := m.dialog(); d != nil {
		return overlay(lines, m.box(c, d), c.Width, c.Height)
	}
	return lines
}

// welcome stands where a screen would be while no night is open.
func (m *Model) welcome(c ui.Context) []string {
	people, nights := len(c.Club().People), len(c.Club().Nights)
	out := []string{
		"",
		c.Theme.Strong.Render("  No night is open."),
		"",
		"  Press n to open tonight: courts, scoring and times are asked once.",
		"  Then check people in at the door, and call the first round.",
		"",
	}
	if m.isNew() {
		out = append(out, "  New here? Press w for a walk through a night in five screens. It touches nothing.")
	}
	if nights > 0 {
		out = append(out, fmt.Sprintf("  The club knows %s and has had %s.", peopleCount(people), session.Counted(nights, "night")),
			"  Press s for the standings of the last night. If it was ended too early, u opens it again.")
	}
	return indented(out, c.Width)
}

// indented breaks lines that do not fit, and sets each part in like the first.
func indented(lines []string, width int) []string {
	var out []string
	for _, text := range lines {
		if line.Width(text) <= width {
			out = append(out, text)
			continue
		}
		bare := strings.TrimLeft(text, " ")
		in := text[:len(text)-len(bare)]
		for _, part := range line.Wrap(bare, max(1, width-len(in))) {
			out = append(out, in+part)
		}
	}
	return out
}

// head is the first line: the night, and how it stands.
func (m *Model) head(c ui.Context) string {
	left := c.Theme.Title.Render("Quadrille")
	if m.past != nil {
		return line.Spread(left+"  "+c.Theme.Selected.Render(" "+m.past.title()+" ")+"  reading only", m.now.Format("15:04"), m.width)
	}
	n := c.Night()
	if n == nil {
		return line.Spread(left, m.now.Format("15:04"), m.width)
	}
	left += "  " + n.Name
	var parts []string
	switch {
	case n.Settings.Flow == session.Rounds && len(n.Rounds) > 0:
		parts = append(parts, fmt.Sprintf("round %d of %d", len(n.Rounds), max(n.Settings.Rounds, len(n.Rounds))))
	case n.Settings.Flow == session.Rolling:
		parts = append(parts, "rolling")
	}
	if n.Settings.Format != scheduler.Rotating {
		parts = append(parts, n.Settings.Format.Words())
	}
	parts = append(parts, fmt.Sprintf("%d here", n.Count(session.Here)))
	if k := len(n.Bench()); k > 0 && len(n.Games) > 0 {
		parts = append(parts, fmt.Sprintf("%d on the bench", k))
	}
	if n.Hold != nil {
		parts = append(parts, "PLAY HELD")
	}
	parts = append(parts, m.now.Format("15:04"))
	return line.Spread(left, strings.Join(parts, " · "), m.width)
}

// tabLine names the screens; the shown one stands in brackets, since colour alone says nothing.
func (m *Model) tabLine(c ui.Context) string {
	var b strings.Builder
	for i, t := range tabs {
		if ui.ScreenID(i) == m.tab() {
			b.WriteString(c.Theme.TabOn.Render("[" + t.name + "]"))
			continue
		}
		b.WriteString(c.Theme.Tab.Render(" " + t.name + " "))
	}
	return line.Spread(b.String(), m.sign(c), m.width)
}

// sign says in one place of the frame what a letter is now: text, or a key.
func (m *Model) sign(c ui.Context) string {
	typing := m.typing(c)
	if d := m.dialog(); d != nil {
		t, ok := d.(interface{ TakesText() bool })
		typing = ok && t.TakesText()
	}
	if typing {
		return c.Theme.Selected.Render("[TYPING]")
	}
	return c.Theme.Dim.Render(" keys ")
}

// tabAt finds the screen whose tab lies at a column.
func tabAt(x int) (ui.ScreenID, bool) {
	at := 0
	for i, t := range tabs {
		at += len(t.name) + 2
		if x < at {
			return ui.ScreenID(i), true
		}
	}
	return 0, false
}

// footer lists the keys that mean something now: the screen's, then the desk's. What cannot be done now is
// left out; pressing it says why.
func (m *Model) footer(c ui.Context) string {
	var parts []string
	for _, a := range m.footerActions(c) {
		parts = append(parts, c.Theme.Key.Render(a.Key.Help().Key)+" "+c.Theme.Dim.Render(a.Key.Help().Desc))
	}
	return line.Cut(strings.Join(parts, footerGap), m.width)
}

// footerGap parts the keys of the footer.
const footerGap = "  "

// footerActions are as many of the actions as the footer has room for; the last three (all, help and quit)
// always are among them.
func (m *Model) footerActions(c ui.Context) []ui.Action {
	const last = 3
	var all []ui.Action
	if d := m.dialog(); d != nil {
		all = d.Actions(m.dialogContext(d))
	} else {
		screen := m.screenActions(c)
		all = append(screen[:len(screen):len(screen)], m.deskActionsBeside(c, screen)...)
	}
	out := slices.DeleteFunc(slices.Clone(all), func(a ui.Action) bool { return a.Quiet || a.Why != "" })
	room := func() (cells int) {
		for _, a := range out {
			cells += footerCells(a) + len(footerGap)
		}
		return cells - len(footerGap)
	}
	for len(out) > last+1 && room() > m.width {
		out = slices.Delete(out, len(out)-last-1, len(out)-last)
	}
	return out
}

// footerCells is the room that an action takes in the footer.
func footerCells(a ui.Action) int {
	return line.Width(a.Key.Help().Key) + 1 + line.Width(a.Key.Help().Desc)
}

// footerAt is the action whose key stands at a column of the footer.
func (m *Model) footerAt(c ui.Context, x int) (ui.Action, bool) {
	at := 0
	for _, a := range m.footerActions(c) {
		if x >= at && x < at+footerCells(a) {
			return a, true
		}
		at += footerCells(a) + len(footerGap)
	}
	return ui.Action{}, false
}

// box draws a dialog with its frame.
func (m *Model) box(c ui.Context, d ui.Dialog) []string {
	dc := m.dialogContext(d)
	content := d.Lines(dc)
	title := line.Cut(" "+d.Title()+" ", dc.Width)
	top := c.Theme.FrameOn.Render("┌─") + c.Theme.Strong.Render(title) +
		c.Theme.FrameOn.Render(strings.Repeat("─", max(0, dc.Width+1-line.Width(title)))+"┐")
	out := []string{top}
	for _, text := range content[:min(len(content), dc.Height)] {
		out = append(out, c.Theme.FrameOn.Render("│")+" "+line.Fit(text, dc.Width)+" "+c.Theme.FrameOn.Render("│"))
	}
	return append(out, c.Theme.FrameOn.Render("└"+strings.Repeat("─", dc.Width+2)+"┘"))
}

// dialogContext is the context with the size that a dialog may fill.
func (m *Model) dialogContext(d ui.Dialog) ui.Context {
	c := m.context()
	if whole(d) {
		c.Height = max(1, m.height-1-len(m.messageOver(c.Theme, d)))
		return c
	}
	if w, ok := d.(interface{ Wide() bool }); ok && w.Wide() {
		c.Width = max(20, c.Width-8)
	} else {
		c.Width = max(20, min(c.Width-8, 90))
	}
	c.Height = max(3, c.Height-2)
	return c
}

// corner is where a box lies that is laid over the middle.
func corner(boxWidth, boxHeight, width, height int) (left, top int) {
	return max(0, (width-boxWidth)/2), max(0, (height-boxHeight)/2)
}

// overlay lays a box over the middle of some lines.
func overlay(under, box []string, width, height int) []string {
	out := make([]string, height)
	copy(out, under)
	boxWidth := line.Width(box[0])
	left, top := corner(boxWidth, len(box), width, height)
	for i, text := range box {
		if top+i >= height {
			break
		}
		base := line.Fit(out[top+i], width)
		out[top+i] = ansi.Truncate(base, left, "") + text + ansi.TruncateLeft(base, left+boxWidth, "")
	}
	return out
}
