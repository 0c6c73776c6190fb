package scoring

// The boxes of doubles follow from one invariant (4.B.4; 2026: 5.B.3): the starting server of a team
// stands right when the own score is even and left when it is odd, serving or not. In singles the
// server's own score tells the box (2026: 5.A) and the receiver stands diagonally.

// place sets the server after a side out, the server's box and the receiver.
func (s *State) place() {
	if s.rules.Singles {
		s.Server = Seat{Team: s.Serving}
		s.Receiver = Seat{Team: s.Serving.Other()}
		s.Box = Box(s.Score.Of(s.Serving) & 1)
		return
	}
	if s.Serving != s.Server.Team {
		s.Server = s.on(s.Serving, Right)
	}
	s.Box = s.boxOf(s.Server)
	s.Receiver = s.on(s.Serving.Other(), s.Box)
}

// boxOf is where a player of doubles stands.
func (s *State) boxOf(seat Seat) Box {
	b := Box(s.Score.Of(seat.Team)&1) ^ Box(seat.Index)
	if s.flip[seat.Team] {
		b ^= 1
	}
	return b
}

// on is the player of doubles who stands in a box.
func (s *State) on(side Team, b Box) Seat {
	seat := Seat{Team: side}
	if s.boxOf(seat) != b {
		seat.Index = 1
	}
	return seat
}

// At is the box of a player. In singles both players stand in the server's box of the same name,
// whatever the index of the seat.
//
// The receiver's partner may stand anywhere, and everybody may once the serve is hit (4.B.5): the box
// says from where that player would serve or receive.
func (s State) At(seat Seat) Box {
	if s.rules.Singles {
		return s.Box
	}
	return s.boxOf(seat)
}

// On is the player of a team who stands in a box, and false when that box is empty, as one of the two
// is in singles.
func (s State) On(side Team, b Box) (Seat, bool) {
	if s.rules.Singles {
		return Seat{Team: side}, b == s.Box
	}
	return s.on(side, b), true
}

// Place is a player and the box that player stands in.
type Place struct {
	Seat Seat
	Box  Box
}

// Positions is where everybody stands: A1, A2, B1, B2, and in singles A1, B1.
func (s State) Positions() []Place {
	var places []Place
	for _, side := range []Team{A, B} {
		places = append(places, Place{Seat{side, 0}, s.At(Seat{side, 0})})
		if !s.rules.Singles {
			places = append(places, Place{Seat{side, 1}, s.At(Seat{side, 1})})
		}
	}
	return places
}
