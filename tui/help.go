package tui

import (
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// helpPage lists all keys, made from the same bindings that are matched.
func (m *Model) helpPage(c ui.Context) []string {
	out := []string{c.Theme.Strong.Render("Everywhere")}
	for _, d := range deskKeys() {
		keys := d.letter.Help().Key + " or " + d.always.Help().Key
		for i, text := range line.Wrap(d.explain, c.Width-16) {
			if i > 0 {
				keys = ""
			}
			out = append(out, "  "+c.Theme.Key.Render(line.Fit(keys, 14))+text)
		}
	}
	out = append(out, "  "+c.Theme.Key.Render(line.Fit("d c b r s h", 14))+"the screens by their first letters (not while typing)")
	out = append(out, "  "+c.Theme.Key.Render(line.Fit("tab shift+tab", 14))+"the next screen, the one before")
	out = append(out, "", c.Theme.Strong.Render(tabs[m.active].name))
	for _, a := range m.screenActions(c) {
		about := a.About
		if about == "" {
			about = a.Key.Help().Desc
		}
		for i, text := range line.Wrap(about, c.Width-16) {
			keys := a.Key.Help().Key
			if i > 0 {
				keys = ""
			}
			out = append(out, "  "+c.Theme.Key.Render(line.Fit(keys, 14))+text)
		}
	}
	out = append(out, "", "Scores: type both numbers one after the other, the team named first on the card first.",
		"117 is 11-7. Put a blank between them when it could be read in two ways: 11 1.",
		"Faults: kitchen (non-volley zone) is a volley there, on its line or carried into it.",
		"A click selects; with shift held the mouse marks text as usual.")
	return out
}

// screenActions are what the keys of what is shown do.
func (m *Model) screenActions(c ui.Context) []ui.Action {
	if !m.showsScreen(c) {
		return nil
	}
	return m.screens[m.active].Actions(c)
}
