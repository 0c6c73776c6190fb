package dialog

import (
	"errors"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// context is a dialog's inside without a night.
func context(width, height int) ui.Context {
	l := session.NewLedger()
	return ui.Context{Ledger: l, Names: ui.NewNames(l.Club()), Theme: theme.Plain(), Width: width, Height: height}
}

// press gives a dialog some keys by name, or letters one by one, and gives the last answer.
func press(d ui.Dialog, keys ...string) (last ui.Intent) {
	special := map[string]tea.KeyType{
		"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
		"tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "backspace": tea.KeyBackspace, "ctrl+u": tea.KeyCtrlU, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp,
	}
	c := context(60, 10)
	for _, k := range keys {
		if t, ok := special[k]; ok {
			last = pressed(ui.Press(d, c, tea.KeyMsg{Type: t}))
			continue
		}
		for _, r := range k {
			last = pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}))
		}
	}
	return last
}

// marked is the line that the dialog's cursor is on.
func marked(t *testing.T, d ui.Dialog) string {
	t.Helper()
	for _, l := range d.Lines(context(60, 10)) {
		if text, ok := strings.CutPrefix(l, "> "); ok {
			return strings.TrimSpace(text)
		}
	}
	t.Fatalf("no line is marked in %q", d.Lines(context(60, 10)))
	return ""
}

func TestMenu(t *testing.T) {
	first, second := ui.Go{To: ui.Bench}, ui.Go{To: ui.Door}
	menu := func() *Menu {
		return NewMenu("Choose",
			Item{Key: "a", Label: "first", Intent: first},
			Item{Key: "b", Label: "second", Intent: second},
			Item{Key: "c", Label: "third", Why: "not now"})
	}
	for _, c := range []struct {
		keys []string
		want ui.Intent
	}{
		{[]string{"enter"}, nil}, // nothing is marked yet
		{[]string{"down", "enter"}, ui.Close{Then: first}},
		{[]string{"down", "down", "enter"}, ui.Close{Then: second}},
		{[]string{"tab", "tab", "shift+tab", "enter"}, ui.Close{Then: first}},
		{[]string{"b"}, ui.Close{Then: second}},
		{[]string{"up", "up", "enter"}, ui.Close{Then: second}}, // round the end
		{[]string{"esc"}, ui.Close{}},
		{[]string{"z"}, nil},
	} {
		if got := press(menu(), c.keys...); got != c.want {
			t.Errorf("%q asks for %v, want %v", c.keys, got, c.want)
		}
	}
	m := menu()
	if got, ok := press(m, "c").(ui.Refuse); !ok || got.Err.Error() != "not now" {
		t.Errorf("what cannot be taken is answered with %v", got)
	}
	if got := marked(t, m); !strings.Contains(got, "third (not now)") {
		t.Errorf("the marked line is %q", got)
	}
	if got := press(NewMenu("empty"), "down", "up", "enter"); got != nil {
		t.Errorf("an empty menu asks for %v", got)
	}
}

func TestForm(t *testing.T) {
	var sent []string
	refuse := error(nil)
	form := NewForm("Fill in", func(v []string) (ui.Intent, error) {
		sent = slices.Clone(v)
		return ui.Go{To: ui.Bench}, refuse
	}, Field{Label: "Name", Value: "ab"}, Field{Label: "Size", Value: "m", Options: []string{"s", "m", "l"}}, Field{Label: "Note", Hint: "anything"})

	if got := press(form, "enter"); got != (ui.Go{To: ui.Bench}) || !slices.Equal(sent, []string{"ab", "m", ""}) {
		t.Errorf("as it is the form sends %q and asks for %v", sent, got)
	}
	press(form, "right", "c", "backspace", "d", "tab", "right", "down", "q?u n", "up", "left", "left", "enter")
	if want := []string{"abd", "s", "q?u n"}; !slices.Equal(sent, want) {
		t.Errorf("the form sends %q, want %q", sent, want)
	}
	press(form, "left", "enter")
	if sent[1] != "l" {
		t.Errorf("options do not go round: %q", sent[1])
	}
	press(form, "x", "5", "enter") // letters do nothing to options
	if sent[1] != "l" {
		t.Errorf("letters change an option to %q", sent[1])
	}
	refuse = errors.New("not like this")
	if got := press(form, "enter"); got != nil || !strings.Contains(strings.Join(form.Lines(context(60, 10)), "\n"), "! not like this") {
		t.Errorf("a refused form asks for %v", got)
	}
	press(form, "shift+tab", "right", "e", "enter")
	if sent[0] != "abde" {
		t.Errorf("a refused form loses what was typed: %q", sent)
	}
	if got := press(form, "esc"); got != (ui.Close{}) {
		t.Errorf("esc asks for %v", got)
	}
	if !form.TakesText() {
		t.Error("a form takes no text")
	}
}

