package session

import (
	"fmt"
	"slices"
	"time"
)

// Alias is an identity that turned out to be that of somebody else, with the name that it had. Files of other
// laptops may still use it, and people may still type the name.
type Alias struct {
	ID   PersonID `json:"id"`
	Name string   `json:"name"`
	Of   PersonID `json:"of"`
}

// alias finds the alias of an identity.
func (c *Club) alias(id PersonID) (Alias, bool) {
	i := slices.IndexFunc(c.Aliases, func(a Alias) bool { return a.ID == id })
	if i < 0 {
		return Alias{}, false
	}
	return c.Aliases[i], true
}

// PeopleMerged makes one person of two: what From played and wished is Into's from then on, in all nights.
type PeopleMerged struct {
	From PersonID `json:"from"`
	Into PersonID `json:"into"`
}

func (e PeopleMerged) apply(f *fold, at time.Time) error {
	if err := f.club.mayBeOne(e.From, e.Into); err != nil {
		return err
	}
	for i, n := range f.club.Nights {
		if n.knows(e.From) {
			f.club.Nights[i] = n.merged(e.From, e.Into, at)
		}
	}
	f.club.mergePeople(e.From, e.Into)
	if n := f.club.OpenNight(); n != nil {
		n.Plan = nil
	}
	return nil
}

// mayBeOne says why two people cannot be one: somebody cannot be in one game twice, or in two games of a round.
func (c *Club) mayBeOne(from, into PersonID) error {
	p, ok := c.Person(from)
	q, known := c.Person(into)
	switch {
	case !ok || !known:
		return fmt.Errorf("the club does not know both of these people")
	case from == into:
		return fmt.Errorf("that is %s already", p.Name)
	}
	for _, n := range c.Nights {
		if !n.knows(from) || !n.knows(into) {
			continue
		}
		if why := n.twoPeople(from, into); why != "" {
			return fmt.Errorf("%s and %s are two people: %s", p.Name, q.Name, why)
		}
	}
	return nil
}

// knows tells whether somebody has a part in the night.
func (n *Night) knows(id PersonID) bool { return n.Attending(id) != nil }

// twoPeople says what shows that two people of the night are not one, empty for nothing.
func (n *Night) twoPeople(a, b PersonID) string {
	rounds, playing := map[int]PersonID{}, PersonID("")
	for i := range n.Games {
		g := &n.Games[i]
		withA, withB := g.had(a), g.had(b)
		if withA && withB {
			return fmt.Sprintf("both were in one game on court %s of night %d", g.Court, n.ID)
		}
		if !withA && !withB {
			continue
		}
		who := a
		if withB {
			who = b
		}
		if other := rounds[g.Round]; g.Round > 0 && other != "" && other != who {
			return fmt.Sprintf("both played in round %d of night %d", g.Round, n.ID)
		}
		rounds[g.Round] = who
		if !g.Running() || !g.Has(who) {
			continue
		}
		if playing != "" && playing != who {
			return "both are on a court now"
		}
		playing = who
	}
	return ""
}

// had tells whether somebody was in a game at any time.
func (g *Game) had(id PersonID) bool {
	return g.Has(id) || slices.Contains(g.Replaced, id) ||
		slices.ContainsFunc(g.Earlier, func(l Lineup) bool { return l.A.Has(id) || l.B.Has(id) })
}

// merged is a night in which one of two people did what both did.
func (n *Night) merged(from, into PersonID, at time.Time) *Night {
	c := n.clone()
	one := func(id PersonID) PersonID {
		if id == from {
			return into
		}
		return id
	}
	side := func(s Team) Team { return Team{one(s[0]), one(s[1])} }
	for i := range c.Games {
		g := &c.Games[i]
		g.A, g.B = side(g.A), side(g.B)
		g.Replaced = eachOf(g.Replaced, one)
		g.Earlier = eachOf(g.Earlier, func(l Lineup) Lineup {
			l.A, l.B = side(l.A), side(l.B)
			return l
		})
	}
	for i := range c.Rounds {
		c.Rounds[i].Out = c.sittingOut(c.Rounds[i], one)
	}
	c.Lots = firstOfEach(eachOf(c.Lots, side))
	c.Plan = nil
	c.mergePins(side)
	c.Injuries = eachOf(c.Injuries, func(x Injury) Injury {
		x.Person = one(x.Person)
		return x
	})
	c.mergeRoll(from, into, at)
	if _, out := c.OutForTonight(into); out && c.IsOpen() {
		c.sendOut(c.Attending(into), at)
	}
	return c
}

// eachOf is a copy of a list with each of its elements changed.
func eachOf[T any](list []T, change func(T) T) []T {
	out := slices.Clone(list)
	for i := range out {
		out[i] = change(out[i])
	}
	return out
}

