package rotation

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/jsontext"
)

// The most that a document may hold. They keep a broken file from filling the memory.
const (
	MaxPeople = 2000
	MaxCourts = 500
	MaxRounds = 500
	maxBytes  = 64 << 20
)

// Read reads a document. Only the rounds are required: without a list of players or courts these
// are the ones that the rounds name, and in a round without a list of those who sit out, everybody
// who is there and does not play does. The certificate in the document is not believed; it is left
// out. Names lose control characters and escape sequences.
func Read(r io.Reader) (Document, error) {
	var file struct {
		Document
		Certificate json.RawMessage `json:"certificate"`
	}
	in := json.NewDecoder(io.LimitReader(r, maxBytes))
	if err := in.Decode(&file); err != nil {
		if errors.Is(err, io.EOF) {
			return Document{}, fmt.Errorf("the rotation is empty: it must be JSON as \"quadrille plan --json\" prints it")
		}
		return Document{}, fmt.Errorf("the rotation is no JSON as \"quadrille plan --json\" prints it: %s", jsontext.Why(err))
	}
	if _, err := in.Token(); !errors.Is(err, io.EOF) {
		return Document{}, fmt.Errorf("something follows the rotation: one file holds one rotation")
	}
	d := file.Document
	d.clean()
	return d, d.complete()
}

// clean makes all names fit for a screen.
func (d *Document) clean() {
	one := func(name string) string { return session.CleanText(name, session.MaxName) }
	all := func(names []string) {
		for i, name := range names {
			names[i] = one(name)
		}
	}
	all(d.Players)
	all(d.Courts)
	for i := range d.Rounds {
		all(d.Rounds[i].Out)
		for j := range d.Rounds[i].Games {
			g := &d.Rounds[i].Games[j]
			g.Court = one(g.Court)
			all(g.A)
			all(g.B)
		}
	}
	for i := range d.Roster {
		p := &d.Roster[i]
		p.Name, p.Group = one(p.Name), one(p.Group)
		all(p.KeepApart)
		all(p.NotPartner)
		all(p.Courts)
		for j := range p.PartnerWith {
			p.PartnerWith[j].Name = one(p.PartnerWith[j].Name)
		}
	}
}

// complete fills in what the rounds tell, and checks the size and that names tell people apart.
func (d *Document) complete() error {
	if len(d.Rounds) == 0 {
		return fmt.Errorf("the rotation has no rounds")
	}
	for i := range d.Rounds {
		if d.Rounds[i].Round == 0 {
			d.Rounds[i].Round = i + 1
		}
		if d.Rounds[i].Round != i+1 {
			return fmt.Errorf("round %d stands where round %d belongs", d.Rounds[i].Round, i+1)
		}
	}
	if len(d.Players) == 0 {
		d.Players = d.named(func(r Round) []string {
			var names []string
			for _, g := range r.Games {
				names = append(append(names, g.A...), g.B...)
			}
			return append(names, r.Out...)
		})
	}
	if len(d.Courts) == 0 {
		d.Courts = d.named(func(r Round) (names []string) {
			for _, g := range r.Games {
				names = append(names, g.Court)
			}
			return names
		})
	}
	switch {
	case len(d.Players) > MaxPeople:
		return fmt.Errorf("the rotation has more than %d people", MaxPeople)
	case len(d.Courts) > MaxCourts:
		return fmt.Errorf("the rotation has more than %d courts", MaxCourts)
	case len(d.Rounds) > MaxRounds:
		return fmt.Errorf("the rotation has more than %d rounds", MaxRounds)
	}
	if twice := firstTwice(d.Players); twice != "" {
		return fmt.Errorf("two players are called %s: add a second name to tell them apart", twice)
	}
	if twice := firstTwice(d.Courts); twice != "" {
		return fmt.Errorf("two courts are called %s", twice)
	}
	return nil
}

// named collects what the rounds name, sorted.
func (d *Document) named(of func(Round) []string) []string {
	var names []string
	for _, r := range d.Rounds {
		names = append(names, of(r)...)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// firstTwice finds a name that a list has twice, "" if it has none.
func firstTwice(names []string) string {
	seen := make(map[string]bool, len(names))
	for _, name := range names {
		if seen[name] {
			return name
		}
		seen[name] = true
	}
	return ""
}
