package session

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Forgotten is somebody who is to be forgotten, as the logs of a club know the person: the club file,
// and its copies, which may have the name where the club file has it no more.
type Forgotten struct {
	name  string
	ids   map[PersonID]bool
	names map[string]bool // every name that one of ids ever had, and the one asked for
}

// NewForgotten is whoever has or had a name.
func NewForgotten(name string) *Forgotten {
	name = strings.TrimSpace(name)
	return &Forgotten{name: name, ids: map[PersonID]bool{}, names: map[string]bool{name: true}}
}

// Learn looks for the person in a log: whoever has the name there now, or, if nobody has, whoever had it
// before. All logs must be learned from before the first is changed.
func (f *Forgotten) Learn(log Log) error {
	had, last, err := callings(log)
	if err != nil {
		return err
	}
	found := false
	for id, name := range last {
		if sameName(name, f.name) {
			f.ids[id], found = true, true
		}
	}
	for id, names := range had {
		if !found && slices.ContainsFunc(names, func(name string) bool { return sameName(name, f.name) }) {
			f.ids[id] = true
		}
	}
	if err := f.learnAliases(log); err != nil {
		return err
	}
	for id, names := range had {
		for _, name := range names {
			if f.ids[id] && !neutral.MatchString(name) {
				f.names[name] = true
			}
		}
	}
	return nil
}

// learnAliases adds the identities that turned out to be the person's.
func (f *Forgotten) learnAliases(log Log) error {
	l, err := Load(log.Records(1))
	if err != nil {
		return err
	}
	for _, a := range l.club.Aliases {
		if f.ids[a.ID] || f.ids[a.Of] || sameName(a.Name, f.name) {
			f.ids[a.ID], f.ids[a.Of] = true, true
		}
	}
	return nil
}

// callings are all the names that each person of a log ever had, and the last of them.
func callings(log Log) (had map[PersonID][]string, last map[PersonID]string, err error) {
	had, last = map[PersonID][]string{}, map[PersonID]string{}
	for r, err := range log.Records(1) {
		if err != nil {
			return nil, nil, err
		}
		if p, ok := personIn(r); ok {
			had[p.ID], last[p.ID] = append(had[p.ID], p.Name), p.Name
		}
	}
	return had, last, nil
}

// neutral matches the labels of people who were forgotten before.
var neutral = regexp.MustCompile(`^Somebody [0-9]+$`)

// Known tells whether a log that was learned from has the person.
func (f *Forgotten) Known() bool { return len(f.ids) > 0 }

// Names lists the names that are forgotten, in order.
func (f *Forgotten) Names() []string { return slices.Sorted(maps.Keys(f.names)) }

// In says how the person is forgotten in a log whose records come to club: the change that removes the
// names and what was noted about the person from every record, for a store that rewrites its records,
// and the neutral label under which results stay. Change is nil where there is nothing to be changed.
func (f *Forgotten) In(log Log, club *Club) (change func(Record) Record, label string, err error) {
	labels := map[PersonID]string{}
	for i, p := range club.People {
		if f.ids[p.ID] {
			labels[p.ID] = freeLabel(club, i)
			label = cmp.Or(label, labels[p.ID])
		}
	}
	label = cmp.Or(label, "Somebody")
	words := f.words(club)
	change = func(r Record) Record {
		r = f.unhurt(r)
		if bare, ok := f.bareRecord(r, labels, label); ok {
			return bare
		}
		return rewritten(r, func(text string) string {
			for _, word := range words {
				text = replaceWords(text, word, label)
			}
			return text
		})
	}
	for r, err := range log.Records(1) {
		if err != nil {
			return nil, "", err
		}
		if !bytes.Equal(change(r).Payload, r.Payload) {
			return change, label, nil
		}
	}
	return nil, label, nil
}

// freeLabel is the label of person i of a club, which nobody else may have.
func freeLabel(club *Club, i int) string {
	for n := i + 1; ; n += len(club.People) {
		label := fmt.Sprintf("Somebody %d", n)
		if p, taken := club.Named(label); !taken || p.ID == club.People[i].ID {
			return label
		}
	}
}

// words match the names that free text must not have, the longest first. A name that somebody else has
// by now is left, unless it is the one that was asked for.
func (f *Forgotten) words(club *Club) []*regexp.Regexp {
	names := f.Names()
	slices.SortStableFunc(names, func(a, b string) int { return len(b) - len(a) })
	var out []*regexp.Regexp
	for _, name := range names {
		if p, ok := club.Named(name); ok && !f.ids[p.ID] && name != f.name {
			continue
		}
		out = append(out, regexp.MustCompile(`(?i)`+regexp.QuoteMeta(name)))
	}
	return out
}