// firstOfEach drops what stands in a list before.
func firstOfEach[T comparable](list []T) []T {
	var out []T
	for _, x := range list {
		if !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}

// sittingOut are who sat a round out when two people are one: nobody twice, and nobody who played in it.
func (n *Night) sittingOut(r CalledRound, one func(PersonID) PersonID) []PersonID {
	var out []PersonID
	for _, id := range r.Out {
		id = one(id)
		plays := slices.ContainsFunc(r.Games, func(g GameID) bool { return n.Game(g).Has(id) })
		if !plays && !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// presences are in the order in which one of two people's parts in a night is taken for both.
var presences = []Presence{Here, Resting, Expected, Gone}

// mergeRoll makes one part in the night of two: the one that is more present, since the first arrival. Who played
// waits since the last game, whoever of the two it was.
func (n *Night) mergeRoll(from, into PersonID, at time.Time) {
	i := slices.IndexFunc(n.Roll, func(a Attendance) bool { return a.Person == from })
	j := slices.IndexFunc(n.Roll, func(a Attendance) bool { return a.Person == into })
	n.lookup, n.own = nil, false
	if j < 0 {
		n.Roll[i].Person = into
		return
	}
	a, b := n.Roll[i], n.Roll[j]
	kept := b
	if slices.Index(presences, a.State) < slices.Index(presences, b.State) {
		kept = a
	}
	kept.Person = into
	if a.Arrived.IsZero() || !b.Arrived.IsZero() && b.Arrived.Before(a.Arrived) {
		a.Arrived = b.Arrived
	}
	kept.Arrived = a.Arrived
	kept.Present = max(a.PresentFor(at), b.PresentFor(at))
	if kept.State == Here {
		kept.Since = at
	}
	if kept.Stay == (Stay{}) {
		kept.Stay = a.Stay
	}
	n.Roll[j] = kept
	n.Roll = slices.Delete(n.Roll, i, i+1)
	n.mergeWait(a, b)
}

// mergeWait says since when somebody waits who was two on the bench.
func (n *Night) mergeWait(a, b Attendance) {
	kept := n.Attending(b.Person)
	switch {
	case kept.State != Here || n.Playing(b.Person) != nil:
		kept.unwait()
		return
	case a.Turn == 0 || b.Turn == 0:
		kept.Waiting, kept.Turn = a.Waiting, a.Turn
		if a.Turn == 0 {
			kept.Waiting, kept.Turn = b.Waiting, b.Turn
		}
		return
	}
	first, last := a, b
	if b.Turn < a.Turn {
		first, last = b, a
	}
	if n.GamesOf(b.Person) > 0 {
		first = last
	}
	kept.Waiting, kept.Turn = first.Waiting, first.Turn
}

// mergePeople takes one person out of the list and leaves an alias. What the other does not say of group, level and
// wishes is taken over, and whoever wishes for one wishes for the other.
func (c *Club) mergePeople(from, into PersonID) {
	i := c.number(from)
	gone := c.People[i]
	c.Aliases = eachOf(c.Aliases, func(a Alias) Alias {
		if a.Of == from {
			a.Of = into
		}
		return a
	})
	c.Aliases = append(c.Aliases, Alias{from, gone.Name, into})
	c.People = slices.Delete(c.People, i, i+1)
	for k := range c.People {
		if p := &c.People[k]; p.ID == into {
			p.take(gone)
		} else {
			p.wishFor(from, into)
		}
	}
	c.index()
}

// take takes over what p does not say and another, who turned out to be p, does.
func (p *Person) take(other Person) {
	if p.Group == "" {
		p.Group = other.Group
	}
	if p.Level == 0 {
		p.Level = other.Level
	}
	if p.Shown == "" {
		p.Shown = other.Shown
	}
	p.Hidden = p.Hidden || other.Hidden
	p.wishFor(other.ID, p.ID)
	for _, t := range other.Together {
		if t.With != p.ID && !p.wishes(t.With) {
			p.Together = append(p.Together, t)
		}
	}
	for _, id := range other.KeepApart {
		if id != p.ID && !p.wishes(id) {
			p.KeepApart = append(p.KeepApart, id)
		}
	}
	if len(p.Courts) == 0 {
		p.Courts = slices.Clone(other.Courts)
	}
	for _, id := range other.NotPartner {
		if id != p.ID && !p.wishes(id) {
			p.NotPartner = append(p.NotPartner, id)
		}
	}
}

// wishes tells whether p wishes to be with or apart from somebody.
func (p *Person) wishes(id PersonID) bool {
	return slices.Contains(p.KeepApart, id) || slices.Contains(p.NotPartner, id) || slices.ContainsFunc(p.Together, func(t Together) bool { return t.With == id })
}

// wishFor puts one person in the place of another in the wishes of p, and drops what is said twice or of p
// itself.
func (p *Person) wishFor(from, into PersonID) {
	if !p.wishes(from) {
		return
	}
	together, apart, noTeam := p.Together, p.KeepApart, p.NotPartner
	p.Together, p.KeepApart, p.NotPartner = nil, nil, nil
	one := func(id PersonID) PersonID {
		if id == from {
			return into
		}
		return id
	}
	for _, t := range together {
		if t.With = one(t.With); t.With != p.ID && !p.wishes(t.With) {
			p.Together = append(p.Together, t)
		}
	}
	for _, id := range apart {
		if id = one(id); id != p.ID && !p.wishes(id) {
			p.KeepApart = append(p.KeepApart, id)
		}
	}
	for _, id := range noTeam {
		if id = one(id); id != p.ID && !p.wishes(id) {
			p.NotPartner = append(p.NotPartner, id)
		}
	}
}

// MergePeople says that two people of the club are one: From was taken for somebody else and is Into. Their
// games count for one, in all nights.
type MergePeople struct{ From, Into PersonID }

func (c MergePeople) decide(l *Ledger, _ Env) ([]Event, error) {
	if err := l.club.mayBeOne(c.From, c.Into); err != nil {
		return nil, err
	}
	return []Event{PeopleMerged(c)}, nil
}
