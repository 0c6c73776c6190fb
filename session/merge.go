package session

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// SameName says what to do with somebody who has the name of one of our people but another
// identity.
type SameName uint8

// The answers to the question whether two people of one name are one person.
const (
	AskSame  SameName = iota // refuse, and name them
	OneAlike                 // they are one person
	TwoAlike                 // they are two: theirs gets a number behind the name
)

// Merged says what joining another log brought.
type Merged struct {
	Nights  int      // nights that were not here
	Known   int      // nights that were here already and were left alone
	People  int      // people who were not here
	Records int      // records appended
	Renamed []string // people of another laptop who got a number behind their name
}

// SameNameError names people of the other log who have the name of one of ours.
type SameNameError struct{ Names []string }

func (e *SameNameError) Error() string {
	return fmt.Sprintf("both files know %s, under different identities: say whether that is one person or two", strings.Join(e.Names, ", "))
}

// Merge works out which records of another log to append to ours, renumbered so that they follow
// it. People are joined by identity. Nights that are here already stay as they are, so merging the
// same log twice changes nothing. Into an empty log everything is taken as it is.
func Merge(l *Ledger, theirs []Record, same SameName) ([]Record, Merged, error) {
	if l.Night() != nil {
		return nil, Merged{}, fmt.Errorf("a night is open here: close it before joining another file")
	}
	m := merger{
		ours: l, same: same, seq: l.last, nights: NightID(len(l.club.Nights)),
		night: map[NightID]NightID{}, known: map[NightID]bool{}, action: map[uint64]uint64{}, person: map[PersonID]PersonID{},
	}
	if err := m.read(theirs); err != nil {
		return nil, Merged{}, err
	}
	for _, e := range m.entries {
		if err := m.take(e); err != nil {
			return nil, Merged{}, err
		}
	}
	m.result.Records = len(m.out)
	return m.out, m.result, nil
}

// merger renumbers records of one log to follow another.
type merger struct {
	ours    *Ledger
	same    SameName
	entries []mergeEntry

	seq    uint64
	nights NightID
	night  map[NightID]NightID   // their number of a night, and ours
	known  map[NightID]bool      // their numbers of nights that are here already
	action map[uint64]uint64     // their actions, and ours
	person map[PersonID]PersonID // their people who are ours under another identity
	out    []Record
	result Merged
}

type mergeEntry struct {
	record Record
	event  Event
}

// read decodes the other log and finds which nights are known here and which people have a
// namesake.
func (m *merger) read(theirs []Record) error {
	var asked []string
	for _, r := range theirs {
		e, err := Decode(r)
		if err != nil {
			return err
		}
		m.entries = append(m.entries, mergeEntry{r, e})
		switch e := e.(type) {
		case NightOpened:
			m.known[r.Night] = slices.ContainsFunc(m.ours.club.Nights, func(n *Night) bool { return n.UID == e.ID && e.ID != "" })
			if m.known[r.Night] {
				m.result.Known++
			}
		case PersonAdded:
			if name := m.namesake(e.Person); name != "" {
				asked = append(asked, name)
			}
		}
	}
	if len(asked) > 0 {
		slices.Sort(asked)
		return &SameNameError{slices.Compact(asked)}
	}
	return nil
}

// namesake settles somebody of theirs who is not ours by identity but has the name of one of ours.
// It gives the name if that is still to be asked.
func (m *merger) namesake(p Person) string {
	if _, ours := m.ours.club.Person(p.ID); ours {
		return ""
	}
	other, ok := m.ours.club.Named(p.Name)
	switch {
	case !ok || m.same == TwoAlike:
		return ""
	case m.same == OneAlike:
		m.person[p.ID] = other.ID
		return ""
	}
	return p.Name
}

// take appends one of their records, unless it belongs to a night or a person we have.
func (m *merger) take(e mergeEntry) error {
	r := e.record
	event, keep := m.translate(r, e.event)
	if !keep {
		return nil
	}
	payload, err := encode(event)
	if err != nil {
		return err
	}
	m.seq++
	if _, ok := m.action[r.Action]; !ok {
		m.action[r.Action] = m.seq
	}
	payload.Seq, payload.Action, payload.Time, payload.Night = m.seq, m.action[r.Action], r.Time, m.night[r.Night]
	payload.Payload, err = m.identities(payload.Payload)
	m.out = append(m.out, payload)
	return err
}

// translate is what one of their events is here; keep is false when we have it already.
func (m *merger) translate(r Record, e Event) (Event, bool) {
	if m.known[r.Night] && r.Night != 0 {
		return nil, false
	}
	switch e := e.(type) {
	case NightOpened:
		m.nights++
		m.night[r.Night] = m.nights
		m.result.Nights++
		e.Night = m.nights
		return e, true
	case PersonAdded:
		_, joined := m.person[e.Person.ID]
		if _, ours := m.ours.club.Person(e.Person.ID); ours || joined {
			return nil, false
		}
		m.result.People++
		e.Person = m.number(e.Person)
		return e, true
	case Undone:
		e.Action = m.action[e.Action]
		return e, e.Action != 0
	case Redone:
		e.Action = m.action[e.Action]
		return e, e.Action != 0
	}
	return e, true
}

// number gives somebody of theirs a free name, with a number behind it where one of ours has it.
func (m *merger) number(p Person) Person {
	name := p.Name
	for i := 2; ; i++ {
		if _, taken := m.ours.club.Named(name); !taken {
			break
		}
		name = fmt.Sprintf("%s (%d)", p.Name, i)
	}
	if name != p.Name {
		m.result.Renamed = append(m.result.Renamed, name)
		p.Name = name
	}
	return p
}

// identities puts our identity in the place of theirs wherever a payload names a joined person.
// Identities are unlike any other text, so a whole string that equals one is one.
func (m *merger) identities(payload json.RawMessage) (json.RawMessage, error) {
	if len(m.person) == 0 {
		return payload, nil
	}
	return mapStrings(payload, func(s string) string {
		if id, ok := m.person[PersonID(s)]; ok {
			return string(id)
		}
		return s
	})
}
