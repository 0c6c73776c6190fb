package simulation

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// sureWin is the chance above which a game has a sure winner.
const sureWin = 0.75

// Season is a row of nights of one club, to which each time other people of it come. Equal seasons give equal records.
type Season struct {
	People, Each int // who the club has, and how many come to a night
	Courts       int
	Rounds       int
	Nights       int
	Flow         session.Flow
	Forget       bool    // what was on the nights before does not matter
	Spread       float64 // standard deviation of people's levels, of which the club is told nothing
	Rated        bool    // levels are to be gently even, by ratings
	Seed         uint64
}

// Played is a night of a season.
type Played struct {
	Partners    map[[2]session.PersonID]bool // who were partners
	Stronger    float64                      // the chance of the stronger team by people's true levels, in the mean of the games
	Certificate scheduler.Certificate
}

// Play plays the season by the real desk, without a disk.
func (s Season) Play() ([]Played, error) {
	c := clubhouse{Season: s, now: opening, level: map[session.PersonID]float64{}, dice: rand.New(rand.NewPCG(s.Seed, 3))}
	var err error
	c.desk, err = session.NewDesk(&session.MemoryLog{}, func() time.Time { return c.now }, func() session.PersonID {
		return session.PersonID(fmt.Sprintf("p%03d", len(c.people)))
	})
	if err != nil {
		return nil, err
	}
	var out []Played
	for night := range s.Nights {
		played, err := c.night(night)
		if err != nil {
			return nil, err
		}
		out = append(out, played)
		c.now = c.now.Add(7 * 24 * time.Hour)
	}
	return out, nil
}

// clubhouse is where a season is played.
type clubhouse struct {
	Season
	desk   *session.Desk
	now    time.Time
	people []session.PersonID
	level  map[session.PersonID]float64 // true, and known to nobody
	dice   *rand.Rand
}

// night plays a night from its opening to its end.
func (c *clubhouse) night(number int) (Played, error) {
	settings := session.DefaultSettings(c.Seed + uint64(number))
	settings.Rounds, settings.Flow, settings.Forget = c.Rounds, c.Flow, c.Forget
	if c.Rated {
		settings.Rated, settings.Gentle, settings.Balance = true, true, sureWin
	}
	if err := c.do(session.OpenNight{Name: fmt.Sprint("night ", number+1), Settings: settings, Courts: c.Courts}); err != nil {
		return Played{}, err
	}
	for len(c.people) < c.People {
		id := session.PersonID(fmt.Sprintf("p%03d", len(c.people)))
		if err := c.do(session.AddGuest{Name: fmt.Sprintf("P%03d", len(c.people)+1)}, session.Leave{Person: id}); err != nil {
			return Played{}, err
		}
		c.people, c.level[id] = append(c.people, id), c.Spread*c.dice.NormFloat64()
	}
	c.dice.Shuffle(len(c.people), func(i, j int) { c.people[i], c.people[j] = c.people[j], c.people[i] })
	for _, id := range c.people[:c.Each] {
		if err := c.do(session.CheckIn{Person: id}); err != nil {
			return Played{}, err
		}
	}
	if err := c.play(number); err != nil {
		return Played{}, err
	}
	n := c.desk.Ledger().Night()
	p := Played{Partners: map[[2]session.PersonID]bool{}, Certificate: session.Certify(c.desk.Ledger().Club(), n, c.now)}
	for i := range n.Games {
		g := &n.Games[i]
		for _, t := range [2]session.Team{g.A, g.B} {
			p.Partners[[2]session.PersonID{min(t[0], t[1]), max(t[0], t[1])}] = true
		}
		p.Stronger += scheduler.WinChance(math.Abs(c.lead(g)), 0) / float64(len(n.Games))
	}
	return p, c.do(session.EndNight{SetAside: true})
}

func (c *clubhouse) do(commands ...session.Command) error {
	for _, command := range commands {
		if _, err := c.desk.Do(command); err != nil {
			return err
		}
	}
	return nil
}

// lead is by how much the true levels of team A add up to more.
func (c *clubhouse) lead(g *session.Game) float64 {
	return c.level[g.A[0]] + c.level[g.A[1]] - c.level[g.B[0]] - c.level[g.B[1]]
}

// play plays a night that is open: as many rounds as it has, or as many games a court in the rolling flow.
func (c *clubhouse) play(number int) error {
	if c.Flow == session.Rolling {
		if err := c.do(session.BeginPlay{}); err != nil {
			return err
		}
	}
	for game := range c.Rounds * c.Courts {
		n := c.desk.Ledger().Night()
		if c.Flow == session.Rounds && len(n.Running()) == 0 {
			if len(n.Rounds) == c.Rounds {
				return nil
			}
			r, err := session.PlanRotation(context.Background(), c.desk.Ledger(), c.now)
			if err != nil {
				return err
			}
			if err := c.do(session.CallRound{Plan: r.Rounds}); err != nil {
				return err
			}
			n = c.desk.Ledger().Night()
		}
		c.now = c.now.Add(time.Duration(1+c.dice.IntN(4)) * time.Minute)
		running := n.Running()
		if len(running) == 0 {
			return fmt.Errorf("no game goes on after %d", game)
		}
		g := running[c.dice.IntN(len(running))]
		final, err := Night{Seed: c.Seed + uint64(number)}.final(g.ID, g.Rules, c.lead(g))
		if err != nil {
			return err
		}
		if err := c.do(session.FinishGame{Game: g.ID, Final: final}); err != nil {
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
