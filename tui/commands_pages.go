package tui

import (
	"slices"

	"club/quadrille/tui/door"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/ui"
)

// The names of what is a page of its own, as the keys that open it have them.
const (
	byCourts   = "by courts"
	inShort    = "in short"
	readOut    = "read out"
	openRoster = "open roster"
)

// alsoCalled are other words by which people look for what the palette has.
var alsoCalled = map[string]string{
	byCourts:          "timeline idle courts",
	inShort:           "summary",
	readOut:           "call aloud announce",
	openRoster:        "import people from a file CSV spreadsheet",
	"find":            "search person",
	"who plays where": "announce",
	"Standings":       "table ranking leaders",
	"Rotation":        "schedule plan rounds fairness",
	"Door":            "check in guest people",
	"Bench":           "waiting queue who plays next",
	"options":         "settings",
	holdKey:           "lightning heat injury emergency pause stop",
}

// pageEntries are the pages and forms that other screens open, but those that the entries already have.
func (m *Model) pageEntries(have []palette.Entry) []palette.Entry {
	noNight, tonight := "", m.noNight()
	if m.past != nil {
		tonight = m.past.refusal().Error()
	}
	if m.ledger.Night() == nil && len(m.ledger.Club().Nights) == 0 {
		noNight = m.noNight()
	}
	open := func(page ui.ScreenID) ui.Intent { return ui.Open{Page: page} }
	pages := []struct {
		label, note, keys, why string
		take                   ui.Intent
	}{
		{readOut, "read the newest call aloud, court by court", "c v", tonight, open(ui.CallingPage)},
		{byCourts, "the night by its courts: games, idle time, what the pace foretells", "h t", noNight, open(ui.TimelinePage)},
		{inShort, "the night in short: games, courts, who leads, fairness", "h y", noNight, open(ui.SummaryPage)},
		{openRoster, "take people from a file", "d ctrl+o", tonight, nil},
	}
	var out []palette.Entry
	for _, p := range pages {
		if slices.ContainsFunc(have, func(e palette.Entry) bool { return e.Label == p.label }) {
			continue
		}
		take := func() ui.Intent { return p.take }
		if p.label == openRoster { // made anew each time: what was typed into one must not stand in the next
			take = func() ui.Intent { return ui.Show{Dialog: door.ImportForm()} }
		}
		out = append(out, palette.Entry{Label: p.label, Note: p.note, Keys: p.keys, Why: p.why, Also: alsoCalled[p.label], Take: take})
	}
	return out
}
