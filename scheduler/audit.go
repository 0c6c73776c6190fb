package scheduler

import (
	"fmt"

	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
)

// Violation is one thing that is wrong with a rotation.
type Violation struct {
	Round  int    // of the night, from 0
	Court  Court  // or NoCourt
	Player Player // or Nobody
	Text   string // a sentence that names round (from 1), court and person
}

// Audit returns everything that is invalid in the rounds that follow the problem's history, wherever
// they come from; none when the rotation is valid. Being unfair is not invalid: see [Certify].
func Audit(p Problem, rounds []Round) []Violation {
	if reasons := night.Misnumbered(&p); len(reasons) > 0 {
		return []Violation{{0, NoCourt, Nobody, reasons[0]}}
	}
	p.Rounds = len(rounds)
	a := &auditor{n: night.New(&p), p: &p}
	a.run = lineup.NewRecord(a.n).Run
	for r, round := range rounds {
		a.round = a.n.First + r
		a.check(round)
	}
	return a.found
}

// auditor walks through a rotation and collects what is wrong.
type auditor struct {
	n     *night.Night
	p     *Problem
	round int
	run   []int // games running of each person
	found []Violation
}

func (a *auditor) say(c Court, i Player, format string, args ...any) {
	text := fmt.Sprintf("round %d", a.round+1)
	if c != NoCourt {
		text += ", " + a.p.NameOfCourt(c)
	}
	a.found = append(a.found, Violation{a.round, c, i, text + ": " + fmt.Sprintf(format, args...)})
}

// check looks at one round.
func (a *auditor) check(round Round) {
	seen := make([]int, a.n.People)    // times named
	where := make([]Court, a.n.People) // the court of somebody's first game
	plays := make([]bool, a.n.People)
	courts := make(map[Court]bool)
	for _, g := range round.Games {
		if a.courtExists(g, courts) && a.seatsFilled(g) {
			for _, i := range g.Players() {
				if plays[i] {
					a.doubled(i, where[i], g.Court)
				} else {
					seen[i]++
					where[i], plays[i] = g.Court, true
				}
			}
			a.rules(g)
		}
	}
	for _, i := range round.Out {
		if !a.n.Known(i) {
			a.say(NoCourt, Nobody, "person %d sits out but is not in the list of %d people", i+1, a.n.People)
			continue
		}
		if plays[i] {
			a.say(where[i], i, "%s plays and sits out", a.p.NameOf(i))
			continue
		}
		seen[i]++
	}
	for i, times := range seen {
		a.person(Player(i), times, plays[i])
	}
	for _, pin := range a.p.Pins {
		if pin.Round == a.round && !pin.KeptIn(round) {
			a.say(pin.Court, pin.A[0], "it was pinned that %s, and that is not so", pin.Words(a.p))
		}
	}
}

// doubled says that somebody who plays on one court has a second seat.
func (a *auditor) doubled(i Player, first, second Court) {
	if first == second {
		a.say(second, i, "%s has two places on this court", a.p.NameOf(i))
		return
	}
	a.say(second, i, "%s already plays on %s", a.p.NameOf(i), a.p.NameOfCourt(first))
}

// person checks that somebody present is named once and somebody absent is not, and counts the run.
func (a *auditor) person(i Player, times int, plays bool) {
	name, here := a.p.NameOf(i), a.p.People[i].PresentIn(a.round)
	switch {
	case times > 1:
		a.say(NoCourt, i, "%s sits out %d times", name, times)
	case times == 0 && here:
		a.say(NoCourt, i, "%s is there but neither plays nor sits out", name)
	case times > 0 && !here:
		a.say(NoCourt, i, "%s is not there in this round", name)
	}
	if !plays {
		a.run[i] = 0
		return
	}
	if a.run[i]++; a.p.MaxRun > 0 && a.run[i] > a.p.MaxRun {
		a.say(NoCourt, i, "%s plays %d games running, but %d is the limit", name, a.run[i], a.p.MaxRun)
	}
}

// courtExists checks that the game's court is open and free.
func (a *auditor) courtExists(g Game, used map[Court]bool) bool {
	switch {
	case g.Court < 0 || int(g.Court) >= len(a.p.Courts):
		a.say(NoCourt, Nobody, "a game is on court number %d, but there are %d courts", g.Court+1, len(a.p.Courts))
	case !a.p.Courts[g.Court].OpenIn(a.round):
		a.say(g.Court, Nobody, "the court is closed in this round")
	case used[g.Court]:
		a.say(g.Court, Nobody, "two games are on this court")
	}
	used[g.Court] = true
	return g.Court >= 0 && int(g.Court) < len(a.p.Courts)
}

// seatsFilled checks that two teams of two, or singles where they are allowed, are on court.
func (a *auditor) seatsFilled(g Game) bool {
	for _, i := range g.Seats() {
		if i != Nobody && !a.n.Known(i) {
			a.say(g.Court, Nobody, "person %d plays but is not in the list of %d people", i+1, a.n.People)
			return false
		}
	}
	if g.Singles() && g.A[0] != Nobody && g.B[0] != Nobody && a.p.LeftoverSingles {
		return true
	}
	if len(g.Players()) != 4 {
		a.say(g.Court, Nobody, "%d people play where four should", len(g.Players()))
	}
	return true
}

// rules checks a game against the format and what people ask.
func (a *auditor) rules(g Game) {
	for _, team := range [2]Team{g.A, g.B} {
		a.team(g.Court, team)
	}
	players := g.Players()
	for x, i := range players {
		if !a.n.MayPlayOn(i, g.Court) {
			a.say(g.Court, i, "%s must not play on this court", a.p.NameOf(i))
		}
		for _, j := range players[:x] {
			if night.HasPair(a.p.NeverMeet, Pair{A: i, B: j}) {
				a.say(g.Court, i, "%s and %s meet but shall never meet", a.p.NameOf(j), a.p.NameOf(i))
			}
		}
		if a.parted(g, i) {
			a.say(g.Court, i, "%s plays without the fixed partner %s", a.p.NameOf(i), a.p.NameOf(a.n.Mate[i]))
		}
	}
}

// parted tells whether somebody plays without a fixed partner who is there. A ladder splits partners, and
// two may play singles against each other.
func (a *auditor) parted(g Game, i Player) bool {
	m := a.n.Mate[i]
	return m != Nobody && a.p.Format != Ladder && a.p.People[m].PresentIn(a.round) && !g.Partners(i, m) && !g.Singles()
}

// team checks two partners.
func (a *auditor) team(c Court, t Team) {
	if t[0] == Nobody || t[1] == Nobody {
		return
	}
	if night.HasPair(a.p.NeverPartner, Pair{A: t[0], B: t[1]}) {
		a.say(c, t[0], "%s and %s are partners but shall never be", a.p.NameOf(t[0]), a.p.NameOf(t[1]))
	}
	if a.n.Side != nil && a.n.Side[t[0]] == a.n.Side[t[1]] {
		a.say(c, t[0], "%s and %s are a team of one group on a mixed night", a.p.NameOf(t[0]), a.p.NameOf(t[1]))
	}
	if a.p.Format == Pairs && a.n.Mate[t[0]] != t[1] {
		a.say(c, t[0], "%s and %s are no set pair", a.p.NameOf(t[0]), a.p.NameOf(t[1]))
	}
}
