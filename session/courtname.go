package session

import (
	"fmt"
	"strings"
)

// CourtNamed finds a court of the night by what somebody calls it: its whole name, or the beginning of
// only one, in either case. The error says what there is.
func (n *Night) CourtNamed(text string) (CourtID, error) {
	begin := n.courtsFrom(text)
	for _, id := range begin {
		if strings.EqualFold(string(id), strings.TrimSpace(text)) {
			return id, nil
		}
	}
	switch text = strings.TrimSpace(text); {
	case len(begin) == 1:
		return begin[0], nil
	case text == "":
		return "", fmt.Errorf("type the number or the name of a court")
	case len(begin) > 1:
		return "", fmt.Errorf("more than one court begins with %q: type its whole name", text)
	}
	return "", fmt.Errorf("tonight has no court %q", text)
}

// CourtMeant is the court that can only be meant by the beginning of a name: nothing that is typed behind it
// could mean another one.
func (n *Night) CourtMeant(text string) (CourtID, bool) {
	if begin := n.courtsFrom(text); len(begin) == 1 {
		return begin[0], true
	}
	return "", false
}

// courtsFrom lists the courts whose names begin with a text, none for an empty one.
func (n *Night) courtsFrom(text string) []CourtID {
	text = strings.ToLower(strings.TrimSpace(text))
	var out []CourtID
	for _, c := range n.Courts {
		if text != "" && strings.HasPrefix(strings.ToLower(string(c.ID)), text) {
			out = append(out, c.ID)
		}
	}
	return out
}
