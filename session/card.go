package session

import (
	"fmt"
	"maps"
	"time"
)

// EmergencyCard is what somebody who calls for help must know of a venue. It is written once and kept with the club.
type EmergencyCard struct {
	Address       string `json:"address,omitempty"`       // as one says it to the emergency services
	Access        string `json:"access,omitempty"`        // how an ambulance gets in
	Defibrillator string `json:"defibrillator,omitempty"` // where it hangs
	FirstAid      string `json:"first_aid,omitempty"`     // where the kit is, and who knows first aid
	Contacts      string `json:"contacts,omitempty"`      // whom to call besides, with their numbers
	OnBoard       bool   `json:"on_board,omitempty"`      // the boards in the hall show it too
}

// HomeVenue is the key of the venue of a club that has said of no other.
const HomeVenue = ""

// MaxCardText is the longest text of a line of the card, in terminal cells.
const MaxCardText = 200

// CardLine is a line of the card with what it is about.
type CardLine struct{ Label, Text string }

// Lines are all lines of the card in the order in which they are needed, those without a text too.
func (c EmergencyCard) Lines() []CardLine {
	return []CardLine{
		{"Address", c.Address},
		{"Access", c.Access},
		{"Defibrillator", c.Defibrillator},
		{"First aid kit", c.FirstAid},
		{"Contacts", c.Contacts},
	}
}

// Written lists the lines that have a text.
func (c EmergencyCard) Written() []CardLine {
	var out []CardLine
	for _, l := range c.Lines() {
		if l.Text != "" {
			out = append(out, l)
		}
	}
	return out
}

// mapped is the card with each of its texts changed.
func (c EmergencyCard) mapped(change func(string) string) EmergencyCard {
	for _, text := range []*string{&c.Address, &c.Access, &c.Defibrillator, &c.FirstAid, &c.Contacts} {
		*text = change(*text)
	}
	return c
}

// clean is the card as it is kept.
func (c EmergencyCard) clean() EmergencyCard {
	return c.mapped(func(text string) string { return CleanText(text, MaxCardText) })
}

// Card is the emergency card of a venue, empty where none was written.
func (c *Club) Card(venue string) EmergencyCard { return c.Cards[venue] }

// CardWritten replaces the emergency card of a venue.
type CardWritten struct {
	Venue string        `json:"venue,omitempty"`
	Card  EmergencyCard `json:"card"`
}

func (e CardWritten) apply(f *fold, _ time.Time) error {
	cards := maps.Clone(f.club.Cards) // the state before keeps its own
	if cards == nil {
		cards = map[string]EmergencyCard{}
	}
	cards[CleanText(e.Venue, MaxName)] = e.Card.clean()
	f.club.Cards = cards
	return nil
}

// WriteCard replaces the emergency card of a venue, [HomeVenue] for the club's own. It needs no night.
type WriteCard struct {
	Venue string
	Card  EmergencyCard
}

func (c WriteCard) decide(l *Ledger, _ Env) ([]Event, error) {
	e := CardWritten{Venue: l.club.VenueNamed(c.Venue), Card: c.Card}
	for _, line := range c.Card.Lines() {
		if CleanText(line.Text, MaxCardText) != CleanText(line.Text, MaxCardText+1) {
			return nil, fmt.Errorf("%s: a line of the card has at most %d characters", line.Label, MaxCardText)
		}
	}
	if e.Card = e.Card.clean(); e.Card == l.club.Card(e.Venue) {
		return nil, fmt.Errorf("nothing is different on the emergency card")
	}
	return []Event{e}, nil
}
