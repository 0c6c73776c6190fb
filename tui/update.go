package tui

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/ui"
)

// doneMsg is what became of a command.
type doneMsg struct {
	ledger  *session.Ledger
	err     error
	notice  string          // what was done, where that is no action of the session
	command session.Command // what was to be done, nil where that is no action of the session
	action  string          // the same in words, where they are known from an earlier try
	copied  string          // the copy of the club file that was written, "" for none
	reading []string        // how a roster was read, where that must be told
	run     int             // the work that it ends, 0 for none
}

// Update implements tea.Model. It only routes by kind.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.now = m.desk.Now()
	if minute := m.now.Truncate(time.Minute); !minute.Equal(m.minute) {
		m.minute = minute
		m.survey()
	}
	noted := m.noteClock() // before a key can meet times that are wrong
	before, reading := m.trouble, m.active == ui.CallingPage
	_, cmd := m.route(msg)
	if m.trouble != before || reading != (m.active == ui.CallingPage) {
		m.attend()
	}
	return m, tea.Batch(noted, cmd, m.ring(), m.workBehind(), m.judge())
}

// route gives a message to what it is for.
func (m *Model) route(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = msg.Width, msg.Height
		m.surveyScreen() // a wider screen shows more
		if m.ask != nil {
			m.ask()
		}
		return m, nil
	case backgroundMsg:
		m.repaint(msg.light)
		return m, nil
	case tickMsg:
		if m.busy {
			return m, tea.Batch(tick(), m.replan())
		}
		return m, tea.Batch(tick(), m.replan(), m.look())
	case placeMsg:
		m.looked(msg.err)
		return m, nil
	case leaveMsg:
		m.busy = false
		m.looked(msg.err)
		m.queue = nil // what was typed before the question is no answer to it
		return m, m.askBeforeLeaving()
	case putBackMsg:
		cmd := m.isBack(msg)
		return m, tea.Batch(cmd, m.drain())
	case waysMsg:
		m.waysFound(msg)
		return m, nil
	case improvedMsg:
		m.improved(msg)
		return m, nil
	case judgedMsg:
		m.judged.take(msg)
		return m, nil
	case pastMsg:
		m.readPast(msg)
		return m, m.drain()
	case planMsg:
		return m, m.planned(msg)
	case ui.Worked:
		msg.Take()
		return m, m.drain()
	case workedOutMsg:
		m.workedOut(msg)
		return m, nil
	case doneMsg:
		m.done(msg)
		if m.leaving {
			return m, m.askBeforeLeaving()
		}
		return m, tea.Batch(m.replan(), m.drain())
	case Sent:
		m.queue = append(m.queue, event{msg: msg})
		return m, m.drain()
	case sentMsg:
		m.heard(msg)
		return m, tea.Batch(m.replan(), m.drain())
	case longMsg:
		return m, m.goesOn(msg)
	case tea.KeyMsg:
		if msg.Type == tea.KeyEsc && m.cancelWork() {
			return m, nil
		}
		m.seenIt = m.wrong != nil
		m.enqueue(msg)
		return m, m.drain()
	case tea.MouseMsg:
		m.queue = append(m.queue, event{msg: msg})
		return m, m.drain()
	}
	return m, nil
}

// enqueue parts keys that came glued together in one read, so that each counts: a fast typist, a
// paste from a scoreboard or a slow connection all deliver several keys as one message.
func (m *Model) enqueue(k tea.KeyMsg) {
	if k.Type != tea.KeyRunes || k.Paste || k.Alt || len(k.Runes) < 2 {
		m.queue = append(m.queue, event{msg: k, at: m.now})
		return
	}
	burst := 1
	if q := len(m.queue); q > 0 {
		burst = m.queue[q-1].burst + 1
	}
	if m.meansName(k.Runes) {
		m.find()
	}
	for _, r := range k.Runes {
		m.queue = append(m.queue, event{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}, burst, m.now})
	}
}

// leastName is how many letters that came in one read are taken for the beginning of a name.
const leastName = 3

