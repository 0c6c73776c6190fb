package session

import (
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// Certify judges in hindsight what was played so far: the bounds take as given who was there and
// how many games there were, and leave free who played with whom. Taking the played games as given
// too would find no fault with any of them.
//
// In the rolling flow each game is taken as a round of its own. Sitting out means nothing then:
// these two measures are zero, and the waits tell instead.
func Certify(club *Club, n *Night, now time.Time) scheduler.Certificate {
	d := newRollingDraw(club, n, now)
	if n.Settings.Flow == Rounds {
		rounds := make([]scheduler.Round, len(n.Rounds))
		for i, r := range n.Rounds {
			rounds[i] = d.round(r)
		}
		return scheduler.Certify(d.problem, rounds)
	}
	c := scheduler.Certify(d.problem, d.rolled())
	c.SitoutSpread, c.BenchedTwice = scheduler.Value{}, scheduler.Value{}
	return c
}

// rolled lists the games of the rolling flow, each as a round of its own among everybody who was
// there when it was called.
func (d *draw) rolled() []scheduler.Round {
	var out []scheduler.Round
	for i := range d.night.Games {
		g := &d.night.Games[i]
		if g.Final != nil && g.Final.How() == scoring.Void {
			continue
		}
		r := scheduler.Round{Games: []scheduler.Game{d.game(g)}}
		for _, a := range d.night.Roll {
			if !g.Has(a.Person) && a.there(g.Called, d.now) {
				r.Out = append(r.Out, d.player(a.Person))
			}
		}
		out = append(out, r)
	}
	return out
}

// there tells whether somebody was there at a moment, for people who came and went once. Who went
// and came back counts as there for as long as that person was there in all.
func (a Attendance) there(at, now time.Time) bool {
	return !a.Arrived.IsZero() && !at.Before(a.Arrived) && at.Before(a.Arrived.Add(a.PresentFor(now)))
}
