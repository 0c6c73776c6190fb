package simulation

import (
	"context"
	"fmt"
	"math/rand/v2"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Season is a row of nights of one club, to which each time other people of it come. Equal seasons give equal records.
type Season struct {
	People, Each int // who the club has, and how many come to a night
	Courts       int
	Rounds       int
	Nights       int
	Flow         session.Flow
	Forget       bool // what was on the nights before does not matter
	Seed         uint64
}

// Played is a night of a season.
type Played struct {
	Partners    map[[2]session.PersonID]bool // who were partners
	Certificate scheduler.Certificate
}

// Play plays the season by the real desk, without a disk.
func (s Season) Play() ([]Played, error) {
	now := opening
	ids := 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time { return now }, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("p%03d", ids))
	})
	if err != nil {
		return nil, err
	}
	d := rand.New(rand.NewPCG(s.Seed, 3))
	var people []session.PersonID
	var out []Played
	for night := range s.Nights {
		settings := session.DefaultSettings(s.Seed + uint64(night))
		settings.Rounds, settings.Flow, settings.Forget = s.Rounds, s.Flow, s.Forget
		if _, err := desk.Do(session.OpenNight{Name: fmt.Sprint("night ", night+1), Settings: settings, Courts: s.Courts}); err != nil {
			return nil, err
		}
		for len(people) < s.People {
			if _, err := desk.Do(session.AddGuest{Name: fmt.Sprintf("P%03d", len(people)+1)}); err != nil {
				return nil, err
			}
			id := desk.Ledger().Club().People[len(people)].ID
			people = append(people, id)
			if _, err := desk.Do(session.Leave{Person: id}); err != nil {
				return nil, err
			}
		}
		d.Shuffle(len(people), func(i, j int) { people[i], people[j] = people[j], people[i] })
		for _, id := range people[:s.Each] {
			if _, err := desk.Do(session.CheckIn{Person: id}); err != nil {
				return nil, err
			}
		}
		if err := s.play(desk, &now, d); err != nil {
			return nil, err
		}
		n := desk.Ledger().Night()
		p := Played{Partners: map[[2]session.PersonID]bool{}, Certificate: session.Certify(desk.Ledger().Club(), n, now)}
		for i := range n.Games {
			for _, t := range [2]session.Team{n.Games[i].A, n.Games[i].B} {
				p.Partners[[2]session.PersonID{min(t[0], t[1]), max(t[0], t[1])}] = true
			}
		}
		out = append(out, p)
		if _, err := desk.Do(session.EndNight{SetAside: true}); err != nil {
			return nil, err
		}
		now = now.Add(7 * 24 * time.Hour)
	}
	return out, nil
}

// play plays a night that is open: as many rounds as it has, or as many games a court in the rolling flow.
func (s Season) play(desk *session.Desk, now *time.Time, d *rand.Rand) error {
	if s.Flow == session.Rolling {
		if _, err := desk.Do(session.BeginPlay{}); err != nil {
			return err
		}
	}
	for game := range s.Rounds * s.Courts {
		n := desk.Ledger().Night()
		if s.Flow == session.Rounds && len(n.Running()) == 0 {
			if len(n.Rounds) == s.Rounds {
				return nil
			}
			r, err := session.PlanRotation(context.Background(), desk.Ledger(), *now)
			if err != nil {
				return err
			}
			if _, err := desk.Do(session.CallRound{Plan: r.Rounds}); err != nil {
				return err
			}
			n = desk.Ledger().Night()
		}
		*now = now.Add(time.Duration(1+d.IntN(4)) * time.Minute)
		running := n.Running()
		if len(running) == 0 {
			return fmt.Errorf("no game goes on after %d", game)
		}
		g := running[d.IntN(len(running))]
		final, err := g.Rules.Final(11, d.IntN(10), scoring.Played)
		if err != nil {
			return err
		}
		if _, err := desk.Do(session.FinishGame{Game: g.ID, Final: final}); err != nil {
			return err
		}
	}
	return nil
}

// Alike tells whether two nights are the same in all that a certificate says of what is within them.
func (p Played) Alike(q Played) bool {
	a, b := p.Certificate, q.Certificate
	a.LastPartners, b.LastPartners = scheduler.Value{}, scheduler.Value{}
	a.Remembered, b.Remembered = 0, 0
	return a == b
}

// Again counts the pairs who were partners on two nights of a season one after the other.
func Again(nights []Played) (again int) {
	for i := 1; i < len(nights); i++ {
		for pair := range nights[i].Partners {
			if nights[i-1].Partners[pair] {
				again++
			}
		}
	}
	return again
}
