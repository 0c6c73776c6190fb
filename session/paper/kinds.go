package paper

import "fmt"

// Kind is a kind of sheet.
type Kind struct {
	Name string // one word, as it is asked for
	What string // what stands on it, in a few words
	make func(Night) Sheet
}

// Kinds lists the kinds of sheets.
func Kinds() []Kind {
	return []Kind{
		{"rotation", "who plays whom in which round, large, for the wall", Rotation},
		{"personal", "a strip for each person, with the own games", Personal},
		{"slips", "a slip for each game, with room for its score and its rallies", Slips},
		{"checkin", "everybody in full names, with boxes to tick", CheckIn},
		{"standings", "the table, and why", Standings},
		{"card", "the emergency card of the hall: address, access, defibrillator, contacts", Card},
		{"met", "who met whom, and who did not", Met},
	}
}

// ParseKind finds a kind of sheet by its name.
func ParseKind(name string) (Kind, error) {
	for _, k := range Kinds() {
		if k.Name == name {
			return k, nil
		}
	}
	return Kind{}, fmt.Errorf("there is no sheet %q", name)
}

// HasRounds tells whether the sheet says who plays whom in rounds to come, so that a night can go on by it.
func (k Kind) HasRounds() bool {
	return k.Name == "rotation" || k.Name == "personal" || k.Name == "slips"
}

// Of is the sheet of this kind about a night.
func (k Kind) Of(n Night) Sheet { return k.make(n) }
