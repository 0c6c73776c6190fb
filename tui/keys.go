package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/config"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/history"
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

// deskKey is what keys do on every screen: letters where letters are free, and always keys that are none.
// The first of each is the one that is shown.
type deskKey struct {
	name    string
	letters []string
	always  []string
	act     func(m *Model) tea.Cmd
	why     func(m *Model) string // why it cannot be done now, nil where it always can
	footer  bool                  // worth a place in the footer
	explain string
}

// deskKeys lists them in the order of the help page.
func deskKeys() []deskKey {
	return []deskKey{
		{
			"next step",
			[]string{"n"},
			[]string{"ctrl+n"},
			(*Model).nextStep, nil, false,
			"do what the line “Next” says: open the night, call the round, begin play",
		},
		{
			"find",
			[]string{"f", "/"},
			[]string{"ctrl+f"},
			(*Model).find, (*Model).noNight, true,
			"find a person: which court, with whom, when next; enter shows the page",
		},
		{
			"who plays where",
			[]string{"k"},
			[]string{"ctrl+l"},
			(*Model).callList, (*Model).noNight, false,
			"call list: who plays where, in full names, the newest call first",
		},
		{"undo", []string{"u"}, []string{"ctrl+z"}, (*Model).undo, (*Model).noUndo, true, "undo the last thing done; the history undoes any other"},
		{"redo", []string{"U"}, []string{"ctrl+y"}, (*Model).redo, nil, false, "bring back what the last undo took"},
		{
			attentionKey,
			[]string{"a"},
			[]string{"ctrl+a"},
			(*Model).attention, nil, false,
			"what wants attention, the most urgent first: enter does it, x puts it aside until it changes",
		},
		{
			holdKey,
			[]string{"!"},
			[]string{"ctrl+p"},
			(*Model).hold, (*Model).noNight, false,
			"hold play for safety; then: who was told, and resume it",
		},
		{
			"message to the hall",
			[]string{"M"},
			[]string{"ctrl+x"},
			(*Model).messages, (*Model).noNight, false,
			"a line to everybody in the hall, with an end, such as “pizza at 20:30”; or end one that stands",
		},
		{
			cardKey,
			[]string{"C"},
			[]string{"f4"},
			(*Model).card, nil, false,
			"address, how an ambulance gets in, defibrillator, first aid kit, contacts; w writes it",
		},
		{
			"options",
			[]string{"o"},
			[]string{"ctrl+t"},
			(*Model).settings, nil, false,
			"options of tonight: flow, format, scoring, rounds, times; plan a night ahead; end the night",
		},
		{"teach", []string{"t"}, []string{"ctrl+g"}, (*Model).teach, nil, false, "for newcomers: a walk through a night, the rules card, and a drill for the call"},
		{
			allCommands,
			[]string{":"},
			[]string{"ctrl+k"},
			(*Model).commands, nil, true,
			"find anything by its name: what can be done, a court, a person, a night",
		},
		{
			earlierNights,
			[]string{"E"},
			[]string{"f2"},
			(*Model).earlier, (*Model).noEarlier, false,
			"read an earlier night: standings, rotation, history, by courts, in short; nothing can be changed there",
		},
		{"help", []string{"?"}, []string{"f1"}, (*Model).help, nil, true, "all keys"},
		{
			"quit",
			[]string{"q"},
			[]string{"ctrl+c"},
			(*Model).leave, nil, true,
			"quit; everything is saved already, and the desk opens where it was",
		},
	}
}

// Keys are the keys of the desk as they are without a file desk.toml.
func Keys() []config.Key {
	var out []config.Key
	for _, d := range deskKeys() {
		out = append(out, config.Key{Name: d.setting(), Letters: d.letters, Always: d.always})
	}
	return out
}

// setting is the name of a desk key in desk.toml.
func (d deskKey) setting() string { return strings.ReplaceAll(d.name, " ", "-") }

// keysOf are the keys of the desk as somebody wants them. Ctrl+c quits whatever they want.
func keysOf(wanted []config.Key) []deskKey {
	out := deskKeys()
	for i, d := range out {
		for _, k := range wanted {
			if k.Name == d.setting() {
				out[i].letters, out[i].always = k.Letters, k.Always
			}
		}
		if slices.Contains(d.always, "ctrl+c") && !slices.Contains(out[i].always, "ctrl+c") {
			out[i].always = append(slices.Clone(out[i].always), "ctrl+c")
		}
	}
	return out
}

