package session

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
)

// CheckIn notes that somebody whom the club knows is here and wants to play.
type CheckIn struct{ Person PersonID }

func (c CheckIn) decide(l *Ledger, env Env) ([]Event, error) {
	return CheckInAs{Person: c.Person}.decide(l, env)
}

// CheckInAs is CheckIn that also says of which group the person is, for mixed teams. Without a group it
// leaves the one that the club knows of.
type CheckInAs struct {
	Person PersonID
	Group  string
}

func (c CheckInAs) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	p, ok := l.club.Person(c.Person)
	if !ok {
		return nil, fmt.Errorf("the club does not know this person: add a guest")
	}
	var events []Event
	if g := CleanText(c.Group, 12); g != "" && g != p.Group {
		p = p.clone()
		p.Group = g
		events = append(events, PersonChanged{p})
	}
	if err := n.barred(l.club, c.Person); err != nil {
		return nil, err
	}
	switch {
	case n.contains(c.Person, Here):
		return nil, fmt.Errorf("%s is checked in already", p.Name)
	case n.contains(c.Person, Resting):
		return append(events, PersonReturned{c.Person}), nil
	}
	return append(events, PersonArrived{c.Person}), nil
}

// AddGuest makes somebody known to the club and checks that person in. A guest who is called nearly as somebody
// of the club is refused with an [AlikeError], unless it is sure that this is somebody else.
type AddGuest struct {
	Name  string
	Group string
	Level float64
	Sure  bool
}

func (c AddGuest) decide(l *Ledger, env Env) ([]Event, error) {
	if _, err := openNight(l); err != nil {
		return nil, err
	}
	if name := CleanText(c.Name, MaxName); name != "" && !strings.ContainsFunc(name, unicode.IsLetter) {
		return nil, fmt.Errorf("%q is no name: a guest's name has letters; scores are typed on the courts", name)
	}
	p, err := newPerson(l.club, env, c.Name, c.Group, c.Level)
	if err != nil {
		return nil, err
	}
	if near := l.club.Alike(p.Name); len(near) > 0 && !c.Sure {
		return nil, &AlikeError{[]Alike{{Name: p.Name, Known: near[0]}}}
	}
	return []Event{PersonAdded{p}, PersonArrived{p.ID}}, nil
}

// newPerson builds a person whom the club does not know yet.
func newPerson(club *Club, env Env, name, group string, level float64) (Person, error) {
	name, err := CleanName(name)
	if err != nil {
		return Person{}, err
	}
	if p, ok := club.Named(name); ok {
		return Person{}, fmt.Errorf("the club already has a %s: check that person in, or add a second name to tell them apart", p.Name)
	}
	if level < 0 || level > 10 {
		return Person{}, fmt.Errorf("a level lies between 0 and 10, not %g", level)
	}
	return Person{ID: env.NewID(), Name: name, Group: CleanText(group, 12), Level: level}, nil
}

// ChangePerson replaces what the club knows of somebody.
type ChangePerson struct{ Person Person }

func (c ChangePerson) decide(l *Ledger, _ Env) ([]Event, error) {
	p := c.Person.clone()
	old, ok := l.club.Person(p.ID)
	if !ok {
		return nil, fmt.Errorf("the club does not know this person")
	}
	name, err := CleanName(p.Name)
	if err != nil {
		return nil, err
	}
	if other, ok := l.club.Named(name); ok && other.ID != p.ID {
		return nil, fmt.Errorf("the club already has a %s: add a second name to tell them apart", other.Name)
	}
	if p.Level < 0 || p.Level > 10 {
		return nil, fmt.Errorf("a level lies between 0 and 10, not %g", p.Level)
	}
	for i := range p.Courts {
		if p.Courts[i] = cleanCourt(p.Courts[i]); p.Courts[i] == "" {
			return nil, fmt.Errorf("a court needs a number or a name")
		}
	}
	p.Name, p.Group, p.Shown = name, CleanText(p.Group, 12), CleanText(p.Shown, MaxName)
	if samePerson(old, p) {
		return nil, fmt.Errorf("nothing is different")
	}
	return []Event{PersonChanged{p}}, nil
}

func samePerson(a, b Person) bool {
	return a.Name == b.Name && a.Group == b.Group && a.Level == b.Level &&
		slices.Equal(a.Together, b.Together) && slices.Equal(a.KeepApart, b.KeepApart) && slices.Equal(a.NotPartner, b.NotPartner) && slices.Equal(a.Courts, b.Courts) &&
		a.Shown == b.Shown && a.Hidden == b.Hidden
}

// Rest takes somebody out of the rotation who stays in the hall.
type Rest struct{ Person PersonID }

func (c Rest) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if !n.contains(c.Person, Here) {
		return nil, fmt.Errorf("%s is not in the rotation", l.club.Name(c.Person))
	}
	return []Event{PersonRested(c)}, nil
}

// Leave notes that somebody goes home. Somebody who plays is out of the rotation after the game.
type Leave struct{ Person PersonID }

func (c Leave) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if !n.contains(c.Person, Here, Resting, Expected) {
		return nil, fmt.Errorf("%s is not here", l.club.Name(c.Person))
	}
	return []Event{PersonLeft(c)}, nil
}

// Expect announces somebody for tonight, with the times that are known.
type Expect struct {
	Person      PersonID
	Due, Leaves time.Time
	From, Last  int // rounds, see [Stay]
}

func (c Expect) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if err := n.barred(l.club, c.Person); err != nil {
		return nil, err
	}
	stay := Stay{c.Due.UTC(), c.Leaves.UTC(), c.From, c.Last}
	if err := stay.possible(); err != nil {
		return nil, fmt.Errorf("%s %w", l.club.Name(c.Person), err)
	}
	if n.contains(c.Person, Here, Resting) && stay.later(n, env.Now) {
		return nil, fmt.Errorf("%s is here already", l.club.Name(c.Person))
	}
	return []Event{PersonExpected{c.Person, stay}}, nil
}
