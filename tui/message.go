package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// message is what is wrong, or else what was done last, over as many lines as it needs: whom to call out
// is never cut. While something is saved the place of the last message is kept, so that nothing jumps.
func (m *Model) message(t *theme.Theme) []string {
	saved := m.saved(t)
	switch {
	case m.long():
		return m.while(t, m.work.line(m), saved)
	case m.wrong != nil && m.since && !m.busy:
		room := max(1, m.height-frameRows-2-len(saved))
		return append(saved, m.part(t.Bad, "! "+oneLine(m.wrong.Error()), " (esc)", room)...)
	case m.wrong != nil:
		tail := "  (esc)"
		if m.unread > 0 {
			tail = fmt.Sprintf("  (esc; %d before)", m.unread)
		}
		return m.part(t.Bad, "! "+oneLine(m.wrong.Error()), tail, m.messageRoom())
	case m.trouble != nil:
		return []string{t.Bad.Render(m.troubleLine())}
	case m.work != nil:
		return m.while(t, m.work.line(m), saved)
	case m.busy:
		return m.while(t, "saving…", saved)
	case m.notice != "":
		return saved
	}
	return []string{""}
}

// saved is what was done last. Where the screen is low, only whom to call out takes more than one line of it.
func (m *Model) saved(t *theme.Theme) []string {
	const low = 12
	text := "Saved: " + oneLine(m.notice)
	if m.height-frameRows < low && !m.called {
		return []string{t.Good.Render(line.Cut(text, m.width))}
	}
	lines := m.part(t.Good, text, "", m.messageRoom())
	if m.change == "" {
		return lines
	}
	return append(lines, m.part(t.Dim, m.change, "", max(1, m.messageRoom()-len(lines)))...)
}

// while is a line in the place of the last message.
func (m *Model) while(t *theme.Theme, text string, last []string) []string {
	out := make([]string, 1, len(last))
	out[0] = t.Dim.Render(text)
	for m.notice != "" && len(out) < len(last) {
		out = append(out, "")
	}
	return out
}

// part breaks a text of the message into lines, the tail in plain type behind it. What the room does
// not hold is cut before the tail, or ends with the key that shows who plays where.
func (m *Model) part(style lipgloss.Style, text, tail string, room int) []string {
	more := "… (ctrl+l: who plays where)"
	if tail != "" {
		more = "…" + tail
	}
	lines := line.Wrap(text+tail, m.width)
	if len(lines) > room {
		last := line.Cut(strings.Join(lines[room-1:], " "), max(0, m.width-line.Width(more)))
		lines = append(lines[:room-1], strings.TrimSuffix(last, "…")+more)
	}
	for i := range lines {
		plain, end := lines[i], ""
		if i == len(lines)-1 && tail != "" {
			plain = strings.TrimSuffix(plain, strings.TrimLeft(tail, " "))
			end = strings.TrimPrefix(lines[i], plain)
		}
		lines[i] = style.Render(plain) + end
	}
	return lines
}

// messageRoom is the most lines that one part of a message may take: half of a small body, and of a large
// one all but what shows two rows of courts.
func (m *Model) messageRoom() int {
	body := m.height - frameRows
	return max(1, body/2, body-8)
}

// oneLine makes text that may quote something from outside fit for one line of a screen.
func oneLine(text string) string { return session.CleanText(text, longestLine) }

// longestLine is more cells than any screen has.
const longestLine = 4000

// callList shows who plays where in full names, the newest call first, for whoever calls people out.
func (m *Model) callList() tea.Cmd {
	if m.ledger.Night() == nil {
		return m.fail(session.ErrNoNight)
	}
	return m.show(dialog.NewPage("Who plays where", callLines))
}

func callLines(c ui.Context) []string {
	n := c.Night()
	if n == nil || len(n.Running()) == 0 {
		return []string{"Nobody is on a court."}
	}
	var out []string
	for i, g := range n.NewestCalls() {
		if i > 0 {
			out = append(out, "")
		}
		head := fmt.Sprintf("Court %s, called %s:", g.Court, g.Called.In(c.Now.Location()).Format("15:04"))
		text := head + " " + c.Names.FullTeam(g.A) + "  v  " + c.Names.FullTeam(g.B)
		out = append(out, line.Wrap(text, c.Width)...)
	}
	return out
}
