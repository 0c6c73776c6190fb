package tui

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/forecast"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// beforeMenu has the choices while no night is open.
func (m *Model) beforeMenu() *dialog.Menu {
	return dialog.NewMenu("No night is open",
		dialog.Item{Key: "o", Label: "open tonight", Intent: ui.Later{Make: func() ui.Intent { return ui.Show{Dialog: m.opening()} }}},
		m.fitItem(),
	)
}

// fitItem asks what fits into a night.
func (m *Model) fitItem() dialog.Item {
	return dialog.Item{Key: "f", Label: "plan a night ahead: what fits into it, how well it mixes", Intent: ui.Later{Make: func() ui.Intent {
		return ui.Show{Dialog: m.fitForm(m.likelyNight())}
	}}}
}

// likelyNight is the question about a night as the club has it: with as many people as came last, on as many courts
// as is usual.
func (m *Model) likelyNight() forecast.Question {
	s, courts := m.ledger.Club().Proposal(1)
	const people, minutes, games = 16, 120, 5
	q := forecast.Question{
		Hall:   forecast.Hall{People: people, Courts: courts, Minutes: minutes, Flow: s.Flow, Rules: s.Scoring},
		Format: s.Format, Wished: games, Seed: 1,
	}
	if n := m.ledger.Club().Night(); n != nil {
		if came := n.Came(); came >= q.Hall.Seats() {
			q.Hall.People = came
		}
	}
	return q
}

// fitForm asks who, where and how long.
func (m *Model) fitForm(a forecast.Question) ui.Dialog {
	h := a.Hall
	send := func(v []string) (ui.Intent, error) {
		q, err := readFit(a, v)
		if err != nil {
			return nil, err
		}
		return ui.Close{Then: ui.Own{Do: func() tea.Cmd { return m.fits(q) }}}, nil
	}
	return dialog.NewForm("What fits into a night?", send,
		dialog.Field{Label: "People", Value: strconv.Itoa(h.People), Hint: "how many you expect"},
		dialog.Field{Label: "Courts", Value: strconv.Itoa(h.Courts), Hint: "how many you have"},
		dialog.Field{Label: "Hours", Value: hoursText(h.Minutes), Hint: "from the first call to closing time, such as 2.5 or 2:30"},
		dialog.Field{Label: "Flow", Value: string(h.Flow), Options: []string{string(session.Rounds), string(session.Rolling)}, Hint: "rounds: all courts start together; rolling: a free court calls the next four"},
		dialog.Field{Label: "Game to", Value: strconv.Itoa(h.Rules.To), Hint: "points that win; other lengths are told of too"},
		dialog.Field{Label: "Games each", Value: strconv.Itoa(a.Wished), Hint: "that everybody should get"},
		dialog.Field{Label: "Come late", Value: strconv.Itoa(h.Late), Hint: "how many of them"},
		dialog.Field{Label: "Leave early", Value: strconv.Itoa(h.Leave), Hint: "how many of them"},
	)
}

// readFit reads what was typed.
func readFit(a forecast.Question, v []string) (forecast.Question, error) {
	h, to := &a.Hall, 0
	for _, whole := range []struct {
		at   int
		what string
		into *int
	}{
		{0, "people", &h.People},
		{1, "courts", &h.Courts},
		{4, "game to", &to},
		{5, "games each", &a.Wished},
		{6, "come late", &h.Late},
		{7, "leave early", &h.Leave},
	} {
		n, err := number(v[whole.at], whole.what)
		if err != nil {
			return a, err
		}
		*whole.into = n
	}
	var err error
	if h.Minutes, err = readHours(v[2]); err != nil {
		return a, err
	}
	h.Flow, h.Rules = session.Flow(v[3]), forecast.To(h.Rules, to)
	if a.Format == scheduler.Pairs || a.Format == scheduler.Ladder {
		a.Format = scheduler.Rotating // the mixing of others is no question
	}
	if a.Wished < 1 {
		return a, fmt.Errorf("games each: say 1 or more")
	}
	return a, h.Validate()
}

// hoursText is a time as it is typed.
func hoursText(minutes int) string {
	if minutes%60 == 0 {
		return strconv.Itoa(minutes / 60)
	}
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

// readHours reads hours as people write them: 2, 2.5, 2,5 or 2:30.
func readHours(text string) (minutes int, err error) {
	text = strings.TrimSpace(text)
	wrong := fmt.Errorf("hours: %q is no time such as 2.5 or 2:30", text)
	if h, m, clock := strings.Cut(text, ":"); clock {
		hours, err := strconv.Atoi(h)
		rest, err2 := strconv.Atoi(m)
		if err != nil || err2 != nil || hours < 0 || rest < 0 || rest > 59 {
			return 0, wrong
		}
		return 60*hours + rest, nil
	}
	hours, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(hours > 0 && hours <= 24) {
		return 0, wrong
	}
	return int(60*hours + 0.5), nil
}

// fits works out what fits into a night, and shows it.
func (m *Model) fits(q forecast.Question) tea.Cmd {
	club := m.ledger.Club()
	return m.workOut("playing the night through", func(ctx context.Context) (func(ui.Context) ui.Dialog, error) {
		r, err := forecast.Reported(ctx, q, club)
		return func(ui.Context) ui.Dialog { return &fitPage{asked: q, lines: r.Text(), again: m.fitForm} }, err
	})
}

// fitPage is the answer.
type fitPage struct {
	asked  forecast.Question
	lines  []forecast.Line
	again  func(forecast.Question) ui.Dialog
	scroll ui.Scroller
}

// Title implements ui.Dialog.
func (*fitPage) Title() string { return "What fits into a night" }

// Whole tells that the page wants all of the screen but the line of keys.
func (*fitPage) Whole() bool { return true }

// Actions implements ui.Dialog.
func (p *fitPage) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{
		ui.Ask(ui.Bind("ask again", "enter", "enter"), ui.Close{Then: ui.Later{Make: func() ui.Intent { return ui.Show{Dialog: p.again(p.asked)} }}}),
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}, p.scroll.Actions(len(p.text(c)), c.Height)...)
}

// Lines implements ui.Dialog.
func (p *fitPage) Lines(c ui.Context) []string { return p.scroll.Seen(p.text(c), c.Height) }

// text is the page in lines of its width: on a wide screen the last table stands beside the rest.
func (p *fitPage) text(c ui.Context) []string {
	beside := len(p.lines)
	for i, l := range p.lines {
		if l == (forecast.Line{}) {
			beside = i
		}
	}
	const room = 80 // of each half
	if c.Width < 2*room {
		return fitLines(p.lines, c.Width)
	}
	left, right := fitLines(p.lines[:beside], room), fitLines(p.lines[beside+1:], c.Width-room-2)
	for len(left) < len(right) {
		left = append(left, "")
	}
	for i := range right {
		left[i] = line.Fit(left[i], room) + "  " + right[i]
	}
	return left
}

// fitLines are lines of a report in so many cells.
func fitLines(lines []forecast.Line, width int) []string {
	var out []string
	for _, l := range lines {
		if l.Flows {
			out = append(out, line.Wrap(l.Text, width)...)
			continue
		}
		out = append(out, line.Cut(l.Text, width))
	}
	return out
}