// meansName tells whether letters that came glued together begin the name of somebody tonight, where letters
// are keys: a name typed on the wrong screen goes to the finder, and does no harm.
func (m *Model) meansName(letters []rune) bool {
	if len(letters) < leastName || m.busy || len(m.queue) > 0 || len(m.dialogs) > 0 || m.typing(m.context()) {
		return false
	}
	return m.beginsName(string(letters))
}

// drain handles what waits in the queue, in order, until a command goes to the disk. What was
// typed meanwhile is handled after it, in the state that it leads to.
func (m *Model) drain() tea.Cmd {
	for !m.busy && len(m.queue) > 0 {
		e := m.queue[0]
		m.queue = m.queue[1:]
		dialogs, pages := len(m.dialogs), len(m.back)
		var cmd tea.Cmd
		switch msg := e.msg.(type) {
		case tea.KeyMsg:
			if m.gluedToEsc(msg) {
				m.partEsc(e, msg)
				continue
			}
			var slipped bool
			if cmd, slipped = m.noteSlip(msg, e.at); !slipped {
				cmd = m.press(msg)
			}
		case tea.MouseMsg:
			cmd = m.click(msg)
		case Sent:
			cmd = m.hear(msg)
		}
		if (len(m.dialogs) > dialogs || len(m.back) > pages) && e.burst > 0 {
			m.dropBurst(e.burst)
		}
		if cmd != nil {
			return cmd
		}
	}
	return nil
}

// gluedToEsc tells of letters with alt that they are esc and letters: a slow line delivers both in one read, and
// no key of the desk has alt. Boxes to type into keep alt, which moves by words there.
func (m *Model) gluedToEsc(k tea.KeyMsg) bool {
	if k.Type != tea.KeyRunes || !k.Alt || k.Paste {
		return false
	}
	t, ok := m.dialog().(interface{ TakesText() bool })
	return !ok || !t.TakesText()
}

// partEsc puts esc and the letters that came with it before what waits.
func (m *Model) partEsc(e event, k tea.KeyMsg) {
	parts := []event{{msg: tea.KeyMsg{Type: tea.KeyEsc}, burst: e.burst, at: e.at}}
	for _, r := range k.Runes {
		parts = append(parts, event{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}, e.burst, e.at})
	}
	m.queue = append(parts, m.queue...)
}

// dropBurst forgets the rest of keys that came glued together, when the first of them opened a menu or a
// person's page: the same stroke must not open it and act there. Boxes to type into keep the rest.
func (m *Model) dropBurst(burst int) {
	if t, ok := m.dialog().(interface{ TakesText() bool }); ok && t.TakesText() {
		return
	}
	for len(m.queue) > 0 && m.queue[0].burst == burst {
		m.queue = m.queue[1:]
	}
}

// press gives a key to the dialog, the screen or the desk, whoever takes it first.
func (m *Model) press(k tea.KeyMsg) tea.Cmd {
	if k.Type == tea.KeyCtrlC {
		return m.leave()
	}
	m.seen = m.ledger.Last()
	if cmd, taken := m.pressTrouble(k); taken {
		return cmd
	}
	dismissed := k.Type == tea.KeyEsc && m.wrong != nil
	if dismissed {
		m.wrong, m.unread, m.since = nil, 0, false
	}
	c := m.context()
	if key.Matches(k, m.paletteKey()) && m.coverable() {
		return m.commands()
	}
	if d := m.dialog(); d != nil {
		intent, _ := ui.Press(d, m.dialogContext(d), k)
		return m.follow(intent, d)
	}
	if m.showsScreen(c) {
		if intent, ok := ui.Press(m.screens[m.active], c, k); ok {
			return m.follow(intent, nil)
		}
	} else if intent, ok := ui.Match(m.welcomeActions(), k); ok {
		return m.follow(intent, nil)
	}
	if dismissed && !m.typing(c) {
		return nil // there was nothing to go back from but the error; where letters are text, one esc leaves
	}
	intent, _ := ui.Match(m.deskActions(c), k)
	return m.follow(intent, nil)
}

