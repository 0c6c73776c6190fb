package tui

import (
	"fmt"
	"time"
	"unicode"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/door"
	"club/quadrille/tui/ui"
)

// nextStep does what the line "Next" says, as far as one key can.
func (m *Model) nextStep() tea.Cmd {
	a, offers := m.advice(), m.ledger.Offers(m.now)
	switch a.Step {
	case session.StepOpen:
		return m.show(m.opening())
	case session.StepCheckIn:
		m.goTo(ui.Door)
	case session.StepCall:
		return m.callRound()
	case session.StepBegin, session.StepFill:
		return m.do(offers[0], pending{then: func(*session.Ledger) { m.goTo(ui.Courts) }})
	case session.StepHeld:
		return m.hold()
	case session.StepClose:
		return m.show(closeMenu(m))
	case session.StepScores:
		if len(a.Barred) > 0 {
			return m.mend(a.Barred[0].Cause, a.Barred[0].People, a.Barred[0].Words(m.ledger.Club()))
		}
		if m.active == ui.Courts {
			return m.fail(fmt.Errorf("%s still to come before there is a next step", session.Counted(a.Running, "score")))
		}
		m.goTo(ui.Courts)
	case session.StepBlocked:
		if a.Idle.Cause == session.TooLate {
			return m.show(lateMenu(a.Idle, offers))
		}
		return m.mend(a.Idle.Cause, a.Idle.People, a.Idle.Words(m.ledger.Club(), m.now.Location()))
	}
	return nil
}

// mend goes where it can be put right what keeps a court empty; why says it in words.
func (m *Model) mend(cause session.Cause, people []session.PersonID, why string) tea.Cmd {
	switch cause {
	case session.NoGroup:
		if p, ok := m.ledger.Club().Person(people[0]); ok {
			return m.show(door.GroupMenu(m.context(), p))
		}
	case session.Contradiction:
		if len(people) > 0 {
			if p, ok := m.ledger.Club().Person(people[0]); ok {
				return m.show(door.PersonForm(m.context(), p).At(door.PartnerLabel).Noting(sentence(why) + "."))
			}
		}
		m.goTo(ui.Door)
	case session.NoFour:
		if m.ledger.Night().NeedsGroups() {
			m.goTo(ui.Door)
			return nil
		}
		m.goTo(ui.Bench)
	default:
		m.goTo(ui.Door)
	}
	return nil
}

// lateMenu asks whether a game shall be called that would probably not be over by closing time.
func lateMenu(why session.Idle, offers []session.Command) ui.Dialog {
	labels := []struct{ key, label string }{
		{"m", fmt.Sprintf("call court %s all the same (%.0f %% to end in time)", why.Court, 100*why.Chance)},
		{"l", "last games: call nobody more"},
	}
	var items []dialog.Item
	for i, c := range offers {
		items = append(items, dialog.Item{Key: labels[i].key, Label: labels[i].label, Intent: ui.Do{Command: c}})
	}
	return dialog.NewMenu("Closing time is near", items...)
}

// callRound calls the next round as the rotation shows it. While the rotation is being worked out
// it waits for it, and so does what is typed meanwhile.
func (m *Model) callRound() tea.Cmd {
	if !m.plan.Ready {
		m.callPlanned = true
		return m.begin(work{what: rotationWork, began: m.planBegan, cancel: func() { m.callPlanned = false }}, nil)
	}
	var plan []session.PlannedRound
	if m.plan.Ready && m.plan.Err == nil {
		plan = m.plan.Rounds
	}
	return m.do(session.CallRound{Plan: plan}, pending{then: func(*session.Ledger) { m.goTo(ui.Courts) }})
}