// TestTheFirstLetterReplacesWhatAFieldHas, as where text is marked; any other key begins to edit it.
func TestTheFirstLetterReplacesWhatAFieldHas(t *testing.T) {
	for _, c := range []struct {
		keys []string
		want string
	}{
		{[]string{"x", "y"}, "xy"},
		{[]string{"backspace", "y"}, "y"},
		{[]string{"right", "y"}, "aby"},
		{[]string{"left", "y"}, "ayb"},
		{[]string{"x", "tab", "tab", "y"}, "y"},
		{[]string{"enter", "y"}, "y"},
	} {
		got := ""
		form := NewForm("", func(v []string) (ui.Intent, error) { got = v[0]; return nil, nil }, Field{Label: "Name", Value: "ab"}, Field{Label: "Other"})
		press(form, append(c.keys, "enter")...)
		if got != c.want {
			t.Errorf("%q make %q of ab, want %q", c.keys, got, c.want)
		}
	}
}

// TestFormsMarkTheFieldThatIsTyped without colour, and go round at both ends.
func TestFormsMarkTheFieldThatIsTyped(t *testing.T) {
	form := NewForm("", nil, Field{Label: "One"}, Field{Label: "Two"}, Field{Label: "Three"})
	for _, c := range []struct{ key, want string }{{"down", "Two"}, {"tab", "Three"}, {"down", "One"}, {"up", "Three"}} {
		if press(form, c.key); !strings.HasPrefix(marked(t, form), c.want) {
			t.Errorf("%s leads to %q, want %s", c.key, marked(t, form), c.want)
		}
	}
}

func TestPage(t *testing.T) {
	text := []string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11"}
	page := NewPage("Read", func(ui.Context) []string { return text })
	top := func() string { return page.Lines(context(60, 10))[0] }
	for _, c := range []struct{ key, want string }{
		{"up", "0"}, {"down", "1"}, {"down", "2"}, {"down", "2"}, {"up", "1"}, {"pgdown", "2"}, {"pgup", "0"},
	} {
		if got := press(page, c.key); got != nil || top() != c.want {
			t.Errorf("%s asks for %v and shows %s first, want %s", c.key, got, top(), c.want)
		}
	}
	for _, key := range []string{"esc", "enter", "x"} {
		if got := press(page, key); got != (ui.Close{}) {
			t.Errorf("%s asks for %v", key, got)
		}
	}
}

func TestPick(t *testing.T) {
	club := &session.Club{People: []session.Person{{ID: "1", Name: "Agnes Vale"}, {ID: "2", Name: "Bram Okoro"}, {ID: "3", Name: "Cleo Hart"}}}
	people := func(ui.Context) []Candidate {
		return []Candidate{{ID: "1", Note: "waits 5 min"}, {ID: "2", Note: "waits 4 min"}, {ID: "3"}}
	}
	take := func(id session.PersonID) ui.Intent { return ui.GoCourt{Court: session.CourtID("for " + id)} }
	for _, c := range []struct {
		keys string
		want ui.Intent
	}{
		{"enter", ui.Close{Then: take("1")}},
		{"down enter", ui.Close{Then: take("2")}},
		{"down down down down enter", ui.Close{Then: take("3")}},
		{"up enter", ui.Close{Then: take("1")}},
		{"cle enter", ui.Close{Then: take("3")}},
		{"okoro enter", ui.Close{Then: take("2")}},
		{"down bra enter", ui.Close{Then: take("2")}},
		{"zzz enter", nil},
		{"esc", ui.Close{}},
	} {
		p := NewPick("Who?", "take", people, take)
		cx := context(60, 10)
		cx.Names = ui.NewNames(club)
		var got ui.Intent
		for _, key := range strings.Fields(c.keys) {
			got = pressIn(p, cx, key)
			if lines := p.Lines(cx); len(lines) > cx.Height {
				t.Errorf("%d lines in a box of %d", len(lines), cx.Height)
			}
		}
		if got != c.want {
			t.Errorf("%q asks for %v, want %v", c.keys, got, c.want)
		}
	}
}

// pressIn is press of one key in a context with people.
func pressIn(d ui.Dialog, c ui.Context, key string) (last ui.Intent) {
	switch key {
	case "enter":
		return pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyEnter}))
	case "esc":
		return pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyEsc}))
	case "down":
		return pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyDown}))
	case "up":
		return pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyUp}))
	}
	for _, r := range key {
		last = pressed(ui.Press(d, c, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}))
	}
	return last
}

// pressed is what a key asked for.
func pressed(i ui.Intent, _ bool) ui.Intent { return i }
