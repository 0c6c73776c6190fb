package session

import (
	"fmt"
	"slices"
)

// settlePeople decides about everybody of theirs who is not ours by identity but has the name of one
// of ours. What counts is how they are called in the end.
func (m *merger) settlePeople(same SameName) error {
	for _, a := range m.ours.club.Aliases {
		if err := m.contradicted(a); err != nil {
			return err
		}
		m.person[a.ID] = a.Of
	}
	var asked []string
	for _, p := range m.theirs.club.People {
		if _, ours := m.ours.club.Person(p.ID); ours || m.person[p.ID] != "" {
			continue
		}
		other, namesake := m.ours.club.called(p.Name)
		if !namesake {
			continue
		}
		// Who knows both knows them for two.
		_, two := m.theirs.club.Person(other.ID)
		switch {
		case two || same == TwoAlike:
			m.names[p.ID] = m.number(p.Name)
			m.result.Renamed = append(m.result.Renamed, m.names[p.ID])
		case same == OneAlike:
			m.person[p.ID] = other.ID
		default:
			asked = append(asked, p.Name)
		}
	}
	if len(asked) > 0 {
		slices.Sort(asked)
		return &SameNameError{asked}
	}
	return nil
}

// contradicted refuses a file in which somebody whom we took for another is somebody else beyond doubt: its games
// cannot be played by one person, and whom ours meant cannot be told.
func (m *merger) contradicted(a Alias) error {
	_, from := m.theirs.club.Person(a.ID)
	_, into := m.theirs.club.Person(a.Of)
	if !from || !into {
		return nil
	}
	if err := m.theirs.club.mayBeOne(a.ID, a.Of); err != nil {
		return fmt.Errorf("%s is %s here, and in the other file %w. Join this file to the other one instead: they stay two there",
			a.Name, m.ours.club.Name(a.Of), err)
	}
	return nil
}

// number gives a name that is free in both files: the old one with a number behind it.
func (m *merger) number(name string) string {
	for i := 2; ; i++ {
		numbered := CleanText(name, MaxName-5) + fmt.Sprintf(" (%d)", i)
		_, here := m.ours.club.Named(numbered)
		_, there := m.theirs.club.Named(numbered)
		if !here && !there && !slices.Contains(m.result.Renamed, numbered) {
			return numbered
		}
	}
}

// renamed is somebody of theirs under the name that they have here.
func (m *merger) renamed(p Person) Person {
	if name, ok := m.names[p.ID]; ok {
		p.Name = name
	}
	return p
}

// newPerson takes somebody of theirs whom we do not know. Somebody who was added by mistake comes
// with the undo that took that back, and is no new person.
func (m *merger) newPerson(e PersonAdded) (Event, bool) {
	_, joined := m.person[e.Person.ID]
	if _, ours := m.ours.club.Person(e.Person.ID); ours || joined {
		return nil, false
	}
	if _, stays := m.theirs.club.Person(e.Person.ID); stays {
		m.result.People++
	}
	m.taken[e.Person.ID] = true
	e.Person = m.renamed(e.Person)
	return e, true
}

// fromKnownNight takes nothing of a night that is here already but people who came to it only there, since
// later nights may need them, and that two people are one.
func (m *merger) fromKnownNight(e Event) (Event, bool) {
	switch e := e.(type) {
	case PersonAdded:
		if p, stays := m.theirs.club.Person(e.Person.ID); stays {
			return m.newPerson(PersonAdded{p})
		}
		if a, was := m.theirs.club.alias(e.Person.ID); was {
			return m.newPerson(PersonAdded{Person{ID: a.ID, Name: a.Name}})
		}
	case PeopleMerged:
		return m.mergedInKnownNight(e)
	case CardWritten:
		_, ours := m.ours.club.Cards[e.Venue]
		return e, !ours && m.theirs.club.Cards[e.Venue] == e.Card
	case VenueKept, UsualNightKept:
		return e, m.keepsVenue(e)
	}
	return nil, false
}

// mergedInKnownNight takes over that two of their people are one, if that stood in the end, unless it contradicts
// our nights: that is told.
func (m *merger) mergedInKnownNight(e PeopleMerged) (Event, bool) {
	a, stands := m.theirs.club.alias(e.From)
	if e.Into = a.Of; !stands || m.merged[e.From] || !m.mergesAnew(e) {
		return nil, false
	}
	for _, id := range []PersonID{e.From, e.Into} {
		if _, ours := m.ours.club.Person(m.one(id)); !ours && !m.taken[id] {
			return nil, false
		}
	}
	if !m.mayMerge(e) {
		return nil, false
	}
	m.merged[e.From] = true
	return e, true
}

// mayMerge tells whether two of their people who are one can be one here. That our nights contradict it is told.
func (m *merger) mayMerge(e PeopleMerged) bool {
	from, into := m.one(e.From), m.one(e.Into)
	_, known := m.ours.club.Person(from)
	_, both := m.ours.club.Person(into)
	if !known || !both {
		return true
	}
	if err := m.ours.club.mayBeOne(from, into); err != nil {
		m.result.Differ = append(m.result.Differ, fmt.Sprintf("the other file takes two people for one: %v", err))
		return false
	}
	return true
}

// keepsVenue tells whether what they keep of a venue, or as a usual night, is taken over: where we keep nothing of that
// name, and it stands with them in the end.
func (m *merger) keepsVenue(e Event) bool {
	ours, theirs := m.ours.club, m.theirs.club
	switch e := e.(type) {
	case VenueKept:
		i := theirs.venue(e.Venue.Name)
		return ours.venue(e.Venue.Name) < 0 && i >= 0 && slices.Equal(theirs.Venues[i].Courts, e.Venue.Courts)
	case UsualNightKept:
		i := theirs.usualNight(e.Night.Name)
		return ours.usualNight(e.Night.Name) < 0 && i >= 0 && theirs.UsualNights[i] == e.Night
	}
	return false
}

// one is their person here.
func (m *merger) one(id PersonID) PersonID {
	if ours, ok := m.person[id]; ok {
		return ours
	}
	return id
}

// mergesAnew tells whether two of their people who are one are still two here.
func (m *merger) mergesAnew(e PeopleMerged) bool { return m.one(e.From) != m.one(e.Into) }
