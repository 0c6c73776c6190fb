package courts

import (
	"fmt"
	"strconv"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// face is everything that is drawn of a court, so that equal faces are drawn once.
type face struct {
	theme    *theme.Theme
	size     size
	width    int
	selected bool

	id    string
	state hall.State
	note  string // at the right of its head: minutes, or what it is in
	foot  string // what an organiser would want to know besides
	alarm bool   // the note is what the night waits for

	a, b             team
	switched         bool // the teams have changed ends: b is at the left
	played, expected int  // minutes, for the bar; expected is 0 without one
}

// team is one team of a court.
type team struct {
	name   string // both players, as short as there is no doubt
	left   string // who stands in the left box
	right  string // who stands in the right box
	serves box    // where the server stands
	takes  box    // where the receiver stands
	points string // empty where they are not known
	won    bool   // of a game that is over
	point  bool   // has game point
}

// box is a place in a team's half; none is no place.
type box uint8

const (
	none box = iota
	inRight
	inLeft
)

// faceOf says what is drawn of a court.
func faceOf(c ui.Context, k *hall.Court, why *session.Idle) face {
	f := face{theme: c.Theme, id: string(k.ID), state: k.State}
	f.a, f.b = teamOf(c, k, scoring.A), teamOf(c, k, scoring.B)
	f.switched = k.Switched
	switch k.State {
	case hall.Closed:
		f.note = "closed"
	case hall.Free:
		f.note = "free"
		f.waits(c, why)
	case hall.Planned:
		f.note = "planned"
		f.foot = "not called yet"
	case hall.Over:
		f.note = "over"
		if k.How != scoring.Played {
			f.foot = session.ScoreText(finalOf(c, k))
		}
		f.waits(c, why)
	default:
		f.playing(c, k)
	}
	return f
}

// waits says why a free court is not called.
func (f *face) waits(c ui.Context, why *session.Idle) {
	if why == nil {
		return
	}
	if foot := idleFoot(why); foot != "" {
		f.foot = foot
	}
}

// playing is the face of a court with a game.
func (f *face) playing(c ui.Context, k *hall.Court) {
	f.played, f.expected = int(k.Played.Minutes()), max(1, int(k.Expected.Minutes()+0.5))
	limit := c.Night().Game(k.Game).Rules.Minutes
	if limit > 0 {
		f.expected = limit
	}
	switch {
	case k.Held:
		f.note = "stopped"
	case k.State == hall.Called && c.Fresh:
		f.note, f.alarm = "NOW CALLED", true
	case len(k.Sent) > 0:
		f.note, f.alarm = sentNote(k.Sent), true
	case k.TimeUp:
		f.note, f.alarm = "time is up", true
	case limit > 0:
		f.note = fmt.Sprintf("%d of %d′", f.played, limit)
	default:
		f.note, f.alarm = fmt.Sprintf("%d′", f.played), k.Late
	}
	if k.State == hall.Called && !c.Fresh {
		f.state = hall.Playing
	}
	switch {
	case k.PausedFor != 0:
		f.foot = k.PausedFor.String()
	case len(k.Leaving) > 0:
		f.foot = "last game of " + c.Names.List(k.Leaving) + "; x sends a sub"
	case k.Closing:
		f.foot = "closes after this game"
	case k.AtPoint:
		f.foot = "call " + k.Call + "  ◆ game point"
	case k.Call != "":
		f.foot = "call " + k.Call
	}
}

// teamOf is one team of a court as it is drawn.
func teamOf(c ui.Context, k *hall.Court, side scoring.Team) team {
	people := k.A
	if side == scoring.B {
		people = k.B
	}
	if people[0] == "" {
		return team{}
	}
	t := team{name: c.Names.Team(people)}
	right, left := people[0], people[1] // as a game begins
	if k.Server != "" {
		right, left = k.Boxes[side][scoring.Right], k.Boxes[side][scoring.Left]
		t.serves, t.takes = boxOf(k.Server, right, left), boxOf(k.Receiver, right, left)
	}
	t.right, t.left = short(c, right), short(c, left)
	if k.Scored {
		t.points = strconv.Itoa(k.Score.Of(side))
	}
	t.won = k.State == hall.Over && k.Decided && k.Winner == side
	t.point = k.State != hall.Over && k.AtPoint && k.Point == side
	return t
}

func short(c ui.Context, id session.PersonID) string {
	if id == "" {
		return ""
	}
	return c.Names.Short(id)
}

func boxOf(id, right, left session.PersonID) box {
	switch id {
	case "":
		return none
	case right:
		return inRight
	case left:
		return inLeft
	}
	return none
}

func finalOf(c ui.Context, k *hall.Court) scoring.Final { return *c.Night().Game(k.Game).Final }