// closeMenu offers the ways on when nothing more is planned, or closing time, which may have been typed wrong, has passed.
func closeMenu(m *Model) ui.Dialog {
	running, nobody := "", ""
	if len(m.ledger.Night().Running()) > 0 {
		running = "a game goes on"
	}
	label := "call one more round"
	if m.ledger.Night().Settings.Flow == session.Rolling {
		label = "call one more game"
	}
	play, ok := m.ledger.PlayOn(m.now)
	if !ok {
		nobody = "no four can be called"
	}
	end := "end the night"
	if left := leftToPlay(m.ledger.Night(), m.now); left != "" {
		end += ": " + left
	}
	a := m.advice()
	items := []dialog.Item{
		{Key: "m", Label: label, Intent: ui.Do{Command: play}, Why: nobody},
		{Key: "e", Label: end, Intent: m.endNight(false), Why: running},
	}
	if a.Ending == session.ClosingPassed {
		items = append(items, dialog.Item{Key: "c", Label: "change the closing time, to go on as planned", Intent: ui.Show{Dialog: settingsForm(m, closingLabel)}})
	}
	return dialog.NewMenu(sentence(m.endingText(a)), items...)
}

// nextLine says what to do next and with which key, on whatever screen one is.
func (m *Model) nextLine() string {
	if m.trouble != nil {
		return m.troubleNext()
	}
	if d := m.dialog(); d != nil {
		return dialogNext(d, m.dialogContext(d))
	}
	if a, ok := m.screens[m.active].(ui.Adviser); ok {
		if text, ok := a.Next(m.context()); ok {
			return text
		}
	}
	if m.past != nil {
		return m.past.title() + " is shown as it ended, and nothing can be changed there: esc returns to tonight"
	}
	keys := stepKeysOf(m.typing(m.context()))
	n := m.ledger.Night()
	a := m.advice()
	text := m.stepText(n, a, keys) + m.barredText(a, keys)
	if a.Late > 0 && (a.Step == session.StepCall || a.Step == session.StepBegin) {
		text += fmt.Sprintf(" (%d expected, not here yet)", a.Late)
	}
	return text
}

// dialogNext says what a box waits for: the night's own advice holds again when it is closed.
func dialogNext(d ui.Dialog, c ui.Context) string {
	if a, ok := d.(ui.Adviser); ok {
		if text, ok := a.Next(c); ok {
			return text
		}
	}
	return "esc goes back"
}

// stepKeys are the keys that the line of what is next names: letters, or others where letters are
// text.
type stepKeys struct{ next, hold, courts string }

func stepKeysOf(typing bool) stepKeys {
	if typing {
		return stepKeys{next: "ctrl+n", hold: "ctrl+p", courts: "esc"}
	}
	return stepKeys{next: "n", hold: "!", courts: "c"}
}

func (m *Model) stepText(n *session.Night, a session.Advice, keys stepKeys) string {
	switch a.Step {
	case session.StepOpen:
		return fmt.Sprintf("press %s to open tonight", keys.next)
	case session.StepCheckIn:
		if m.active == ui.Door {
			return fmt.Sprintf("check people in: type a few letters of a name, then enter (%d here, 4 needed)", a.Here)
		}
		return fmt.Sprintf("press d and check people in (%d here, 4 needed)", a.Here)
	case session.StepCall:
		if m.plan.Ready && m.plan.Err != nil {
			return fmt.Sprintf("round %d cannot be planned: %v", a.Round, m.plan.Err)
		}
		out := ""
		if r := m.plan; r.Ready && len(r.Rounds) > 0 && len(r.Rounds[0].Out) > 0 {
			out = fmt.Sprintf(", %d on the bench", len(r.Rounds[0].Out))
		}
		return fmt.Sprintf("press %s to call round %d of %d (%d here%s)", keys.next, a.Round, a.Rounds, a.Here, out)
	case session.StepBegin:
		if a.Running > 0 { // the organiser called some by hand, or they are of a round
			return fmt.Sprintf("press %s to begin play: a court that frees calls the next four (%d here)", keys.next, a.Here)
		}
		return fmt.Sprintf("press %s to begin play: each court gets its first four (%d here)", keys.next, a.Here)
	case session.StepHeld:
		return m.heldText(*n.Hold, keys)
	case session.StepScores:
		return m.scoresText(n, a, keys)
	case session.StepFill:
		return fmt.Sprintf("press %s to call court %s, which is free", keys.next, a.Idle.Court)
	case session.StepBlocked:
		return m.blockedText(n, a, keys)
	}
	if a.Running > 0 {
		return "closing time: enter the last scores, then end the night"
	}
	return fmt.Sprintf("%s: press %s to end the night or play on", m.endingText(a), keys.next)
}

