package tui

import (
	"fmt"
	"time"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// endNight ends the night and then shows it in short. Games on court go on or are void.
func (m *Model) endNight(void bool) ui.Intent {
	return ui.Do{Command: session.EndNight{SetAside: void}, After: func(*session.Ledger) { m.open(ui.SummaryPage) }}
}

// endItem ends the night, from its menu. It asks first where a game goes on or something more was to be played.
func (m *Model) endItem() dialog.Item {
	n := m.ledger.Night()
	item := dialog.Item{Key: "x", Label: "end the night", Intent: m.endNight(false)}
	running, left := len(n.Running()), leftToPlay(n, m.now)
	if running == 0 && left == "" {
		return item
	}
	question, end := "End the night?", dialog.Item{Key: "e", Label: "end the night all the same", Intent: m.endNight(false)}
	if running > 0 {
		question = session.Counted(running, "game") + " on court"
		end = dialog.Item{Key: "s", Label: "void the games on court, and end the night", Intent: m.endNight(true)}
	}
	menu := dialog.NewMenu(question, end, dialog.Item{Key: "p", Label: "play on", Intent: ui.Close{}})
	if left != "" {
		menu = menu.Noting(sentence(left) + ".")
	}
	item.Intent = ui.Show{Dialog: menu}
	return item
}

// leftToPlay says what was still to be played, empty where nothing was.
func leftToPlay(n *session.Night, now time.Time) string {
	switch left := n.Settings.Rounds - len(n.Rounds); {
	case n.Settings.Flow == session.Rounds && left == 1:
		return fmt.Sprintf("1 of %d rounds is left", n.Settings.Rounds)
	case n.Settings.Flow == session.Rounds && left > 1:
		return fmt.Sprintf("%d of %d rounds are left", left, n.Settings.Rounds)
	case n.Settings.Flow == session.Rolling && n.Rolls && !n.LastCall && n.Settings.Closing.After(now):
		return fmt.Sprintf("closing time is %s, in %d min", timeText(n.Settings.Closing, now), int(n.Settings.Closing.Sub(now).Minutes()))
	}
	return ""
}
