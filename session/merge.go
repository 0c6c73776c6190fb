package session

import (
	"encoding/json"
	"errors"
	"fmt"
	"iter"
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
	Differ  []string // what is otherwise there and stays as it is here: nights that went on, people who are one there
	Left    int      // records left out, since a rescue of the other file lost what they rest on
}

// SameNameError names people of the other log who have the name of one of ours.
type SameNameError struct{ Names []string }

func (e *SameNameError) Error() string {
	return fmt.Sprintf("both files know %s, under different identities: say whether that is one person or two", strings.Join(e.Names, ", "))
}

// errNightOpenHere keeps two nights from going on at once.
var errNightOpenHere = errors.New("a night is open here: close it before joining another file")

// Merge works out which records of another log, given whole, to append to ours, renumbered so that
// they follow it. People are joined by identity. Nights that are here already stay as they are, so
// merging the same log twice changes nothing. Into an empty log everything is taken as it is.
func Merge(l *Ledger, theirs []Record, same SameName) ([]Record, Merged, error) {
	their, err := LoadRecords(theirs)
	if err != nil {
		return nil, Merged{}, fmt.Errorf("the other file does not make nights: %w", err)
	}
	m := &merger{
		ours: l, theirs: their, seq: l.last, nights: NightID(len(l.club.Nights)),
		night: map[NightID]NightID{}, known: map[NightID]bool{}, action: map[uint64]uint64{},
		person: map[PersonID]PersonID{}, names: map[PersonID]string{}, taken: map[PersonID]bool{}, merged: map[PersonID]bool{},
	}
	m.compareNights()
	if err := m.settlePeople(same); err != nil {
		return nil, Merged{}, err
	}
	if m.undone, err = takenBack(theirs); err != nil {
		return nil, Merged{}, err
	}
	for _, r := range theirs {
		if err := m.take(r); err != nil {
			return nil, Merged{}, err
		}
	}
	if len(m.out) > 0 && l.Night() != nil {
		return nil, Merged{}, errNightOpenHere
	}
	m.result.Records = len(m.out)
	return m.out, m.result, nil
}

// LoadRecords folds the records of a whole log, as an export holds them.
func LoadRecords(all []Record) (*Ledger, error) { return Load(inOrder(all)) }

// inOrder yields records as a log does.
func inOrder(records []Record) iter.Seq2[Record, error] {
	return func(yield func(Record, error) bool) {
		for _, r := range records {
			if !yield(r, nil) {
				return
			}
		}
	}
}

// merger renumbers records of one log to follow another.
type merger struct {
	ours, theirs *Ledger

	seq    uint64
	nights NightID
	night  map[NightID]NightID   // their number of a night, and ours
	known  map[NightID]bool      // their numbers of nights that are here already
	action map[uint64]uint64     // their actions, and ours
	person map[PersonID]PersonID // their people who are ours under another identity
	names  map[PersonID]string   // their people who get another name
	taken  map[PersonID]bool     // their people who are new here
	merged map[PersonID]bool     // their people who turned out to be others in a night that is here already
	undone map[uint64]bool       // their records that do not stand in the end and are left out
	out    []Record
	result Merged
}

// take appends one of their records, unless it belongs to a night or a person we have.
func (m *merger) take(r Record) error {
	e, err := Decode(r)
	if err != nil {
		return err
	}
	if m.rests(r, e) {
		m.result.Left++
		return nil
	}
	if m.ours.last > 0 && m.undone[r.Seq] && !m.known[r.Night] {
		return nil
	}
	event, keep := m.translate(r, e)
	if !keep {
		return nil
	}
	out, err := encode(event)
	if err != nil {
		return err
	}
	m.seq++
	if _, ok := m.action[r.Action]; !ok {
		m.action[r.Action] = m.seq
	}
	out.Seq, out.Action, out.Time, out.Night = m.seq, m.action[r.Action], r.Time, m.night[r.Night]
	out.Payload, err = m.identities(out.Payload)
	m.out = append(m.out, out)
	return err
}

// rests tells whether a record of a rescued file is only there to mark what is lost, or rests on
// that. Our log must not come to rest on it too; one that is still empty takes the other as it is.
func (m *merger) rests(r Record, e Event) bool {
	if m.ours.last == 0 {
		return false
	}
	_, lost := e.(RecordLost)
	_, skipped := m.theirs.skip[r.Seq]
	return lost || skipped
}

// translate is what one of their events is here; keep is false when we have it already.
func (m *merger) translate(r Record, e Event) (Event, bool) {
	if m.known[r.Night] {
		return m.fromKnownNight(e)
	}
	switch e := e.(type) {
	case NightOpened:
		m.nights++
		m.night[r.Night] = m.nights
		m.result.Nights++
		e.Night = m.nights
		return e, true
	case PersonAdded:
		return m.newPerson(e)
	case PersonChanged:
		_, other := m.ours.club.alias(e.Person.ID) // here the person is known as somebody else
		e.Person = m.renamed(e.Person)
		return e, !other
	case PeopleMerged:
		return e, m.mergesAnew(e) && m.mayMerge(e)
	case NamingChosen, RemindersChosen, LeagueChosen:
		return e, m.ours.last == 0 // the club's own choice stays
	case CardWritten:
		_, ours := m.ours.club.Cards[e.Venue]
		return e, !ours // and so does its own card
	case VenueKept, UsualNightKept, UsualNightDropped:
		return e, m.keepsVenue(e)
	case Undone:
		e.Action, e.With = m.action[e.Action], m.actions(e.With)
		return e, e.Action != 0
	case Redone:
		e.Action, e.Back, e.With = m.action[e.Action], m.actions(e.Back), m.actions(e.With)
		return e, e.Action != 0
	}
	return e, true
}

// actions are our numbers of some of their actions, without those of which nothing was taken.
func (m *merger) actions(theirs []uint64) []uint64 {
	var ours []uint64
	for _, a := range theirs {
		if id := m.action[a]; id != 0 {
			ours = append(ours, id)
		}
	}
	return ours
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

// compareNights finds the nights that are here already, and says where they went on otherwise there.
func (m *merger) compareNights() {
	for _, n := range m.theirs.club.Nights {
		i := slices.IndexFunc(m.ours.club.Nights, func(o *Night) bool { return n.UID != "" && o.UID == n.UID })
		if i < 0 {
			continue
		}
		m.known[n.ID] = true
		m.result.Known++
		if k := n.gamesBeyond(m.ours.club.Nights[i]); k > 0 {
			m.result.Differ = append(m.result.Differ, fmt.Sprintf("the night of %s went on otherwise in the other file: it has %d finished games that differ from ours",
				n.Opened.Format("2006-01-02"), k))
		}
	}
}

// gamesBeyond counts the finished games of n that o, the same night in another file, has not or has
// otherwise.
func (n *Night) gamesBeyond(o *Night) int {
	k := 0
	for i := range n.Games {
		g, h := &n.Games[i], o.Game(n.Games[i].ID)
		if g.Final != nil && (h == nil || h.Final == nil || *h.Final != *g.Final || !h.Called.Equal(g.Called)) {
			k++
		}
	}
	return k
}
