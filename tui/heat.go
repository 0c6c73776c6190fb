package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// heat shows how hot it feels and what to do, or asks for the air where nobody has measured it tonight.
func (m *Model) heat() tea.Cmd {
	switch n := m.ledger.Night(); {
	case n == nil:
		return m.fail(session.ErrNoNight)
	case n.Heat == nil:
		return m.show(heatForm())
	}
	return m.show(&heatPage{})
}

// heatForm asks what was measured.
func heatForm() ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		f, err := care.ParseTemperature(v[0])
		if err != nil {
			return nil, err
		}
		r, err := care.ParseHumidity(v[1])
		if err != nil {
			return nil, err
		}
		return ui.Do{
			Command: session.MeasureHeat{Air: care.Air{Fahrenheit: f, Humidity: r}},
			Then:    func(ui.Context) ui.Dialog { return &heatPage{} },
		}, nil
	}
	return dialog.NewForm("How hot is it?", send,
		dialog.Field{Label: "Temperature", Hint: "in the shade, with its unit: 33C or 91F"},
		dialog.Field{Label: "Humidity", Hint: "relative humidity in %, such as 60"}).Noting(care.Defer)
}

// heatPage says how hot it feels and what to do about it.
type heatPage struct{ scroll ui.Scroller }

// Title implements ui.Dialog.
func (*heatPage) Title() string { return "Heat" }

// Actions implements ui.Dialog.
func (p *heatPage) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{
		ui.Ask(ui.Bind("measure again", "enter", "enter"), ui.Close{Then: ui.Show{Dialog: heatForm()}}),
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}, p.scroll.Actions(len(heatText(c)), c.Height)...)
}

// Lines implements ui.Dialog.
func (p *heatPage) Lines(c ui.Context) []string { return p.scroll.Seen(heatText(c), c.Height) }

// heatText is the page in lines of its width: who decides stands before what is advised.
func heatText(c ui.Context) []string {
	n := c.Night()
	if n == nil || n.Heat == nil {
		return []string{"Nobody has measured the heat tonight."}
	}
	h := n.Heat
	var out []string
	for _, text := range h.Feels() {
		for _, l := range line.Wrap(text, c.Width) {
			out = append(out, c.Theme.Strong.Render(l))
		}
	}
	measured := fmt.Sprintf("Measured at %s: %s, %.0f %% humidity. Our rule, no authority's: measure again every %d min.",
		h.At.In(c.Now.Location()).Format("15:04"), care.BothScales(h.Fahrenheit), h.Humidity, int(session.MeasureAgain.Minutes()))
	for _, text := range []string{care.Emergency, measured, care.Defer} {
		out = append(out, line.Wrap(text, c.Width)...)
	}
	out = append(out, "")
	for _, text := range h.ToDo() {
		for i, l := range line.Wrap(text, c.Width-2) {
			out = append(out, []string{"- ", "  "}[min(i, 1)]+l)
		}
	}
	out = append(out, "")
	return append(out, line.Wrap("Shorter games: the options of tonight (o, e) have the points and a time limit. ! holds play.", c.Width)...)
}