// showsScreen tells whether the active screen is shown: without an open night most have nothing
// to show, and a welcome stands there instead.
func (m *Model) showsScreen(c ui.Context) bool {
	return m.past != nil || c.Night() != nil || m.active == ui.Standings || m.active == ui.History || m.active >= ui.ScreenCount && m.active != ui.CallingPage
}

// typing tells whether letters are text on what is shown.
func (m *Model) typing(c ui.Context) bool { return m.showsScreen(c) && m.screens[m.active].Typing() }

// dialog is the box on top, nil when there is none.
func (m *Model) dialog() ui.Dialog {
	if len(m.dialogs) == 0 {
		return nil
	}
	return m.dialogs[len(m.dialogs)-1]
}

// closeDialog removes a box, wherever it lies.
func (m *Model) closeDialog(d ui.Dialog) {
	for i, other := range m.dialogs {
		if other == d {
			m.dialogs = append(m.dialogs[:i:i], m.dialogs[i+1:]...)
			return
		}
	}
}

// follow does what a key press asked for; from is the dialog that asked, nil for a screen.
func (m *Model) follow(i ui.Intent, from ui.Dialog) tea.Cmd {
	switch i := i.(type) {
	case ui.Do:
		if _, stays := from.(interface{ Stays() bool }); stays {
			from = nil
		}
		return m.do(i.Command, pending{i.After, from, i.Then})
	case ui.Import:
		return m.importRoster(i, from)
	case ui.Backup:
		return m.backup(i, from)
	case ui.Quit:
		return m.quit(i)
	case ui.Weigh:
		return m.weigh(i.Command)
	case ui.Show:
		m.dialogs = append(m.dialogs, i.Dialog)
	case ui.Close:
		if _, ok := from.(*palette.Palette); ok && i.Then != nil {
			m.dialogs = nil // what is asked for by name does not come back to a box below
		}
		m.closeDialog(from)
		return m.follow(i.Then, nil)
	case ui.Go:
		m.goTo(i.To)
	case ui.Open:
		m.open(i.Page)
	case ui.ShowPerson:
		m.showPerson(i)
	case ui.Back:
		m.goBack()
	case ui.GoCourt:
		m.closeDialog(from)
		m.courts.Select(i.Court)
		m.goTo(ui.Courts)
	case ui.CourtCode:
		return m.follow(m.showCourtCode(i.Court), from)
	case ui.Refuse:
		m.refuse(i.Err)
	case ui.Own:
		return i.Do()
	case ui.Later:
		return m.follow(i.Make(), from)
	case ui.Survey:
		m.surveyScreen()
	}
	return nil
}

// goTo shows a screen. The one that is left forgets what was half typed there.
func (m *Model) goTo(id ui.ScreenID) {
	if ofTonight(id) {
		m.past = nil
	}
	if left, ok := m.screens[m.active].(ui.Leaver); ok && id != m.active {
		left.Leave()
	}
	for _, o := range m.back { // what lies under a page is left too
		if left, ok := m.screens[o.screen].(ui.Leaver); ok && o.screen != id {
			left.Leave()
		}
	}
	if id != m.active {
		m.typed = 0
	}
	m.active, m.back = id, nil
	m.surveyScreen()
}

// waits tells whether an action waits to be saved, so that none can come after it.
func (m *Model) waits() bool { return m.trouble != nil && m.trouble.command != nil }

// do sends a command to the session; until its result is back, what is typed waits.
func (m *Model) do(c session.Command, p pending) tea.Cmd {
	if m.waits() {
		m.refuse(m.trouble.unsaved())
		return nil
	}
	if m.past != nil && !forSafety(c) {
		m.refuse(m.past.refusal())
		return nil
	}
	m.busy, m.after = true, p
	desk := m.desk
	return func() tea.Msg {
		l, err := desk.Do(c)
		if l != nil {
			l.Places() // which the hall shows: while it is worked out here, keys are taken
		}
		return doneMsg{ledger: l, err: err, command: c}
	}
}