// action is a desk key as it is now, with letters or without.
func (d deskKey) action(m *Model, typing bool) ui.Action {
	keys := d.always
	if !typing {
		keys = append(d.letters[:len(d.letters):len(d.letters)], d.always...)
	}
	a := ui.Ask(ui.Bind(d.name, keys[0], keys...), ui.Own{Do: func() tea.Cmd { return d.act(m) }}).Explained(d.explain)
	a.Quiet = !d.footer
	if d.why != nil {
		a.Why = d.why(m)
	}
	if m.past != nil && ofTonightOnly[d.name] {
		a.Why = m.past.refusal().Error()
	}
	return a
}

// deskActions are what keys do on every screen, besides what the screen that is shown does with them. They
// are matched, and drawn in footer and help.
func (m *Model) deskActions(c ui.Context) []ui.Action {
	return m.deskActionsBeside(c, m.screenActions(c))
}

// deskActionsBeside is deskActions beside those of the screen.
func (m *Model) deskActionsBeside(c ui.Context, screen []ui.Action) []ui.Action {
	typing := m.typing(c)
	var out []ui.Action
	if m.past != nil {
		out = append(out, m.escape())
	}
	for _, d := range m.keys {
		out = append(out, d.action(m, typing))
	}
	for i, t := range tabs {
		if !typing {
			out = append(out, ui.Ask(ui.Bind(t.name, t.key, t.key), ui.Go{To: ui.ScreenID(i)}).Explained(tabAbout[i]).Quietly())
		}
	}
	turn := func(by ui.ScreenID) ui.Intent { return ui.Go{To: (m.tab() + by) % ui.ScreenCount} }
	out = append(out,
		ui.Ask(ui.Bind("next screen", "tab", "tab"), turn(1)).Quietly(),
		ui.Ask(ui.Bind("screen before", "shift+tab", "shift+tab"), turn(ui.ScreenCount-1)).Quietly(),
		ui.Ask(ui.Bind("to the courts", "esc", "esc"), ui.Go{To: ui.Courts}).Quietly(),
	)
	return ui.Without(out, screen)
}

// shownKey is a key by the name of what it does.
func (m *Model) shownKey(name string, typing bool) string {
	for _, d := range m.keys {
		if d.name == name && typing {
			return d.always[0]
		} else if d.name == name {
			return d.letters[0]
		}
	}
	return ""
}

// tabAbout says what the screens are for, in their order.
var tabAbout = [ui.ScreenCount]string{
	"door: check people in, add guests, rest and leave",
	"courts: who plays where, scores",
	"bench: who waits, and who is next",
	"rotation: the rounds played and to come, and how fair they are",
	"standings: who leads tonight, the league, the ratings",
	"history: all that was done, any of which can be undone",
}

// noNight is why what needs a night cannot be done.
func (m *Model) noNight() string {
	if m.ledger.Night() == nil {
		return session.ErrNoNight.Error()
	}
	return ""
}

// undo takes the newest action back. Where people in the hall have acted on it, it asks first and says what
// that takes back; not for a score that was just typed here.
func (m *Model) undo() tea.Cmd {
	a, ok := m.ledger.NextUndo()
	if !ok || !a.Weighty() || a.ID == m.typed || m.waits() {
		return m.do(session.Undo{}, pending{})
	}
	what, _ := history.Without(m.context(), a)
	return m.show(dialog.NewMenu("Undo this?",
		dialog.Item{Key: "y", Label: "yes, take it back", Intent: ui.Do{Command: session.UndoAction{Action: a.ID}}},
		dialog.Item{Key: "k", Label: "keep it", Intent: ui.Close{}},
	).Noting(a.Time.In(m.now.Location()).Format("15:04") + "  " + m.ledger.Describe(a) + ". " + what))
}

// noUndo is why there is nothing to take back.
func (m *Model) noUndo() string {
	if err := m.ledger.NothingToUndo(); err != nil {
		return err.Error()
	}
	return ""
}

func (m *Model) redo() tea.Cmd { return m.do(session.Redo{}, pending{}) }

// teach offers the pages for newcomers.
func (m *Model) teach() tea.Cmd {
	menu, err := m.teachMenu()
	if err != nil {
		return m.fail(err)
	}
	return m.show(menu)
}

func (m *Model) teachMenu() (*dialog.Menu, error) {
	rules := session.DefaultSettings(0).Scoring
	if n := m.ledger.Night(); n != nil {
		rules = n.Settings.Scoring
	}
	lesson, err := teach.NewDrill(m.seed(), rules)
	if err != nil {
		return nil, err
	}
	return dialog.NewMenu("For newcomers",
		dialog.Item{Key: "w", Label: "a walk through a night in five screens, on an invented night", Intent: ui.Own{Do: m.walkThrough}},
		dialog.Item{Key: "c", Label: "rules card: what you need to know, on one screen", Intent: ui.Show{Dialog: teach.NewCard()}},
		dialog.Item{Key: "d", Label: "drill: what is the next call, who serves, from where?", Intent: ui.Show{Dialog: lesson}},
	), nil
}