// MentionedIn tells whether bytes that are no log, or none that can be read, hold one of the names.
func (f *Forgotten) MentionedIn(data []byte) bool {
	return slices.ContainsFunc(f.Names(), func(name string) bool {
		word := regexp.MustCompile(`(?i)` + regexp.QuoteMeta(name))
		return replaceWords(string(data), word, "") != string(data)
	})
}

// replaceWords puts label in the place of what word matches, where that is a word of its own: whoever is
// called Al is not named in "rally".
func replaceWords(text string, word *regexp.Regexp, label string) string {
	var out strings.Builder
	from := 0
	for _, at := range word.FindAllStringIndex(text, -1) {
		before, _ := utf8.DecodeLastRuneInString(text[:at[0]])
		after, _ := utf8.DecodeRuneInString(text[at[1]:])
		if isWordRune(before) || isWordRune(after) {
			continue
		}
		out.WriteString(text[from:at[0]] + label)
		from = at[1]
	}
	return out.String() + text[from:]
}

func isWordRune(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// rewritten is a record with its free text changed, such as the name of a night. All other texts of a
// payload are words of the file format or identities: "played" must stay even if somebody called Ed is
// forgotten.
func rewritten(r Record, replace func(string) string) Record {
	e, err := Decode(r)
	if err != nil {
		return r
	}
	touched := false
	change := func(text string) string {
		after := replace(text)
		touched = touched || after != text
		return after
	}
	switch was := e.(type) {
	case NightOpened:
		was.Name, was.Venue = change(was.Name), change(was.Venue)
		was.Traits = mappedCourts(was.Traits, change)
		e = was
	case VenueKept:
		was.Venue.Name = change(was.Venue.Name)
		was.Venue.Courts = mappedCourts(was.Venue.Courts, change)
		e = was
	case UsualNightKept:
		was.Night.Name, was.Night.Venue = change(was.Night.Name), change(was.Night.Venue)
		e = was
	case UsualNightDropped:
		was.Name = change(was.Name)
		e = was
	case CourtNoted:
		was.Note = change(was.Note)
		e = was
	case PlayHeld:
		was.Why = change(was.Why)
		e = was
	case MessagePosted:
		was.Message.Text = change(was.Message.Text)
		e = was
	case CardWritten:
		was.Venue, was.Card = change(was.Venue), was.Card.mapped(change)
		e = was
	case PersonHurt:
		was.Note = change(was.Note)
		e = was
	case PersonCleared:
		was.By = change(was.By)
		e = was
	case GameNoted:
		was.Entry.Note = change(was.Entry.Note)
		e = was
	default:
		return r
	}
	if fresh, err := encode(e); touched && err == nil {
		r.Version, r.Payload = fresh.Version, fresh.Payload
	}
	return r
}

// personIn is the person that a record is about who the person is.
func personIn(r Record) (Person, bool) {
	if r.Kind != "PersonAdded" && r.Kind != "PersonChanged" {
		return Person{}, false
	}
	var e PersonAdded // both kinds have this layout
	if err := json.Unmarshal(r.Payload, &e); err != nil {
		return Person{}, false
	}
	return e.Person, true
}

// bareRecord is a record about who the person is, with nothing left but identity and label.
func (f *Forgotten) bareRecord(r Record, labels map[PersonID]string, otherwise string) (Record, bool) {
	p, ok := personIn(r)
	if !ok || !f.ids[p.ID] {
		return r, false
	}
	payload, err := json.Marshal(PersonAdded{Person{ID: p.ID, Name: cmp.Or(labels[p.ID], otherwise)}})
	if err != nil {
		return r, false
	}
	r.Payload = payload
	return r, true
}

// unhurt is a record without the words about an injury of the person. That there was one stays, since what came of it does:
// who was out for tonight was not called.
func (f *Forgotten) unhurt(r Record) Record {
	var bare Event
	switch e, _ := Decode(r); e := e.(type) {
	case PersonHurt:
		if f.ids[e.Person] && e.Note != "" {
			e.Note = ""
			bare = e
		}
	case PersonCleared:
		if f.ids[e.Person] && e.By != unnamed {
			e.By = unnamed
			bare = e
		}
	}
	if bare == nil {
		return r
	}
	if fresh, err := encode(bare); err == nil {
		r.Payload = fresh.Payload
	}
	return r
}

// unnamed stands for who cleared somebody who is forgotten.
const unnamed = "a qualified person"
