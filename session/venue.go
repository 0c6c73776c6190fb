package session

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/session/roster"
)

// Venue is a place where the club plays, as its courts are there from night to night.
type Venue struct {
	Name   string       `json:"name,omitempty"` // HomeVenue where the club has said of no venue
	Courts []VenueCourt `json:"courts"`         // in the order in which they are called
}

// VenueCourt is what stays of a court when a night is over.
type VenueCourt struct {
	ID   CourtID `json:"id"`
	Note string  `json:"note,omitempty"` // what is particular about it: "slow", "uneven at the net"
	Low  float64 `json:"low,omitempty"`  // of the levels for which it is kept, 0 for no lower end
	High float64 `json:"high,omitempty"` // 0 for no upper end
}

// venueCourt is what stays of a court.
func (c Court) venueCourt() VenueCourt { return VenueCourt{c.ID, c.Note, c.Low, c.High} }

// clean is the court as it is kept.
func (c VenueCourt) clean() VenueCourt {
	c.ID, c.Note = cleanCourt(c.ID), CleanText(c.Note, MaxCourtNote)
	return c
}

// mappedCourts are courts with each note changed.
func mappedCourts(courts []VenueCourt, change func(string) string) []VenueCourt {
	out := slices.Clone(courts)
	for i := range out {
		out[i].Note = change(out[i].Note)
	}
	return out
}

// validate refuses levels that there are not.
func (c VenueCourt) validate() error {
	if c.ID == "" {
		return fmt.Errorf("a court needs a number or a name")
	}
	return validLevels(c.Low, c.High)
}

// cleanCourt is the name of a court as it is kept.
func cleanCourt(id CourtID) CourtID {
	return CourtID(CleanText(string(id), roster.MaxCourt))
}

// checkCourts refuses courts that are too many, none, or the same twice.
func checkCourts(courts []VenueCourt) error {
	if len(courts) < 1 || len(courts) > MaxCourts {
		return fmt.Errorf("a night needs 1 to %d courts, not %d", MaxCourts, len(courts))
	}
	seen := map[string]bool{}
	for _, c := range courts {
		key := strings.ToLower(string(c.ID))
		if seen[key] {
			return fmt.Errorf("court %s is named twice", c.ID)
		}
		seen[key] = true
		if err := c.validate(); err != nil {
			return err
		}
	}
	return nil
}

// VenueKept keeps the courts of a venue for the nights to come.
type VenueKept struct {
	Venue Venue `json:"venue"`
}

func (e VenueKept) apply(f *fold, _ time.Time) error {
	v := Venue{Name: CleanText(e.Venue.Name, MaxName)}
	for _, c := range e.Venue.Courts {
		v.Courts = append(v.Courts, c.clean())
	}
	if err := checkCourts(v.Courts); err != nil {
		return err
	}
	f.club.Venues = replaced(f.club.Venues, f.club.venue(v.Name), v)
	return nil
}

// replaced is a list with something in the place i, or behind all where i is -1. The list itself stays: the state
// before keeps it.
func replaced[T any](list []T, i int, with T) []T {
	list = slices.Clone(list)
	if i < 0 {
		return append(list, with)
	}
	list[i] = with
	return list
}

// venue is where a venue stands among those whose courts are kept, -1 for none.
func (c *Club) venue(name string) int {
	return slices.IndexFunc(c.Venues, func(v Venue) bool { return sameName(v.Name, name) })
}

// VenueNames lists the venues that the club has said of, in the order of the alphabet: where a night was or is
// usual, whose courts are kept, or that have an emergency card.
func (c *Club) VenueNames() []string {
	var out []string
	add := func(name string) {
		if name != HomeVenue && !slices.ContainsFunc(out, func(s string) bool { return sameName(s, name) }) {
			out = append(out, name)
		}
	}
	for _, n := range slices.Backward(c.Nights) {
		add(n.Venue)
	}
	for _, v := range c.Venues {
		add(v.Name)
	}
	for _, u := range c.UsualNights {
		add(u.Venue)
	}
	cards := make([]string, 0, len(c.Cards))
	for name := range c.Cards {
		cards = append(cards, name)
	}
	slices.Sort(cards)
	for _, name := range cards {
		add(name)
	}
	slices.SortFunc(out, func(a, b string) int { return cmp.Compare(strings.ToLower(a), strings.ToLower(b)) })
	return out
}

// VenueNamed is a venue as the club writes it, whatever case somebody types it in; a venue that the club does not
// know yet is as it is typed.
func (c *Club) VenueNamed(text string) string {
	text = CleanText(text, MaxName)
	for _, name := range c.VenueNames() {
		if sameName(name, text) {
			return name
		}
	}
	return text
}

// CourtsAt are so many courts of a venue as they are kept, and numbered ones behind them where that is more than
// were kept.
func (c *Club) CourtsAt(venue string, count int) []VenueCourt {
	var out []VenueCourt
	if i := c.venue(venue); i >= 0 {
		kept := c.Venues[i].Courts
		out = slices.Clone(kept[:min(len(kept), max(0, count))])
	}
	for next := 1; len(out) < count; next++ {
		id := CourtID(fmt.Sprint(next))
		if !slices.ContainsFunc(out, func(v VenueCourt) bool { return v.ID == id }) {
			out = append(out, c.CourtAt(venue, id))
		}
	}
	return out
}

// CourtAt is a court of a venue as it is kept; one that is not is a court with nothing particular about it.
func (c *Club) CourtAt(venue string, id CourtID) VenueCourt {
	id = cleanCourt(id)
	if i := c.venue(venue); i >= 0 {
		for _, kept := range c.Venues[i].Courts {
			if strings.EqualFold(string(kept.ID), string(id)) {
				return kept
			}
		}
	}
	return VenueCourt{ID: id}
}

// Venue is where the newest night is or was: what concerns a venue concerns this one.
func (l *Ledger) Venue() string {
	if n := l.club.Night(); n != nil {
		return n.Venue
	}
	return HomeVenue
}

// Card is the emergency card of the venue of the newest night, which is empty where none was written for it: the
// card of another venue would send help there.
func (l *Ledger) Card() EmergencyCard { return l.club.Card(l.Venue()) }

// courtsNow are the night's open courts as they stand.
func (n *Night) courtsNow() []VenueCourt {
	var out []VenueCourt
	for _, c := range n.Courts {
		if c.Open {
			out = append(out, c.venueCourt())
		}
	}
	return out
}

// courtsUnusual says in words what is another way with tonight's courts than is kept for their venue. How many are
// open is told by the number of courts.
func (c *Club) courtsUnusual(n *Night) []string {
	var out []string
	courts := n.courtsNow()
	asMany := c.Usual != nil && c.Usual.Courts == len(courts) // else the number says that they are others
	for i, usual := range c.CourtsAt(n.Venue, len(courts)) {
		if now := courts[i]; asMany && now.ID != usual.ID {
			out = append(out, fmt.Sprintf("court %s (usually %s)", now.ID, usual.ID))
		}
	}
	for _, now := range courts {
		kept := c.CourtAt(n.Venue, now.ID)
		if now.Note != kept.Note {
			out = append(out, fmt.Sprintf("court %s %s (usually %s)", now.ID, noteWords(now.Note), noteWords(kept.Note)))
		}
		if now.Low != kept.Low || now.High != kept.High {
			out = append(out, fmt.Sprintf("court %s for %s (usually %s)", now.ID, levelRange(now.Low, now.High), levelRange(kept.Low, kept.High)))
		}
	}
	return out
}
