package session

import "slices"

// PersonID identifies a person of the club across nights and across laptops.
type PersonID string

// Person is somebody the club knows.
type Person struct {
	ID         PersonID   `json:"id"`
	Name       string     `json:"name"`            // cleaned by CleanName, unique within the club
	Group      string     `json:"group,omitempty"` // for mixed rotations, a word of the club's choice
	Level      float64    `json:"level,omitempty"` // the club's own level, 0 when not stated
	Together   []Together `json:"together,omitempty"`
	KeepApart  []PersonID `json:"keep_apart,omitempty"`  // never on one court with these
	NotPartner []PersonID `json:"not_partner,omitempty"` // never in one team with these, who may be opponents
	Courts     []CourtID  `json:"courts,omitempty"`      // plays only on these, where the night has one of them; empty for any
	Shown      string     `json:"shown,omitempty"`       // the name that the person chose for the hall to see, see AsChosen
	Hidden     bool       `json:"hidden,omitempty"`      // the hall does not see this person's name
}

// Together asks that a person partners another.
type Together struct {
	With  PersonID `json:"with"`
	Times int      `json:"times,omitempty"` // games of a night, 0 for all of them
}

// clone copies p so that neither shares memory with the other.
func (p Person) clone() Person {
	p.Together = slices.Clone(p.Together)
	p.KeepApart = slices.Clone(p.KeepApart)
	p.NotPartner = slices.Clone(p.NotPartner)
	p.Courts = slices.Clone(p.Courts)
	return p
}

// unseen is p without how the hall sees the person.
func (p Person) unseen() Person {
	p.Shown, p.Hidden = "", false
	return p
}
