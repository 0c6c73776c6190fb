package night

import (
	"cmp"
	"fmt"
)

// Pin is what the organiser has decided by hand about a round to come. A plan keeps it: [Clashes] says why it cannot
// be kept, and planning refuses a problem with such a pin.
type Pin struct {
	Round int   // of the night, from 0
	A     Team  // these two are partners; with [Nobody] in the second seat the first plays, with anybody
	B     Team  // their opponents, so that the whole game is pinned; two times [Nobody] = any
	Court Court // of a whole game; [NoCourt] = any
	Out   bool  // the first of A, named alone, sits out
}

// Plays pins that somebody plays in a round.
func Plays(r int, i Player) Pin {
	return Pin{Round: r, A: Team{i, Nobody}, B: Team{Nobody, Nobody}, Court: NoCourt}
}

// SitsOut pins that somebody has no game in a round.
func SitsOut(r int, i Player) Pin {
	p := Plays(r, i)
	p.Out = true
	return p
}

// Partners pins that two people are partners in a round.
func Partners(r int, i, j Player) Pin {
	return Pin{Round: r, A: Team{i, j}, B: Team{Nobody, Nobody}, Court: NoCourt}
}

// Whole tells whether a whole game is pinned.
func (p Pin) Whole() bool { return p.B[0] != Nobody }

// People lists whom the pin is about.
func (p Pin) People() []Player { return Game{NoCourt, p.A, p.B}.Players() }

// KeptIn tells whether a round is as the pin wants it.
func (p Pin) KeptIn(r Round) bool {
	if p.Out {
		return !Plays(p.Round, p.A[0]).KeptIn(r)
	}
	for _, g := range r.Games {
		switch {
		case p.A[1] == Nobody:
			for _, i := range g.Seats() {
				if i == p.A[0] {
					return true
				}
			}
		case !p.Whole():
			if g.Partners(p.A[0], p.A[1]) {
				return true
			}
		case g.Partners(p.A[0], p.A[1]) && g.Partners(p.B[0], p.B[1]):
			return p.Court == NoCourt || p.Court == g.Court
		}
	}
	return false
}

// Words says what the pin wants, with the names of the problem.
func (p Pin) Words(of *Problem) string {
	team := func(t Team) string { return of.NameOf(t[0]) + " & " + of.NameOf(t[1]) }
	switch {
	case p.Out:
		return fmt.Sprintf("%s sits out in round %d", of.NameOf(p.A[0]), p.Round+1)
	case p.A[1] == Nobody:
		return fmt.Sprintf("%s plays in round %d", of.NameOf(p.A[0]), p.Round+1)
	case !p.Whole():
		return fmt.Sprintf("%s are partners in round %d", team(p.A), p.Round+1)
	case p.Court == NoCourt:
		return fmt.Sprintf("%s play %s in round %d", team(p.A), team(p.B), p.Round+1)
	}
	return fmt.Sprintf("%s play %s in round %d on %s", team(p.A), team(p.B), p.Round+1, of.NameOfCourt(p.Court))
}

// misnumberedPins checks the numbers of pins.
func (c *clash) misnumberedPins() {
	known := func(i Player) bool { return i >= 0 && int(i) < len(c.p.People) }
	for _, p := range c.p.Pins {
		people := p.People()
		whole := p.B != Team{Nobody, Nobody}
		for k, i := range people {
			if !known(i) {
				c.say("a pin names person %d, but there are %d people", i+1, len(c.p.People))
			}
			for _, j := range people[:k] {
				if i == j {
					c.say("a pin names one person twice: %s", c.p.NameOf(i))
				}
			}
		}
		switch {
		case p.Out && len(people) != 1:
			c.say("a pin that somebody sits out is about one person, and not about %d people", len(people))
		case len(people) == 0 || p.A[0] == Nobody || whole && len(people) != 4:
			c.say("a pin is about one person, two partners or the four of a game, and not about %d people", len(people))
		case p.Court != NoCourt && (!whole || p.Court < 0 || int(p.Court) >= len(c.p.Courts)):
			c.say("a pin names court number %d, but there are %d courts, and only a whole game has one", p.Court+1, len(c.p.Courts))
		case p.Round < len(c.p.History) || p.Round >= c.p.TotalRounds():
			c.say("a pin is about round %d, but the rounds to plan are %d to %d", p.Round+1, len(c.p.History)+1, c.p.TotalRounds())
		}
	}
}

// pins says which pins cannot be kept.
func (c *clash) pins() {
	if len(c.p.Pins) == 0 {
		return
	}
	n := New(c.p)
	for k, p := range c.p.Pins {
		if why := n.barsPin(k); why != "" {
			c.about(p.People(), "%s is not possible: %s", p.Words(c.p), why)
		}
	}
}

