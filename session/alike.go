package session

import (
	"fmt"
	"strings"

	"club/quadrille/session/name"
)

// Alike is a new name that is nearly that of somebody else: one person may be meant, spelt in two ways.
type Alike struct {
	Name  string
	Line  int    // of the roster, 0 for a guest
	Known Person // whom the club knows by nearly this name; without identity if that stands on the same roster
	Other int    // the line of the roster on which the other stands, 0 for somebody whom the club knows
}

// AlikeError refuses new names that are nearly those of others until somebody has said who is meant.
type AlikeError struct{ Pairs []Alike }

// told is how many pairs an error names.
const told = 5

func (e *AlikeError) Error() string {
	var parts []string
	for _, p := range e.Pairs[:min(told, len(e.Pairs))] {
		text := fmt.Sprintf("%q is nearly %s", p.Name, p.Known.Name)
		switch {
		case p.Other > 0:
			text = fmt.Sprintf("%q on line %d is nearly %q on line %d", p.Name, p.Line, p.Known.Name, p.Other)
		case p.Line > 0:
			text = fmt.Sprintf("%q on line %d is nearly %s, whom the club knows", p.Name, p.Line, p.Known.Name)
		}
		parts = append(parts, text)
	}
	if more := len(e.Pairs) - len(parts); more > 0 {
		parts = append(parts, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(parts, "; ") + ": say whether that is one person or two"
}

// Alike lists the people of the club whose name is nearly this one.
func (c *Club) Alike(text string) []Person {
	var out []Person
	for _, p := range c.People {
		if name.Alike(p.Name, text) {
			out = append(out, p)
		}
	}
	return out
}

// alikes finds names alike among many, of the club and of a roster.
type alikes struct {
	club  *Club
	index name.Index
	lines []int // of the names that were added after the people of the club
}

func alikesOf(club *Club) *alikes {
	a := &alikes{club: club}
	for _, p := range club.People {
		a.index.Add(p.Name)
	}
	return a
}

// of is somebody who is nearly called so: of the club rather than of the roster.
func (a *alikes) of(text string, line int) (Alike, bool) {
	near := a.index.Like(text)
	if len(near) == 0 {
		return Alike{}, false
	}
	pair := Alike{Name: text, Line: line}
	if i := near[0]; i < len(a.club.People) {
		pair.Known = a.club.People[i]
	} else {
		pair.Other = a.lines[i-len(a.club.People)]
		pair.Known.Name = a.index.Name(i)
	}
	return pair, true
}

// add takes in a name of the roster.
func (a *alikes) add(text string, line int) {
	a.index.Add(text)
	a.lines = append(a.lines, line)
}