// done takes the result of a command.
func (m *Model) done(msg doneMsg) {
	after, held := m.after, m.held()
	m.finish(msg.run)
	m.busy, m.after = false, pending{}
	if msg.ledger != nil {
		m.tellClock(msg.ledger)
		m.take(msg.ledger)
	}
	if m.clockNoted(msg) || m.notKept(msg, after) {
		return
	}
	if m.asksAlike(msg, after) {
		return
	}
	if msg.err != nil {
		m.refuse(msg.err)
		return
	}
	if msg.copied != "" && m.trouble != nil {
		m.trouble.copied = msg.copied
	} else if msg.command != nil {
		m.trouble = nil // what was saved was saved in its place
	}
	if after.dialog != nil {
		m.closeDialog(after.dialog)
	}
	m.followHold(held)
	if after.then != nil {
		after.then(msg.ledger)
	}
	if after.next != nil {
		m.dialogs = append(m.dialogs, after.next(m.context()))
	}
	if len(msg.reading) > 0 {
		m.dialogs = append(m.dialogs, readingOf(msg.reading))
	}
	m.change = ""
	if m.notice = msg.notice; m.notice == "" {
		m.notice = lastDone(msg.ledger)
		m.called = msg.ledger.NewestCalls()
	}
	m.typed = 0
	if isScore(msg.command) {
		a, _ := msg.ledger.NextUndo()
		m.typed = a.ID
	}
	if m.seenIt {
		m.wrong, m.unread = nil, 0
	}
	m.since = m.wrong != nil
}

// refuse shows what is wrong until it is dismissed. The newest refusal is shown, with how many
// there were before it.
func (m *Model) refuse(err error) {
	if m.wrong != nil {
		m.unread++
	}
	m.wrong, m.since, m.seenIt = err, false, false
}

// isScore tells whether a command gives a game its score.
func isScore(c session.Command) bool {
	switch c.(type) {
	case session.FinishGame, session.CorrectScore, session.ScoreRally, session.TakeProposal:
		return true
	}
	return false
}

// lastDone says what the newest action was.
func lastDone(l *session.Ledger) string {
	actions := l.Actions()
	if len(actions) == 0 {
		return ""
	}
	text := l.Newest()
	if _, ok := actions[len(actions)-1].Events[0].(session.Undone); ok {
		text += " (U brings it back)"
	}
	return text
}

// importRoster reads a roster beside the screen and expects its people.
func (m *Model) importRoster(i ui.Import, from ui.Dialog) tea.Cmd {
	if m.waits() {
		m.refuse(m.trouble.unsaved())
		return nil
	}
	m.after = pending{dialog: from}
	desk, read, run := m.desk, m.options.ReadFile, m.works+1
	ctx, cancel := context.WithCancel(context.Background())
	return m.begin(work{what: "taking in the roster", cancel: cancel, stays: true}, func() tea.Msg {
		defer cancel()
		read, err := readRoster(read, i.Path)
		if err == nil {
			err = ctx.Err() // from here on it is taken whole
		}
		switch {
		case errors.Is(err, context.Canceled):
			return doneMsg{ledger: desk.Ledger(), err: errCancelled, run: run}
		case err != nil:
			return doneMsg{ledger: desk.Ledger(), err: fmt.Errorf("roster not taken: %w", err), run: run}
		}
		c := session.ImportRoster{Entries: read.Entries, Arrived: i.Arrived}
		l, err := desk.Do(c)
		return doneMsg{ledger: l, err: err, command: c, reading: read.Notes, run: run}
	})
}

// backup copies the club file beside the screen.
func (m *Model) backup(i ui.Backup, from ui.Dialog) tea.Cmd {
	m.after = pending{dialog: from}
	desk, backup, run := m.desk, m.options.Backup, m.works+1
	var waits session.Command
	if m.waits() {
		waits = m.trouble.command
	}
	return m.begin(work{what: "writing the copy"}, func() tea.Msg {
		if err := backup(i.Path, waits); err != nil {
			return doneMsg{ledger: desk.Ledger(), err: fmt.Errorf("no copy made: %w", err), run: run}
		}
		notice := "copy written to " + i.Path
		if waits != nil {
			notice += ", with the last action"
		}
		return doneMsg{ledger: desk.Ledger(), notice: notice, copied: i.Path, run: run}
	})
}
