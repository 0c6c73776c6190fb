package tui

import (
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// walkPage is one screen of the walk through a night: what is typed to come to it, how much time passes before,
// and what is said of it.
type walkPage struct {
	minutes int
	keys    []string
	text    string
}

// walkPages are the walk, on the invented night of session.OpenDemo.
var walkPages = []walkPage{
	{0, []string{"d", "qui", "enter"}, "People come in. Typed at the door: three letters of a name, and enter. A name that nobody has becomes a guest with the same enter."},
	{5, []string{"esc", "n"}, "The round is called. n always does what the line Next says; k lists who plays where, to read out."},
	{11, []string{"117", "enter", "911", "enter"}, "Scores come in. 117 and enter is 11-7 for the team named first; the cursor goes on to the next court. m has more about a court."},
	{1, []string{"f", "iri", "enter"}, "“When do I play?” f, three letters, enter: where somebody is, with whom, and what comes next."},
	{0, []string{"esc", "esc", "s"}, "The standings are live. u undoes, ? lists the keys, : finds everything by its name. Nothing is lost: each key is on the disk before you see it."},
}

// walk shows a night in five screens: the real desk on an invented night in memory, which touches nothing else.
type walk struct {
	look *theme.Theme
	at   int
	now  time.Time
	desk *Model
	err  error
}

// walkBegins is when the invented night does. It is of no account: no other night is near.
var walkBegins = time.Date(2026, 1, 8, 19, 0, 0, 0, time.UTC)

// newWalk goes to a page of the walk, from the beginning.
func newWalk(look *theme.Theme, page int) *walk {
	w := &walk{look: look, now: walkBegins}
	people := 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time { return w.now }, func() session.PersonID {
		people++
		return session.PersonID(fmt.Sprintf("walk%02d", people))
	})
	if err == nil {
		err = session.OpenDemo(desk)
	}
	if w.err = err; err != nil {
		return w
	}
	w.desk = New(desk, Options{Theme: look})
	w.run(w.desk.replan())
	for i := range page + 1 {
		w.play(i)
	}
	return w
}

// play types what leads to a page.
func (w *walk) play(page int) {
	w.at = page
	w.now = w.now.Add(time.Duration(walkPages[page].minutes) * time.Minute)
	for _, k := range walkPages[page].keys {
		_, cmd := w.desk.Update(walkKey(k))
		w.run(cmd)
	}
}

// walkKey is the message of a key of the walk.
func walkKey(name string) tea.KeyMsg {
	switch name {
	case "enter":
		return tea.KeyMsg{Type: tea.KeyEnter}
	case "esc":
		return tea.KeyMsg{Type: tea.KeyEsc}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// run lets a command of the invented desk happen at once.
func (w *walk) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil, tea.QuitMsg:
	case tea.BatchMsg:
		for _, c := range msg {
			w.run(c)
		}
	default:
		_, next := w.desk.Update(msg)
		w.run(next)
	}
}

// Title implements ui.Dialog.
func (*walk) Title() string { return "A night in five screens" }

// Whole tells that the walk wants the whole screen.
func (*walk) Whole() bool { return true }

// Actions implements ui.Dialog.
func (w *walk) Actions(ui.Context) []ui.Action {
	back := ui.Ask(ui.Bind("end the walk", "esc", "esc", "q"), ui.Close{})
	if w.err != nil || w.at == len(walkPages)-1 {
		back = ui.Ask(ui.Bind("to your own desk", "enter", "enter", "esc", "q"), ui.Close{})
	}
	out := []ui.Action{back}
	if w.err != nil {
		return out
	}
	if w.at < len(walkPages)-1 {
		next := ui.Act(ui.Bind("go on", "enter", "enter", "right", " "), func() ui.Intent {
			w.play(w.at + 1)
			return nil
		})
		out = append([]ui.Action{next}, out...)
	}
	if w.at > 0 {
		out = append(out, ui.Act(ui.Bind("one back", "←", "left"), func() ui.Intent {
			*w = *newWalk(w.look, w.at-1)
			return nil
		}))
	}
	return out
}

// Lines implements ui.Dialog.
func (w *walk) Lines(c ui.Context) []string {
	if w.err != nil {
		return line.Wrap("the walk cannot be shown: "+w.err.Error(), c.Width)
	}
	const room = 3 // for what is said of the screen
	head := fmt.Sprintf("%d of %d, an invented night. ", w.at+1, len(walkPages))
	said := line.Wrap(head+walkPages[w.at].text, c.Width)
	var out []string
	for i := range max(room, len(said)) {
		text := ""
		if i < len(said) {
			text = c.Theme.Next.Render(said[i])
		}
		out = append(out, text)
	}
	if left := c.Height - len(out); left >= minHeight {
		out = append(out, w.desk.frame(c.Width, left)...)
	}
	return out[:min(len(out), c.Height)]
}

// frame is the desk drawn at a size.
func (m *Model) frame(width, height int) []string {
	if m.width != width || m.height != height {
		m.Update(tea.WindowSizeMsg{Width: width, Height: height})
	}
	return strings.Split(m.View(), "\n")
}

// walkThrough opens the walk.
func (m *Model) walkThrough() tea.Cmd {
	m.wrong, m.unread, m.since = nil, 0, false // what was refused before has nothing to do with the walk
	return m.show(newWalk(m.options.Theme, 0))
}

// isNew tells whether the club file has nothing in it yet.
func (m *Model) isNew() bool {
	club := m.ledger.Club()
	return len(club.People) == 0 && len(club.Nights) == 0
}

// welcomeActions are the keys where no night is open: a club that is new is offered the walk.
func (m *Model) welcomeActions() []ui.Action {
	if !m.isNew() {
		return nil
	}
	return []ui.Action{ui.Ask(ui.Bind("a walk", "w", "w"), ui.Own{Do: m.walkThrough}).Explained("a walk through a night in five screens")}
}
