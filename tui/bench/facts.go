package bench

import (
	"cmp"
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/ui"
)

// facts are what the screen shows, worked out beside the drawing.
type facts struct {
	turns   map[session.PersonID]session.Turns
	waits   map[session.PersonID]hall.Waiting
	longest float64                     // wait of those on the bench, in minutes
	all     []session.PersonID          // who is here, most sit-outs first, then fewest games
	where   map[session.PersonID]string // where each is, and when the person plays next
	shares  []string                    // the turns of all, laid out for the size that follows
	width   int
	height  int
	decided []string     // by hand, and not called yet
	none    string       // why no four can be called next in the rolling flow
	round   session.Wait // until the next round is called
}

// survey works the facts out.
func survey(c ui.Context) facts {
	n := c.Night()
	f := facts{turns: n.TurnsOfAll(), waits: make(map[session.PersonID]hall.Waiting, len(c.Hall.Bench))}
	f.decided = n.Decided(c.Club())
	if len(n.Running()) > 0 {
		f.round = n.NextTurn(0, c.Now)
	}
	for _, w := range c.Hall.Bench {
		f.waits[w.Person] = w
		f.longest = max(f.longest, w.Waited.Minutes())
	}
	for _, a := range n.Roll {
		if a.State == session.Here || a.State == session.Resting {
			f.all = append(f.all, a.Person)
		}
	}
	f.where = make(map[session.PersonID]string, len(f.all))
	for _, id := range f.all {
		f.where[id] = f.whereabouts(c, id)
	}
	slices.SortStableFunc(f.all, func(x, y session.PersonID) int {
		return cmp.Or(cmp.Compare(f.turns[y].SatOut, f.turns[x].SatOut), cmp.Compare(f.turns[x].Games, f.turns[y].Games), cmp.Compare(c.Names.Full(x), c.Names.Full(y)))
	})
	if open := n.OpenCourts(); n.Settings.Flow == session.Rolling && !n.LastCall && len(open) > 0 && len(c.Hall.Next) == 0 {
		if _, err := session.NextGame(c.Club(), n, open[0], c.Now); err != nil {
			f.none = err.Error()
		}
	}
	return f
}

// whereabouts says where somebody is, and when the person plays next.
func (f *facts) whereabouts(c ui.Context, id session.PersonID) string {
	n := c.Night()
	next := ""
	if n.Settings.Flow == session.Rounds && c.Rotation.Ready && c.Rotation.Err == nil {
	rounds:
		for i, r := range c.Rotation.Rounds {
			for _, g := range r.Games {
				if g.A.Has(id) || g.B.Has(id) {
					next = fmt.Sprintf(", plays round %d", len(n.Rounds)+1+i)
					break rounds
				}
			}
		}
	}
	if g := n.Playing(id); g != nil {
		return fmt.Sprintf("court %s%s", g.Court, next)
	}
	if w, waits := f.waits[id]; waits {
		if n.Settings.Flow == session.Rolling && !n.LastCall && w.Turn.Late > 0 {
			next = ", plays " + w.Turn.Words()
		}
		return fmt.Sprintf("waits %d min%s", int(w.Waited.Minutes()), next)
	}
	return "rests"
}
