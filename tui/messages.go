package tui

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// messages asks for a line to the hall; where some stand already, it offers to end them too.
func (m *Model) messages() tea.Cmd {
	n := m.ledger.Night()
	if n == nil {
		return m.fail(session.ErrNoNight)
	}
	standing := n.MessagesAt(m.now)
	if len(standing) == 0 {
		return m.show(messageForm(m))
	}
	items := []dialog.Item{{Key: "n", Label: "new message", Intent: ui.Show{Dialog: messageForm(m)}}}
	for i, s := range standing {
		items = append(items, dialog.Item{
			Key: strconv.Itoa(i + 1), Label: "end: " + s.Text, Intent: ui.Do{Command: session.EndMessage{ID: s.ID}},
		})
	}
	return m.show(dialog.NewMenu("Messages in the hall", items...))
}

// messageForm asks what the hall shall read, and how long.
func messageForm(m *Model) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		text := strings.TrimSpace(v[1])
		at, err := roster.ParseMoment(text)
		if err != nil || text != "" && !at.IsClock {
			return nil, fmt.Errorf("until %q: write a time such as 20:45, or leave it empty", text)
		}
		return ui.Do{Command: session.PostMessage{Text: v[0], Until: m.ledger.Night().TimeOfDay(at, m.now)}}, nil
	}
	return dialog.NewForm("Message to the hall", send,
		dialog.Field{Label: "Message", Hint: fmt.Sprintf("one line of at most %d characters, such as: pizza at 20:30", session.MaxMessage)},
		dialog.Field{Label: "Until", Hint: "a time of day such as 20:45; empty: until you end it, or the night ends"})
}

// namingMenu asks how the club's people are called in the hall.
func (m *Model) namingMenu() *dialog.Menu {
	var items []dialog.Item
	for i, naming := range session.Namings() {
		item := dialog.Item{Key: strconv.Itoa(i + 1), Label: naming.String(), Intent: ui.Do{Command: session.ChooseNaming{Naming: naming}}}
		if naming == m.ledger.Club().Naming {
			item.Why = "the hall sees these already"
		}
		items = append(items, item)
	}
	return dialog.NewMenu("Names in the hall", items...)
}
