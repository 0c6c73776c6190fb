package session

import "club/quadrille/session/name"

// lookup tells where in a list people stand, so that nobody has to be searched for: with ten thousand people on
// a roster, searches for each would be a hundred million comparisons. It is worth nothing to a list of another
// length than its own, and is then made anew before it is added to; a state that shares it with a later one so
// sees that it no longer fits.
type lookup struct {
	byID   map[PersonID]int
	byName map[string]int // the first of each name, in the form of name.Key
}

// fit tells whether it is the lookup of a list of so many.
func (l *lookup) fit(length int) bool { return l != nil && len(l.byID) == length }

// add notes that somebody joins a list, as number i.
func (l *lookup) add(id PersonID, text string, i int) {
	l.byID[id] = i
	if text == "" {
		return
	}
	key := name.Key(text)
	if _, taken := l.byName[key]; !taken {
		l.byName[key] = i
	}
}

// lookupOf makes the lookup of people.
func lookupOf(people []Person) *lookup {
	l := &lookup{byID: make(map[PersonID]int, len(people)), byName: make(map[string]int, len(people))}
	for i, p := range people {
		l.add(p.ID, p.Name, i)
	}
	return l
}

// lookupIn makes the lookup of who has a part in a night.
func lookupIn(roll []Attendance) *lookup {
	l := &lookup{byID: make(map[PersonID]int, len(roll))}
	for i, a := range roll {
		l.add(a.Person, "", i)
	}
	return l
}

// searched is told how long a list was that had to be searched for somebody. Tests count.
var searched = func(length int) {}
