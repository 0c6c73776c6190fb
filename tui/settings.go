package tui

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// settings offers what concerns the whole night.
func (m *Model) settings() tea.Cmd {
	if m.ledger.Night() == nil {
		return m.show(openForm(m))
	}
	return m.show(m.nightMenu())
}

// nightMenu has the choices about the night that goes on.
func (m *Model) nightMenu() *dialog.Menu {
	noFile := ""
	if m.options.Backup == nil {
		noFile = "nothing of this is kept"
	}
	n := m.ledger.Night()
	notRolling := ""
	if !n.Rolls {
		notRolling = "no court calls by itself"
	}
	end := dialog.Item{Key: "x", Label: "end the night", Intent: m.endNight()}
	if k := len(n.Running()); k > 0 {
		end.Intent = ui.Show{Dialog: dialog.NewMenu(plural(k, "game")+" on court",
			dialog.Item{Key: "s", Label: "void the games on court, and end the night", Intent: ui.Do{Command: session.EndNight{SetAside: true}}},
			dialog.Item{Key: "p", Label: "play on", Intent: ui.Close{}})}
	}
	note, usual := "", "all is as usual"
	if unusual := m.ledger.Club().Unusual(); len(unusual) > 0 {
		note, usual = "For tonight only: "+strings.Join(unusual, "; ")+".", ""
	}
	return dialog.NewMenu("Tonight",
		dialog.Item{Key: "e", Label: "change flow, format, scoring, rounds, times", Intent: ui.Show{Dialog: settingsForm(m, "")}},
		dialog.Item{Key: "k", Label: "keep tonight's settings as usual", Intent: ui.Do{Command: session.KeepUsual{}}, Why: usual},
		dialog.Item{Key: "n", Label: "names in the hall: now " + m.ledger.Club().Naming.String(), Intent: ui.Show{Dialog: m.namingMenu()}},
		m.phonesItem(),
		dialog.Item{Key: "+", Label: "add one more court", Intent: ui.Do{Command: session.OpenCourt{}}},
		dialog.Item{Key: "w", Label: "write a backup of the club file", Intent: ui.Show{Dialog: backupForm()}, Why: noFile},
		dialog.Item{Key: "l", Label: "last games: call nobody more", Intent: ui.Do{Command: session.EndCalls{}}, Why: notRolling},
		end,
	).Noting(note)
}

// openForm asks what a new night needs; what is usual is filled in.
func openForm(m *Model) ui.Dialog {
	s, courtCount := m.ledger.Club().Proposal(m.seed())
	name := m.now.Format("Monday 2 January")
	send := func(v []string) (ui.Intent, error) {
		next, err := readSettings(s, v[2:], nil, m.now)
		if err != nil {
			return nil, err
		}
		k, err := number(v[1], "courts")
		if err != nil {
			return nil, err
		}
		open := session.OpenNight{Name: v[0], Settings: next, Courts: k}
		return ui.Do{Command: open, After: func(*session.Ledger) { m.goTo(ui.Door) }}, nil
	}
	fields := []dialog.Field{
		{Label: "Night", Value: name, Hint: "enter takes the form as it is"},
		{Label: "Courts", Value: strconv.Itoa(courtCount), Hint: "how many courts you have; more can be added at any time"},
	}
	return dialog.NewForm("Open tonight", send, append(fields, settingsFields(s, m.now)...)...)
}

// settingsForm changes the settings of the night that goes on. It begins at a field, at the first where there is none of that label.
func settingsForm(m *Model, at string) ui.Dialog {
	s := m.ledger.Night().Settings
	fields := settingsFields(s, m.now)
	way := showWay(fields, m.ledger.Night())
	send := func(v []string) (ui.Intent, error) {
		n := m.ledger.Night()
		v, err := way.settle(v)
		if err != nil {
			return nil, err
		}
		next, err := readSettings(s, v, n, m.now)
		if err != nil {
			return nil, err
		}
		if next.Closing.Equal(s.Closing) {
			next.Closing = n.Settings.Closing // which the clock may have carried along meanwhile
		}
		return ui.Do{Command: session.ChangeSettings{Settings: next}}, nil
	}
	if u := m.ledger.Club().Usual; u != nil {
		sayUsual(fields, settingsFields(u.Settings, m.now))
	}
	return dialog.NewForm("Change tonight, from the next call on", send, fields...).At(at)
}

// sayUsual tells what is usual where a field has something else. A closing time is of one night.
func sayUsual(fields, usual []dialog.Field) {
	for i := range fields {
		if f := &fields[i]; f.Value != usual[i].Value && f.Label != closingLabel {
			f.Hint = "usually " + cmp.Or(usual[i].Value, "none") + "; " + f.Hint
		}
	}
}

// closingLabel is the field of the closing time.
const closingLabel = "Closing time"

func (m *Model) seed() uint64 {
	if m.options.NewSeed == nil {
		return 1
	}
	return m.options.NewSeed()
}

// timeText is a time of day as it is shown and typed, empty for none.
func timeText(t, now time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(now.Location()).Format("15:04")
}