// Unpinnable says why the last pin of a problem cannot be kept beside those before it, empty where nothing is
// known against it.
func Unpinnable(p *Problem) string {
	c := &clash{p: p}
	c.misnumberedPins()
	if len(c.reasons) > 0 {
		return c.reasons[len(c.reasons)-1].Text
	}
	return New(p).barsPin(len(p.Pins) - 1)
}

// barsPin says why pin number k cannot be kept beside those before it.
func (n *Night) barsPin(k int) string {
	return cmp.Or(n.barsAlone(n.Problem.Pins[k]), barsBeside(n.Problem, k), n.crowded(k))
}

// barsAlone says why a pin cannot be kept, whatever the others are; empty if it can.
func (n *Night) barsAlone(p Pin) string {
	of, people := n.Problem, p.People()
	if of.Format == Ladder {
		return "on a ladder the results decide who plays with whom"
	}
	for k, i := range people {
		if !of.People[i].PresentIn(p.Round) {
			return of.NameOf(i) + " is not there then"
		}
		if p.Out {
			continue
		}
		if k := of.MaxRun; k > 0 && p.Round == n.First && n.running(i) >= k {
			return fmt.Sprintf("%s has played %d games running and must rest", of.NameOf(i), k)
		}
		for _, j := range people[:k] {
			if HasPair(of.NeverMeet, Pair{A: i, B: j}) {
				return fmt.Sprintf("%s and %s shall never meet", of.NameOf(j), of.NameOf(i))
			}
		}
		if p.Court != NoCourt && !n.MayPlayOn(i, p.Court) {
			return fmt.Sprintf("%s must not play on %s", of.NameOf(i), of.NameOfCourt(p.Court))
		}
		if n.HasMate(i, p.Round) && p.A[1] != Nobody && !(Game{A: p.A, B: p.B}).Partners(i, n.Mate[i]) {
			return fmt.Sprintf("%s always plays with %s", of.NameOf(i), of.NameOf(n.Mate[i]))
		}
		if of.Format == Pairs && !n.HasMate(i, p.Round) {
			return of.NameOf(i) + " has no partner there"
		}
	}
	for _, t := range [2]Team{p.A, p.B} {
		switch {
		case t[0] == Nobody || t[1] == Nobody:
		case HasPair(of.NeverPartner, Pair{A: t[0], B: t[1]}):
			return fmt.Sprintf("%s and %s shall never be partners", of.NameOf(t[0]), of.NameOf(t[1]))
		case n.Side != nil && n.Side[t[0]] == n.Side[t[1]]:
			return fmt.Sprintf("%s and %s are of one group on a mixed night", of.NameOf(t[0]), of.NameOf(t[1]))
		}
	}
	if p.Court != NoCourt && !of.Courts[p.Court].OpenIn(p.Round) {
		return of.NameOfCourt(p.Court) + " is closed then"
	}
	return ""
}

// running is how many rounds running, up to the last one of the history, somebody has played.
func (n *Night) running(i Player) int {
	run := 0
	for r := n.First - 1; r >= 0 && Plays(r, i).KeptIn(n.Problem.History[r]); r-- {
		run++
	}
	return run
}

// barsBeside says why a pin cannot be kept beside those before it.
func barsBeside(of *Problem, k int) string {
	p := of.Pins[k]
	for _, q := range of.Pins[:k] {
		if q.Round != p.Round {
			continue
		}
		if p.Court != NoCourt && p.Court == q.Court {
			return of.NameOfCourt(p.Court) + " has another pinned game"
		}
		if both := Intersect(p.People(), q.People()); len(both) > 0 {
			return of.NameOf(both[0]) + " is pinned otherwise"
		}
	}
	return ""
}

// crowded says why a pin does not fit beside those before it for want of places.
func (n *Night) crowded(k int) string {
	p := n.Problem.Pins[k]
	teams, seats, rests := 0, 0, 0
	for _, q := range n.Problem.Pins[:k+1] {
		if q.Round != p.Round {
			continue
		}
		many := len(q.People())
		if q.A[1] == Nobody && n.HasMate(q.A[0], q.Round) {
			many++
		}
		if q.Out {
			rests += many
			continue
		}
		seats += many
		teams += One(q.A[1] != Nobody) + One(q.Whole())
	}
	games := n.Restful(p.Round, n.MostGames(p.Round, len(n.OpenCourts(p.Round))))
	if teams > 2*games || seats > 4*games {
		return fmt.Sprintf("the %d games of that round have no place left", games)
	}
	switch bench := len(n.Here[p.Round]) - 4*games; {
	case !p.Out || rests <= bench:
		return ""
	case bench <= 0:
		return "everybody plays in that round"
	default:
		return fmt.Sprintf("only %d sit out in that round", bench)
	}
}
