package session

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Forget makes the change that removes a person's name and what was noted about the person from
// every record, for a store that rewrites its records. Results stay, under a neutral label that is
// also returned.
func Forget(club *Club, id PersonID) (change func(Record) Record, label string, err error) {
	i := slices.IndexFunc(club.People, func(p Person) bool { return p.ID == id })
	if i < 0 {
		return nil, "", fmt.Errorf("the club does not know this person")
	}
	name := club.People[i].Name
	label = fmt.Sprintf("Somebody %d", i+1)
	for n := i + 1; ; n++ {
		if _, taken := club.Named(label); !taken || sameName(label, name) {
			break
		}
		label = fmt.Sprintf("Somebody %d", n+len(club.People))
	}
	word := regexp.MustCompile(`(?i)` + regexp.QuoteMeta(name))
	return func(r Record) Record {
		if bare, ok := bareRecord(r, id, label); ok {
			return bare
		}
		return rewritten(r, func(text string) string { return replaceWords(text, word, label) })
	}, label, nil
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
func rewritten(r Record, change func(string) string) Record {
	e, err := Decode(r)
	if err != nil {
		return r
	}
	switch was := e.(type) {
	case NightOpened:
		was.Name = change(was.Name)
		e = was
	case PlayHeld:
		was.Why = change(was.Why)
		e = was
	case GameNoted:
		was.Entry.Note = change(was.Entry.Note)
		e = was
	default:
		return r
	}
	if fresh, err := encode(e); err == nil {
		r.Version, r.Payload = fresh.Version, fresh.Payload
	}
	return r
}

// bareRecord is a record about who the person is, with nothing left but identity and label.
func bareRecord(r Record, id PersonID, label string) (Record, bool) {
	if r.Kind != "PersonAdded" && r.Kind != "PersonChanged" {
		return r, false
	}
	var e PersonAdded // both kinds have this layout
	if err := json.Unmarshal(r.Payload, &e); err != nil || e.Person.ID != id {
		return r, false
	}
	payload, err := json.Marshal(PersonAdded{Person{ID: id, Name: label}})
	if err != nil {
		return r, false
	}
	r.Payload = payload
	return r, true
}
