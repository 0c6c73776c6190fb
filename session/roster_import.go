package session

import (
	"fmt"
	"slices"

	"club/quadrille/session/roster"
)

// ImportRoster makes the people of a roster known to the club and expects them tonight. People
// whom the club already knows by name are brought up to date: the roster's group, level and wishes
// replace the older ones where the roster states them.
type ImportRoster struct {
	Entries []roster.Entry
	Arrived bool // everybody without a later arrival is here already

	// New names that are nearly those of others are refused with an [AlikeError], until it is said whether one
	// person or two are meant: of a line of the roster, or of all other lines.
	Lines map[int]SameName
	Same  SameName
}

// same is the answer about a line.
func (c ImportRoster) same(line int) SameName {
	if answer, ok := c.Lines[line]; ok {
		return answer
	}
	return c.Same
}

func (c ImportRoster) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	people, events, err := c.people(l.club, env)
	if err != nil {
		return nil, err
	}
	for i, e := range c.Entries {
		id := people[i].ID
		if _, out := n.OutForTonight(id); out {
			continue // no list brings somebody back who is out for tonight
		}
		now := env.Now.In(env.Zone)
		stay := Stay{}.Arriving(e.Arrive, n, now).Leaving(e.Leave, n, now)
		if err := stay.possible(); err != nil {
			return nil, fmt.Errorf("roster line %d: %s %w", e.Line, people[i].Name, err)
		}
		here, known := n.contains(id, Here, Resting), n.Attending(id)
		switch {
		case !here && (known == nil || known.State != Expected || !known.Stay.equal(stay)):
			events = append(events, PersonExpected{id, stay})
		case here && !e.Leave.IsZero():
			if stays := known.Leaving(e.Leave, n, now); !known.Stay.equal(stays) {
				events = append(events, PersonExpected{id, stays})
			}
		}
		if c.Arrived && !here && !stay.later(n, env.Now) {
			events = append(events, PersonArrived{id})
		}
	}
	if len(events) == 0 {
		return nil, fmt.Errorf("everybody on this roster is known and expected already")
	}
	return events, nil
}

// people matches the roster with the club: the person of each entry, and the events that make
// newcomers known and changes kept.
func (c ImportRoster) people(club *Club, env Env) ([]Person, []Event, error) {
	people, known, err := c.match(club, env)
	if err != nil {
		return nil, nil, err
	}
	ids, lines := map[string]PersonID{}, map[PersonID]int{}
	for i, e := range c.Entries {
		if first, twice := lines[people[i].ID]; twice {
			return nil, nil, fmt.Errorf("roster line %d: %s stands on line %d already: add a second name to tell them apart", e.Line, people[i].Name, first)
		}
		lines[people[i].ID] = e.Line
		ids[foldName(e.Name)] = people[i].ID
	}
	var events []Event
	for i, e := range c.Entries {
		p := people[i].clone()
		if e.Group != "" {
			p.Group = CleanText(e.Group, roster.MaxGroup)
		}
		if e.Level != 0 {
			p.Level = e.Level
		}
		for _, w := range e.PartnerWith {
			p.pairWith(Together{With: ids[foldName(w.Name)], Times: w.Times})
		}
		for _, other := range e.KeepApart {
			if id := ids[foldName(other)]; !slices.Contains(p.KeepApart, id) {
				p.KeepApart = append(p.KeepApart, id)
			}
		}
		for _, other := range e.NotPartner {
			if id := ids[foldName(other)]; !slices.Contains(p.NotPartner, id) {
				p.NotPartner = append(p.NotPartner, id)
			}
		}
		if len(e.Courts) > 0 {
			p.Courts = nil
		}
		for _, court := range e.Courts {
			p.Courts = append(p.Courts, cleanCourt(CourtID(court)))
		}
		switch {
		case !known[i]:
			events = append(events, PersonAdded{p})
		case !samePerson(people[i], p):
			events = append(events, PersonChanged{p})
		}
	}
	return people, events, nil
}

// match finds the person of each entry: known to the club by name, or by nearly the name if that is said to be
// one person, or else new.
func (c ImportRoster) match(club *Club, env Env) (people []Person, known []bool, err error) {
	people, known = make([]Person, len(c.Entries)), make([]bool, len(c.Entries))
	added := map[string]int{}
	var near *alikes
	var asked AlikeError
	for i, e := range c.Entries {
		name, err := CleanName(e.Name)
		if err != nil {
			return nil, nil, fmt.Errorf("roster line %d: %w", e.Line, err)
		}
		if people[i], known[i] = club.Named(name); known[i] {
			continue
		}
		if first, twice := added[keyOf(name)]; twice {
			return nil, nil, fmt.Errorf("roster line %d: %s stands on line %d already: add a second name to tell them apart", e.Line, name, first)
		}
		added[keyOf(name)] = e.Line
		people[i] = Person{ID: env.NewID(), Name: name}
		if near == nil {
			near = alikesOf(club)
		}
		switch pair, ok := near.of(name, e.Line); {
		case !ok || c.same(e.Line) == TwoAlike:
			near.add(name, e.Line)
		case c.same(e.Line) == AskSame:
			asked.Pairs = append(asked.Pairs, pair)
			near.add(name, e.Line)
		case pair.Other > 0:
			return nil, nil, fmt.Errorf("roster line %d: %s stands on line %d as %s already: take one of the two out", e.Line, name, pair.Other, pair.Known.Name)
		default:
			people[i], known[i] = pair.Known, true
		}
	}
	if len(asked.Pairs) > 0 {
		return nil, nil, &asked
	}
	return people, known, nil
}

// pairWith adds a wish, or replaces the one about the same person.
func (p *Person) pairWith(t Together) {
	i := slices.IndexFunc(p.Together, func(o Together) bool { return o.With == t.With })
	if i < 0 {
		p.Together = append(p.Together, t)
		return
	}
	p.Together[i] = t
}