func settingsFields(s session.Settings, now time.Time) []dialog.Field {
	return []dialog.Field{
		{
			Label: "Flow", Value: string(s.Flow), Options: []string{string(session.Rounds), string(session.Rolling)},
			Hint: "rounds: all courts start together; rolling: a free court calls the next four",
		},
		{
			Label: "Format", Value: s.Format.String(), Options: []string{"rotating", "mixed", "pairs", "ladder"},
			Hint: "rotating partners; mixed: one of each group a team; set pairs; ladder: winners move up",
		},
		{
			Label: "Scoring", Value: s.Scoring.Scoring.String(), Options: []string{"side-out", "rally"},
			Hint: "side-out: only the serving team scores; rally: every rally is a point",
		},
		{Label: "Game to", Value: strconv.Itoa(s.Scoring.To), Hint: "11, 15 or 21 as a rule"},
		{Label: "Win by", Value: strconv.Itoa(s.Scoring.WinBy), Options: []string{"1", "2"}, Hint: "the lead that ends a game"},
		{Label: "Rounds", Value: strconv.Itoa(s.Rounds), Hint: "rounds to plan; more can be called at the end"},
		{Label: "Minutes a round", Value: strconv.Itoa(s.Slot), Hint: "from one call to the next, for people who come late or leave early"},
		{Label: closingLabel, Value: timeText(s.Closing, now), Hint: "when play ends, such as 21:30; empty if open"},
		{
			Label: "Even levels", Value: s.Leveling().String(), Options: []string{"off", "gentle", "even"},
			Hint: "gentle: fewer games with a sure winner; even: hardly any, for a few more repeats",
		},
		{
			Label: "Left-over two", Value: choose(s.Singles, "play singles", "sit out"), Options: []string{"sit out", "play singles"},
			Hint: "when two are left over and a court is free",
		},
		{
			Label: "Walkovers", Value: choose(s.Stopped, "count", "left out"), Options: []string{"left out", "count"},
			Hint: "walkovers and retired games in the table; the rulebook leaves them out",
		},
		{Label: "Cap", Value: orEmpty(s.Scoring.Cap), Hint: "points that win with any lead, such as 15; empty for none"},
		{Label: "Time limit", Value: orEmpty(s.Scoring.Minutes), Hint: "minutes after which a game stops and the score decides; empty for none"},
		{
			Label: "Last point", Value: choose(s.Scoring.WinOnServe, "on serve", "by anybody"), Options: []string{"by anybody", "on serve"},
			Hint: "rally scoring only: on serve, the winning point takes the serve",
		},
		{
			Label: "Bench", Value: s.Benching.String(), Options: []string{"mixed", "strict"},
			Hint: "mixed: a few sit out twice running once, so that all meet; strict: as few as can be",
		},
		{
			Label: "Free courts", Value: choose(s.ByWait, "by wait", "mix more"), Options: []string{"mix more", "by wait"},
			Hint: "rolling: mix more: half the repeats, a minute or two more wait; by wait: as a queue",
		},
	}
}

// evenChance is the most that a likelier winner may have where levels are to be even.
const evenChance = 0.75

// orEmpty is a number, or nothing for none.
func orEmpty(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// optional reads what orEmpty writes.
func optional(text, what string) (int, error) {
	if strings.TrimSpace(text) == "" {
		return 0, nil
	}
	return number(text, what)
}

func choose(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}

// readSettings reads the values of settingsFields, for a night that goes on or, if n is nil, for a new one.
func readSettings(s session.Settings, v []string, n *session.Night, now time.Time) (session.Settings, error) {
	var err error
	if s.Flow, err = session.ParseFlow(v[0]); err != nil {
		return s, err
	}
	if s.Format, err = scheduler.ParseFormat(v[1]); err != nil {
		return s, err
	}
	if s.Scoring.Scoring, err = scoring.ParseScoring(v[2]); err != nil {
		return s, err
	}
	for i, to := range map[int]*int{3: &s.Scoring.To, 4: &s.Scoring.WinBy, 5: &s.Rounds, 6: &s.Slot} {
		if *to, err = number(v[i], strings.ToLower(settingsFields(s, now)[i].Label)); err != nil {
			return s, err
		}
	}
	step, err := scheduler.ParseLeveling(v[8])
	if err != nil {
		return s, err
	}
	if s.Gentle = step == scheduler.GentleLevels; step == scheduler.AnyLevels {
		s.Balance = 0
	} else {
		s.Balance = evenChance
	}
	if s.Scoring.Cap, err = optional(v[11], "cap"); err != nil {
		return s, err
	}
	if s.Scoring.Minutes, err = optional(v[12], "time limit"); err != nil {
		return s, err
	}
	s.Scoring.WinOnServe = v[13] == "on serve"
	s.ByWait = v[15] == "by wait"
	if s.Benching, err = scheduler.ParseBenching(v[14]); err != nil {
		return s, err
	}
	s.Singles, s.Stopped = v[9] == "play singles", v[10] == "count"
	if text := strings.TrimSpace(v[7]); text != timeText(s.Closing, now) { // what is left as it was is not read anew
		at, err := roster.ParseMoment(text)
		if err != nil || text != "" && !at.IsClock {
			return s, fmt.Errorf("closing time %q: write a time such as 21:30", text)
		}
		s.Closing = n.TimeOfDay(at, now)
	}
	return s, s.Validate()
}

func number(text, what string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return 0, fmt.Errorf("%s: %q is no whole number", what, text)
	}
	return n, nil
}

// backupForm asks where a copy of the club file goes.
func backupForm() ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		path := strings.TrimSpace(v[0])
		if path == "" {
			return nil, fmt.Errorf("type where the copy goes, such as /media/stick/club.qdb")
		}
		return ui.Backup{Path: path}, nil
	}
	return dialog.NewForm("Write a backup", send,
		dialog.Field{Label: "File", Hint: "a new file, on a stick for example; the desk stays open"})
}
