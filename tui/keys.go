package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/teach"
	"club/quadrille/tui/ui"
)

// screenName is a screen's tab.
type screenName struct {
	key, name string
}

// tabs names the screens in their order. The key is the first letter of the name.
var tabs = [ui.ScreenCount]screenName{
	{"d", "Door"}, {"c", "Courts"}, {"b", "Bench"}, {"r", "Rotation"}, {"s", "Standings"}, {"h", "History"},
}

// deskKey is a key that works on every screen: with a letter where letters are free, and with a
// key that is no letter where they are text.
type deskKey struct {
	letter  key.Binding
	always  key.Binding
	act     func(m *Model) tea.Cmd
	footer  bool // worth a place in the footer
	explain string
}

// deskKeys lists them in the order of the help page. The footer and the help page are made
// from it, and a test holds the README's list to it.
func deskKeys() []deskKey {
	return []deskKey{
		{
			ui.Bind("next step", "n", "n"), ui.Bind("next step", "ctrl+n", "ctrl+n"), (*Model).nextStep, false,
			"do what the line “Next” says: open the night, call the round, begin play",
		},
		{
			ui.Bind("find", "f", "f", "/"), ui.Bind("find", "ctrl+f", "ctrl+f"), (*Model).find, true,
			"find a person: which court, with whom, when next",
		},
		{
			ui.Bind("who plays where", "k", "k"), ui.Bind("who plays where", "ctrl+k", "ctrl+k"), (*Model).callList, false,
			"call list: who plays where, in full names, the newest call first",
		},
		{
			ui.Bind("undo", "u", "u"), ui.Bind("undo", "ctrl+z", "ctrl+z"), (*Model).undo, true,
			"undo the last thing done; the history undoes any other",
		},
		{
			ui.Bind("redo", "U", "U"), ui.Bind("redo", "ctrl+y", "ctrl+y"), (*Model).redo, false,
			"bring back what the last undo took",
		},
		{
			ui.Bind("hold play", "!", "!"), ui.Bind("hold play", "ctrl+p", "ctrl+p"), (*Model).hold, false,
			"hold play for safety (lightning, heat, injury, wet court), or resume it",
		},
		{
			ui.Bind("options", "o", "o"), ui.Bind("options", "ctrl+t", "ctrl+t"), (*Model).settings, false,
			"options of tonight: flow, format, scoring, rounds, times; close the night",
		},
		{
			ui.Bind("teach", "t", "t"), ui.Bind("teach", "ctrl+g", "ctrl+g"), (*Model).teach, false,
			"for newcomers: the rules card, and a drill for the call",
		},
		{ui.Bind("help", "?", "?"), ui.Bind("help", "f1", "f1"), (*Model).help, true, "this page"},
		{
			ui.Bind("quit", "q", "q"), ui.Bind("quit", "ctrl+c", "ctrl+c"), (*Model).leave, true,
			"quit; everything is saved already, and the desk opens where it was",
		},
	}
}

// pressDesk handles the keys that no dialog and no screen took.
func (m *Model) pressDesk(k tea.KeyMsg, typing bool) tea.Cmd {
	if k.Paste {
		return nil
	}
	text := k.String()
	switch text {
	case "tab":
		m.goTo((m.active + 1) % ui.ScreenCount)
		return nil
	case "shift+tab":
		m.goTo((m.active + ui.ScreenCount - 1) % ui.ScreenCount)
		return nil
	case "esc":
		m.goTo(ui.Courts)
		return nil
	}
	for _, d := range deskKeys() {
		if key.Matches(k, d.always) || !typing && key.Matches(k, d.letter) {
			return d.act(m)
		}
	}
	if typing {
		return nil
	}
	for i, t := range tabs {
		if t.key == text {
			m.goTo(ui.ScreenID(i))
		}
	}
	return nil
}

func (m *Model) undo() tea.Cmd { return m.do(session.Undo{}, pending{}) }
func (m *Model) redo() tea.Cmd { return m.do(session.Redo{}, pending{}) }

// teach offers the pages for newcomers.
func (m *Model) teach() tea.Cmd {
	rules := session.DefaultSettings(0).Scoring
	if n := m.ledger.Night(); n != nil {
		rules = n.Settings.Scoring
	}
	lesson, err := teach.NewDrill(m.seed(), rules)
	if err != nil {
		return m.fail(err)
	}
	return m.show(dialog.NewMenu("For newcomers",
		dialog.Item{Key: "c", Label: "rules card: what you need to know, on one screen", Intent: ui.Show{Dialog: teach.NewCard()}},
		dialog.Item{Key: "d", Label: "drill: what is the next call, who serves, from where?", Intent: ui.Show{Dialog: lesson}},
	))
}

func (m *Model) help() tea.Cmd {
	return m.show(dialog.NewPage("Keys", m.helpPage))
}
