// Package emergency shows and writes the emergency card: what somebody who calls for help must know of the place.
package emergency

import (
	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Page shows the card.
type Page struct {
	venue  string
	card   session.EmergencyCard
	home   session.EmergencyCard // of no venue in particular, where this one has no card
	scroll ui.Scroller
}

// New makes the page of the card of the venue where the newest night is or was, as it is now.
func New(l *session.Ledger) *Page {
	p := &Page{venue: l.Venue(), card: l.Card()}
	if len(p.card.Written()) == 0 {
		p.home = l.Club().Card(session.HomeVenue)
	}
	return p
}

// Title implements ui.Dialog.
func (p *Page) Title() string { return titled("Emergency card", p.venue) }

// titled is a heading with the venue that it is about.
func titled(what, venue string) string {
	if venue == session.HomeVenue {
		return what
	}
	return what + ": " + venue
}

// Actions implements ui.Dialog.
func (p *Page) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
		ui.Ask(ui.Bind("write it", "w", "w"), ui.Close{Then: ui.Show{Dialog: Form(p.venue, p.card)}}),
	}, p.scroll.Actions(len(p.text(c)), c.Height)...)
}

// Lines implements ui.Dialog.
func (p *Page) Lines(c ui.Context) []string { return p.scroll.Seen(p.text(c), c.Height) }

// labelWidth is the room of the labels.
const labelWidth = 15

// text is the card in lines of the page's width.
func (p *Page) text(c ui.Context) []string {
	var out []string
	for _, l := range line.Wrap(care.CallFirst, c.Width) {
		out = append(out, c.Theme.Bad.Render(l))
	}
	out = append(out, "")
	for _, l := range p.card.Lines() {
		if l.Text == "" {
			out = append(out, line.Fit(l.Label, labelWidth)+c.Theme.Dim.Render("not written yet: w"))
			continue
		}
		label := l.Label
		for _, row := range line.Wrap(l.Text, max(8, c.Width-labelWidth)) {
			out = append(out, line.Cut(line.Fit(label, labelWidth)+c.Theme.Strong.Render(row), c.Width))
			label = ""
		}
	}
	if rows := p.home.Written(); len(rows) > 0 {
		out = append(out, "")
		for _, l := range line.Wrap("Nothing is written for "+p.venue+" yet. The card of no venue in particular says, which may be another place:", c.Width) {
			out = append(out, c.Theme.Dim.Render(l))
		}
		for _, l := range rows {
			out = append(out, c.Theme.Dim.Render(line.Fit(l.Label, labelWidth)+line.Cut(l.Text, max(8, c.Width-labelWidth))))
		}
	}
	return out
}

// Whether the boards show the card.
const (
	shown  = "on the boards too"
	unseen = "at the desk and on paper"
)

// Form writes the card of a venue.
func Form(venue string, card session.EmergencyCard) ui.Dialog {
	where := unseen
	if card.OnBoard {
		where = shown
	}
	send := func(v []string) (ui.Intent, error) {
		next := session.EmergencyCard{Address: v[0], Access: v[1], Defibrillator: v[2], FirstAid: v[3], Contacts: v[4], OnBoard: v[5] == shown}
		return ui.Do{Command: session.WriteCard{Venue: venue, Card: next}, Then: func(c ui.Context) ui.Dialog { return New(c.Ledger) }}, nil
	}
	return dialog.NewForm(titled("Write the emergency card", venue), send,
		dialog.Field{Label: "Address", Value: card.Address, Hint: "as one says it to the emergency services, with the entrance"},
		dialog.Field{Label: "Access", Value: card.Access, Hint: "how an ambulance gets in: gate, code, who meets it where"},
		dialog.Field{Label: "Defibrillator", Value: card.Defibrillator, Hint: "where it hangs; none: where the nearest one is"},
		dialog.Field{Label: "First aid kit", Value: card.FirstAid, Hint: "where it is, and who knows first aid"},
		dialog.Field{Label: "Contacts", Value: card.Contacts, Hint: "whom to call besides, with their numbers"},
		dialog.Field{Label: "Shown", Value: where, Options: []string{unseen, shown}, Hint: "everybody in the hall can read the boards"},
	)
}
