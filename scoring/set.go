package scoring

import "fmt"

// Setting is everything about a game that somebody can have got wrong, as one value to change and hand
// back: see [State.Setting] and [State.Set].
type Setting struct {
	Score   Score   `json:"score"`
	Serving Team    `json:"serving"`
	Server  Seat    `json:"server"`
	Number  int     `json:"number,omitzero"` // 1 or 2 in side-out doubles, else 0
	Right   [2]Seat `json:"right"`           // who stands in the right box, of A and of B; doubles only
}

// Setting is how s stands now.
func (s State) Setting() Setting {
	set := Setting{Score: s.Score, Serving: s.Serving, Server: s.Server, Number: s.Number}
	for side := range set.Right {
		set.Right[side] = Seat{Team: Team(side)}
		if !s.rules.Singles {
			set.Right[side] = s.on(Team(side), Right)
		}
	}
	return set
}

// Set is s as set says it should stand, which may end the game. The boxes go on from there: whoever is
// put in the right box changes with the partner at each own point. The error says what cannot be.
func (s State) Set(set Setting) (State, error) {
	if err := s.refuseSetting(set); err != nil {
		return s, err
	}
	s.Score, s.Serving, s.Server, s.Number = set.Score, set.Serving, set.Server, set.Number
	for side := range s.flip {
		if !s.rules.Singles {
			s.flip[side] = s.flip[side] != (s.boxOf(set.Right[side]) != Right)
		}
	}
	s.What, s.last, s.ends.now = Corrected, turn{server: s.Server}, false
	s.ends.done = s.ends.done || max(set.Score.A, set.Score.B) >= s.ends.at
	s.settle()
	return s, nil
}

func (s State) refuseSetting(set Setting) error {
	switch {
	case set.Serving > B || set.Server.Team != set.Serving || set.Server.Index > 1:
		return fmt.Errorf("%v cannot serve for team %v: name one of its players", set.Server, set.Serving)
	case s.rules.threeNumbers() && set.Number != 1 && set.Number != 2:
		return fmt.Errorf("the server is number 1 or 2, and not %d", set.Number)
	case !s.rules.threeNumbers() && set.Number != 0:
		return fmt.Errorf("servers have no number in %v: leave it 0", s.rules)
	case s.rules.Singles && set.Server.Index != 0:
		return fmt.Errorf("in singles only A1 and B1 play")
	}
	for side, seat := range set.Right {
		if seat.Team != Team(side) || seat.Index > 1 {
			return fmt.Errorf("%v cannot stand in the right box of team %v: name one of its players", seat, Team(side))
		}
	}
	return s.rules.refuseAny(set.Score.A, set.Score.B)
}

// Penalise is s after a technical foul of a team: it loses a point, or the other team gets one when it
// has none to lose. The same player serves on with the same number, from the box of the new score. It
// can end the game (2026: 22.E). A point of a handicap start cannot be lost.
func (s State) Penalise(side Team) State {
	if s.Done {
		return s
	}
	s.ends.now = false
	s.last = turn{server: s.Server, number: s.Number, opening: s.last.opening}
	s.What, s.Won = Penalty, side.Other()
	if s.Score.Of(side) > (Score{s.rules.StartA, s.rules.StartB}).Of(side) {
		s.Score.add(side, -1)
	} else {
		s.Score.add(side.Other(), 1)
		s.ends.reached(s.Score.Of(side.Other()))
	}
	s.settle()
	return s
}

// settle ends the game where a score that was not won by a rally ends it, and puts people in their boxes.
func (s *State) settle() {
	s.Done = false
	for _, side := range []Team{A, B} {
		if s.rules.over(s.Score, side) {
			s.Done, s.Winner = true, side
		}
	}
	if !s.Done {
		s.Winner = A
	}
	s.place()
}
