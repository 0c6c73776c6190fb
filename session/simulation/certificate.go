package simulation

import (
	"slices"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// certify judges a closed night in hindsight: the bounds take as given who was there and how many
// games were played, and leave free who played with whom. A certificate of the night while it goes
// on would take the played games as given too, and so could find no fault with them.
func certify(club *session.Club, n *session.Night) scheduler.Certificate {
	h := newHindsight(club, n)
	if n.Settings.Flow == session.Rounds {
		return scheduler.Certify(h.problem, h.called())
	}
	c := scheduler.Certify(h.problem, h.rolled())
	c.SitoutSpread, c.BenchedTwice = scheduler.Value{}, scheduler.Value{} // waits tell of these
	return c
}

// hindsight is a night in the scheduler's numbers.
type hindsight struct {
	night   *session.Night
	people  []session.PersonID
	problem scheduler.Problem
}

// newHindsight numbers everybody who was there, and the courts.
func newHindsight(club *session.Club, n *session.Night) *hindsight {
	h := &hindsight{night: n, problem: scheduler.Problem{Format: n.Settings.Format, Seed: n.Settings.Seed}}
	for _, a := range n.Roll {
		if !a.Arrived.IsZero() {
			p, _ := club.Person(a.Person)
			h.people = append(h.people, a.Person)
			h.problem.People = append(h.problem.People, scheduler.Person{Name: p.Name, Group: p.Group, Level: p.Level})
		}
	}
	for _, c := range n.Courts {
		h.problem.Courts = append(h.problem.Courts, scheduler.CourtSpec{Name: string(c.ID)})
	}
	for i, id := range h.people {
		p, _ := club.Person(id)
		for _, t := range p.Together {
			h.problem.Together = h.wish(h.problem.Together, scheduler.Player(i), t.With, t.Times)
		}
		for _, other := range p.KeepApart {
			h.problem.NeverMeet = h.wish(h.problem.NeverMeet, scheduler.Player(i), other, 0)
		}
	}
	return h
}

// wish adds a pair to a list, once, if both were there.
func (h *hindsight) wish(list []scheduler.Pair, a scheduler.Player, other session.PersonID, times int) []scheduler.Pair {
	b := h.player(other)
	known := slices.ContainsFunc(list, func(p scheduler.Pair) bool { return p.A == min(a, b) && p.B == max(a, b) })
	if b == scheduler.Nobody || known {
		return list
	}
	return append(list, scheduler.Pair{A: min(a, b), B: max(a, b), Times: times})
}

// player is a person's number, and nobody for an empty seat or somebody who was not there.
func (h *hindsight) player(id session.PersonID) scheduler.Player {
	return scheduler.Player(slices.Index(h.people, id))
}

func (h *hindsight) game(g *session.Game) scheduler.Game {
	court := slices.IndexFunc(h.night.Courts, func(c session.Court) bool { return c.ID == g.Court })
	return scheduler.Game{
		Court: scheduler.Court(court),
		A:     scheduler.Team{h.player(g.A[0]), h.player(g.A[1])},
		B:     scheduler.Team{h.player(g.B[0]), h.player(g.B[1])},
	}
}

// called lists the rounds as they were called.
func (h *hindsight) called() []scheduler.Round {
	out := make([]scheduler.Round, len(h.night.Rounds))
	for i, r := range h.night.Rounds {
		for _, id := range r.Games {
			out[i].Games = append(out[i].Games, h.game(h.night.Game(id)))
		}
		for _, id := range r.Out {
			out[i].Out = append(out[i].Out, h.player(id))
		}
	}
	return out
}

// rolled lists the games of the rolling flow, each as a round of its own among everybody who was
// there when it was called.
func (h *hindsight) rolled() []scheduler.Round {
	out := make([]scheduler.Round, len(h.night.Games))
	for i := range h.night.Games {
		g := &h.night.Games[i]
		out[i].Games = []scheduler.Game{h.game(g)}
		for _, a := range h.night.Roll {
			if !g.Has(a.Person) && there(a, g.Called) {
				out[i].Out = append(out[i].Out, h.player(a.Person))
			}
		}
	}
	return out
}

// there tells whether somebody was there at a moment of a night that is closed. Nobody leaves and
// comes back in a simulated night.
func there(a session.Attendance, at time.Time) bool {
	return !a.Arrived.IsZero() && !at.Before(a.Arrived) && at.Before(a.Arrived.Add(a.Present))
}
