package hall

import (
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// courtOf is one court at a moment. Next is the round that comes next.
func courtOf(n *session.Night, c session.Court, next session.PlannedRound, now time.Time) Court {
	out := Court{ID: c.ID, State: Free, Held: n.Hold != nil, Closing: !c.Open && c.Game != 0}
	if g := n.Game(c.Game); g != nil {
		out.play(n, g, now)
		out.Sent = n.ProposalsOf(g.ID)
		return out
	}
	if !c.Open {
		out.State = Closed
		return out
	}
	if g := n.LastOn(c.ID); g != nil {
		out.over(n, g)
		return out
	}
	if len(n.Running()) > 0 {
		return out
	}
	for _, g := range next.Games {
		if g.Court == c.ID {
			out.State, out.A, out.B = Planned, g.A, g.B
		}
	}
	return out
}

// play fills in a game that goes on.
func (c *Court) play(n *session.Night, g *session.Game, now time.Time) {
	c.State, c.Game, c.A, c.B = Playing, g.ID, g.A, g.B
	c.Played = n.GameTime(g, now)
	c.TimeUp = g.Rules.Minutes > 0 && c.Played >= time.Duration(g.Rules.Minutes)*time.Minute
	for _, id := range g.Players() {
		if a := n.Attending(id); a.State != session.Here {
			c.Leaving = append(c.Leaving, id)
		}
	}
	if len(g.Rallies)+len(g.Entries) == 0 {
		return
	}
	s := g.State
	c.Score, c.Scored, c.Call, c.Switched = s.Score, true, s.Call(), g.SwitchedEnds()
	c.Server, c.Receiver = g.At(s.Server), g.At(s.Receiver)
	for _, p := range s.Positions() {
		c.Boxes[p.Seat.Team][p.Box] = g.At(p.Seat)
	}
	c.Point, c.AtPoint = s.GamePoint()
	if g.Pause != nil {
		c.PausedFor = g.Pause.Kind
	}
}

// over fills in a game that is over.
func (c *Court) over(n *session.Night, g *session.Game) {
	c.State, c.Game, c.A, c.B = Over, g.ID, g.A, g.B
	c.How = g.Final.How()
	c.Score, c.Scored = g.Final.Score(), c.How != scoring.Void
	c.Winner, c.Decided = g.Final.Winner()
	c.Switched = g.SwitchedEnds()
	c.Played = n.GameTime(g, g.Finished)
}
