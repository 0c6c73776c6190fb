package simulation

import (
	"slices"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// certify judges a closed night. In the rolling flow each game is a round of its own, about which
// nobody else is asked: sitting out is measured by waits instead. Everybody who played counts, also
// those who have gone since.
func certify(club *session.Club, n *session.Night) scheduler.Certificate {
	if n.Settings.Flow == session.Rounds {
		return session.Certify(club, n, n.Closed)
	}
	p := scheduler.Problem{Format: n.Settings.Format, Seed: n.Settings.Seed}
	var people []session.PersonID
	for _, a := range n.Roll {
		if n.GamesOf(a.Person) > 0 {
			person, _ := club.Person(a.Person)
			people = append(people, a.Person)
			p.People = append(p.People, scheduler.Person{Name: person.Name, Group: person.Group, Level: person.Level})
		}
	}
	for _, c := range n.Courts {
		p.Courts = append(p.Courts, scheduler.CourtSpec{Name: string(c.ID)})
	}
	team := func(s session.Side) scheduler.Team {
		return scheduler.Team{scheduler.Player(slices.Index(people, s[0])), scheduler.Player(slices.Index(people, s[1]))}
	}
	for i := range n.Games {
		g := &n.Games[i]
		court := slices.IndexFunc(n.Courts, func(c session.Court) bool { return c.ID == g.Court })
		p.History = append(p.History, scheduler.Round{
			Games: []scheduler.Game{{Court: scheduler.Court(court), A: team(g.A), B: team(g.B)}},
		})
	}
	return scheduler.Certify(p, nil)
}
