package widget

import "club/quadrille/scoring"

// Seats is a game as it stands on its court before the next serve.
type Seats struct {
	State    scoring.State
	Name     func(scoring.Seat) string
	Mirrored bool // team B on the left
	TeamA    func(...string) string
	TeamB    func(...string) string
	Server   func(...string) string
	Line     func(...string) string
}

// Left is the team that is drawn on the left.
func (s Seats) Left() scoring.Team {
	if s.Mirrored {
		return scoring.B
	}
	return scoring.A
}

// Court puts everybody into a box. Each team has its right box at its own right hand: the lower one on the
// left of the net, the upper one on the right.
func (s Seats) Court() Court {
	left := s.Left()
	return Court{
		Left:  [2]Spot{s.spot(left, scoring.Left), s.spot(left, scoring.Right)},
		Right: [2]Spot{s.spot(left.Other(), scoring.Right), s.spot(left.Other(), scoring.Left)},
		Line:  s.Line,
	}
}

func (s Seats) spot(team scoring.Team, box scoring.Box) Spot {
	seat, ok := s.State.On(team, box)
	if !ok {
		return Spot{}
	}
	style := s.TeamA
	if team == scoring.B {
		style = s.TeamB
	}
	return Spot{
		Name: s.Name(seat), Style: style, MarkedStyle: s.Server,
		Serves: !s.State.Done && seat == s.State.Server, Receives: !s.State.Done && seat == s.State.Receiver,
	}
}

// Legend says what the marks of a court mean.
const Legend = "● serves  ○ receives"

// feetHigh is the width of a court; a cell is about twice as high as it is wide, so that a line is two cells
// of its length.
const feetHigh = 20

// ToScale is the largest court to scale that fits into some room, and false where none does.
func ToScale(width, height int) (w, h int, ok bool) {
	for h = height; h >= LeastHeight; h-- {
		w = (2*(h-1)*length+feetHigh/2)/feetHigh + 1
		if w <= width && w >= LeastWidth {
			return w, h, true
		}
	}
	return 0, 0, false
}
