package session

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
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
	// Free text, such as the name of a night, may hold the name too, in any case of letters.
	word := regexp.MustCompile(`(?i)` + regexp.QuoteMeta(name))
	return func(r Record) Record {
		if bare, ok := bareRecord(r, id, label); ok {
			return bare
		}
		if payload, err := mapStrings(r.Payload, func(s string) string { return word.ReplaceAllLiteralString(s, label) }); err == nil {
			r.Payload = payload
		}
		return r
	}, label, nil
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
