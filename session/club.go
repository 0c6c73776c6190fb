package session

import "slices"

// Club is all that a club file knows: its people and its nights.
type Club struct {
	People []Person `json:"people"` // in the order in which they joined
	Nights []*Night `json:"nights"` // in order; only the last can be open

	Usual *Usual `json:"usual,omitempty"` // nil before the first night; what it points to never changes

	Aliases []Alias `json:"aliases,omitempty"` // identities that turned out to be others, in the order in which they did

	Naming Naming `json:"naming,omitempty"` // how people are called in the hall
	Best   int    `json:"best,omitempty"`   // so many nights of each person count for the league, 0 for all

	NoReminders bool `json:"no_reminders,omitempty"` // nobody wants to be reminded of usual caution when a night is opened

	Cards map[string]EmergencyCard `json:"cards,omitempty"` // by venue, see Card; never changed, only replaced

	Venues      []Venue      `json:"venues,omitempty"`       // whose courts are kept; never changed, only replaced, as are the usual nights
	UsualNights []UsualNight `json:"usual_nights,omitempty"` // in the order in which they were first kept

	lookup *lookup // of the people, nil where they must be searched for
	own    bool    // no other state has this lookup
}

// Person finds somebody by identity.
func (c *Club) Person(id PersonID) (Person, bool) {
	if i := c.number(id); i >= 0 {
		return c.People[i], true
	}
	return Person{}, false
}

// number is where somebody stands among the people, -1 for somebody whom the club does not know.
func (c *Club) number(id PersonID) int {
	if !c.lookup.fit(len(c.People)) {
		searched(len(c.People))
		return slices.IndexFunc(c.People, func(p Person) bool { return p.ID == id })
	}
	if i, ok := c.lookup.byID[id]; ok {
		return i
	}
	return -1
}

// add takes somebody in.
func (c *Club) add(p Person) {
	if !c.own || !c.lookup.fit(len(c.People)) {
		c.index()
	}
	c.People = append(c.People, p)
	c.lookup.add(p.ID, p.Name, len(c.People)-1)
}

// replace puts in the place of somebody the same person as the club knows that person now.
func (c *Club) replace(i int, p Person) {
	renamed := c.People[i].Name != p.Name
	if c.People[i] = p; renamed {
		c.index()
	}
}

// index notes where everybody stands.
func (c *Club) index() {
	searched(len(c.People))
	c.lookup, c.own = lookupOf(c.People), true
}

// Named finds somebody by name, without regard to case: by the present one, or else by one from before two people
// turned out to be one.
func (c *Club) Named(name string) (Person, bool) {
	if p, ok := c.called(name); ok {
		return p, true
	}
	return c.once(name)
}

// called finds somebody by the present name.
func (c *Club) called(name string) (Person, bool) {
	i := -1
	if c.lookup.fit(len(c.People)) {
		if at, ok := c.lookup.byName[keyOf(name)]; ok {
			i = at
		}
	} else {
		searched(len(c.People))
		i = slices.IndexFunc(c.People, func(p Person) bool { return sameName(p.Name, name) })
	}
	if i < 0 {
		return Person{}, false
	}
	return c.People[i], true
}

// once finds somebody who was known by another name too, before two people turned out to be one.
func (c *Club) once(name string) (Person, bool) {
	for _, a := range c.Aliases {
		if sameName(a.Name, name) {
			return c.Person(a.Of)
		}
	}
	return Person{}, false
}

// Name is the person's name, or a neutral label for somebody whom the club no longer knows.
func (c *Club) Name(id PersonID) string {
	if p, ok := c.Person(id); ok {
		return p.Name
	}
	if a, ok := c.alias(id); ok {
		return a.Name
	}
	return "somebody"
}

// Night is the newest night, nil before the first.
func (c *Club) Night() *Night {
	if len(c.Nights) == 0 {
		return nil
	}
	return c.Nights[len(c.Nights)-1]
}

// OpenNight is the night that is going on, nil when none is.
func (c *Club) OpenNight() *Night {
	if n := c.Night(); n != nil && n.IsOpen() {
		return n
	}
	return nil
}

// clone copies what an event may change: the list of people and the newest night. Nights before
// it are closed for good and shared.
func (c *Club) clone() *Club {
	people := slices.Clone(c.People)
	for i, p := range people {
		people[i] = p.clone()
	}
	nights := slices.Clone(c.Nights)
	if len(nights) > 0 {
		nights[len(nights)-1] = nights[len(nights)-1].clone()
	}
	return &Club{People: people, Nights: nights, Usual: c.Usual, Aliases: c.Aliases, Naming: c.Naming, Best: c.Best, NoReminders: c.NoReminders, Cards: c.Cards, Venues: c.Venues, UsualNights: c.UsualNights, lookup: c.lookup}
}
