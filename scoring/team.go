package scoring

import "fmt"

// Team is one of the two teams of a game. In singles a team is one player.
type Team uint8

// The sides. Which side serves first is an argument of [Start]; A need not be the one.
const (
	A Team = iota
	B
)

// Other is the opponents of s.
func (s Team) Other() Team { return s ^ 1 }

// String is "A" or "B".
func (s Team) String() string {
	if s == A {
		return "A"
	}
	return "B"
}

// MarshalText writes "a" or "b", the form of rally strings and of JSON.
func (s Team) MarshalText() ([]byte, error) {
	if s > B {
		return nil, fmt.Errorf("a game has teams a and b, and no team number %d", uint8(s))
	}
	return []byte{'a' + byte(s)}, nil
}

// UnmarshalText reads a or b in either case.
func (s *Team) UnmarshalText(text []byte) error {
	switch string(text) {
	case "a", "A":
		*s = A
	case "b", "B":
		*s = B
	default:
		return fmt.Errorf("no team is called %q: use a or b", text)
	}
	return nil
}

// Box is one of the two service courts of a team, as seen by a player who faces the net.
type Box uint8

// The boxes. The rulebook also calls them the even and the odd court.
const (
	Right Box = iota
	Left
)

// Other is the box beside b.
func (b Box) Other() Box { return b ^ 1 }

// String is "right" or "left".
func (b Box) String() string {
	if b == Right {
		return "right"
	}
	return "left"
}

// MarshalText writes [Box.String].
func (b Box) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads right or left.
func (b *Box) UnmarshalText(text []byte) error {
	switch string(text) {
	case "right":
		*b = Right
	case "left":
		*b = Left
	default:
		return fmt.Errorf("no box is called %q: use right or left", text)
	}
	return nil
}

// Seat is one player of a game, named by place and not by person.
//
// Index 0 is the starting server of the side (4.B.2): the player who starts in the right box, written
// A1 or B1. Index 1 is the partner. A team whose handicap start is odd begins with its starting server
// in the left box, because the own score tells the boxes from the first serve on.
type Seat struct {
	Team  Team
	Index uint8
}

// Partner is the other seat of the same team.
func (s Seat) Partner() Seat { return Seat{s.Team, s.Index ^ 1} }

// String is "A1", "A2", "B1" or "B2".
func (s Seat) String() string { return s.Team.String() + string('1'+rune(s.Index)) }

// MarshalText writes [Seat.String].
func (s Seat) MarshalText() ([]byte, error) {
	if s.Team > B || s.Index > 1 {
		return nil, fmt.Errorf("a game has the seats A1, A2, B1 and B2, and none with team %d, index %d", s.Team, s.Index)
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads a seat as [Seat.String] writes it, in either case.
func (s *Seat) UnmarshalText(text []byte) error {
	if len(text) == 2 && (text[1] == '1' || text[1] == '2') {
		var side Team
		if side.UnmarshalText(text[:1]) == nil {
			*s = Seat{side, text[1] - '1'}
			return nil
		}
	}
	return fmt.Errorf("no seat is called %q: use A1, A2, B1 or B2", text)
}