// endingText is why the night may end.
func (m *Model) endingText(a session.Advice) string {
	switch a.Ending {
	case session.TooFewLeft:
		return fmt.Sprintf("%d here, and a game needs 4", a.Here)
	case session.ClosingPassed:
		return "closing time " + timeText(m.ledger.Night().Settings.Closing, m.now) + " has passed"
	}
	return "all that was planned is played"
}

// blockedText says which key puts right what keeps a court or a round from being called, and what that is.
// The key comes first: on a small terminal the end of the text may be cut.
func (m *Model) blockedText(n *session.Night, a session.Advice, keys stepKeys) string {
	what := fmt.Sprintf("court %s is free", a.Idle.Court)
	if n.Settings.Flow == session.Rounds {
		what = fmt.Sprintf("round %d cannot be called", a.Round)
	}
	if a.Running > 0 {
		what += fmt.Sprintf(" (%s to come)", session.Counted(a.Running, "score"))
	}
	do := map[session.Cause]string{
		session.NoGroup:       "press " + keys.next + " to give a group",
		session.Contradiction: "press " + keys.next + " to change it",
		session.TooLate:       "press " + keys.next + " to decide",
		session.NoFour:        "press " + keys.next + " for the bench",
	}[a.Idle.Cause]
	if a.Idle.Cause == session.NoFour && n.NeedsGroups() {
		do = "check in more of the other group (d), or change a group there (→ e)"
	}
	if do == "" {
		do = "check more people in (d), or rest fewer (b)"
	}
	return do + ": " + a.Idle.Words(m.ledger.Club(), m.now.Location()) + "; " + what
}

// barredText names who waits and is not called, with the key that puts that right, where nothing
// else is said about it.
func (m *Model) barredText(a session.Advice, keys stepKeys) string {
	if len(a.Barred) == 0 || a.Step == session.StepBlocked && len(a.Idle.People) > 0 {
		return ""
	}
	text := "; not called: " + a.Barred[0].Words(m.ledger.Club())
	if a.Step == session.StepScores {
		text += fmt.Sprintf(" (%s)", keys.next)
	}
	return text
}

// scoresText says how a score is entered, how many are still to come, and what a free court waits for.
func (m *Model) scoresText(n *session.Night, a session.Advice, keys stepKeys) string {
	free := ""
	if c := a.Idle.Cause; c == session.TooFew || c == session.NoFour || c == session.NewPartners {
		free = fmt.Sprintf("; court %s is free: %s", a.Idle.Court, a.Idle.Words(m.ledger.Club(), m.now.Location()))
	}
	return m.scoreText(n, a, keys) + free
}

func (m *Model) scoreText(n *session.Night, a session.Advice, keys stepKeys) string {
	if m.active != ui.Courts {
		return fmt.Sprintf("%s to come: press %s for the courts", session.Counted(a.Running, "score"), keys.courts)
	}
	text := fmt.Sprintf("arrows to a court, type its score (11 7), enter; %d to come", a.Running)
	if r := n.Running()[0].Round; r > 0 {
		text = fmt.Sprintf("round %d: ", r) + text
	}
	return text
}

// peopleCount counts people.
func peopleCount(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

// sentence begins a text with a capital.
func sentence(text string) string {
	r, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[size:]
}

// since is a span of time in whole minutes.
func since(now, from time.Time) string {
	return fmt.Sprintf("%d min", max(0, int(now.Sub(from).Minutes())))
}

// show opens a dialog.
func (m *Model) show(d ui.Dialog) tea.Cmd {
	m.dialogs = append(m.dialogs, d)
	return nil
}

// fail shows what is wrong.
func (m *Model) fail(err error) tea.Cmd {
	m.refuse(err)
	return nil
}
