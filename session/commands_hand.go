package session

import (
	"context"
	"fmt"
	"slices"

	"club/quadrille/scheduler"
)

// PinPartners makes two people partners in what is called next: in the rounds flow both play in the next round, in the
// rolling flow in the next four. Plan is the rotation that was shown with that decision in it; it is taken if it fits.
type PinPartners struct {
	A, B PersonID
	Plan []PlannedRound
}

func (c PinPartners) decide(l *Ledger, env Env) ([]Event, error) {
	if c.A == c.B {
		return nil, fmt.Errorf("choose two people: nobody is a partner of the same person")
	}
	return l.pinNext(Pinned{Pins: []Pin{{A: Team{c.A, c.B}}}, By: PinnedPartners}, c.Plan, env)
}

// PutFirst lets somebody play before everybody else who waits, by the organiser's decision: in the next round, or in
// the rolling flow in the next four. Plan is as in [PinPartners].
type PutFirst struct {
	Person PersonID
	Plan   []PlannedRound
}

func (c PutFirst) decide(l *Ledger, env Env) ([]Event, error) {
	return l.pinNext(Pinned{Pins: []Pin{{A: Team{c.Person}}}, By: PutFirstByHand}, c.Plan, env)
}

// pinNext decides about what is called next.
func (l *Ledger) pinNext(e Pinned, plan []PlannedRound, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	p := &e.Pins[0]
	for _, id := range p.People() {
		if why := n.away(l.club, id); why != "" {
			return nil, fmt.Errorf("%s: check in first", why)
		}
		if old, ok := n.PinOf(id); ok {
			return nil, fmt.Errorf("%s is pinned already (%s): release that first (r, x, r)", l.club.Name(id), old.words(l.club))
		}
	}
	if n.Settings.Flow == Rolling {
		return l.pinNextCall(n, e, env)
	}
	p.Round = len(n.Rounds) + 1
	return l.pinned(n, e, plan, env)
}

// pinNextCall decides about the next four of the rolling flow: who shall be among them has to wait on the bench.
func (l *Ledger) pinNextCall(n *Night, e Pinned, env Env) ([]Event, error) {
	p := e.Pins[0]
	for _, id := range p.People() {
		if g := n.Playing(id); g != nil {
			return nil, fmt.Errorf("%s plays on court %s: decide when that game is over", l.club.Name(id), g.Court)
		}
	}
	if n.LastCall {
		return nil, fmt.Errorf("the games on court are the last ones: nobody is called any more")
	}
	if p.A[1] != "" {
		u := newLineup(l.club, n, env.Now)
		if why := u.rolling("").Unpinnable(scheduler.Pair{A: u.player(p.A[0]), B: u.player(p.A[1])}); why != "" {
			return nil, fmt.Errorf("%s", why)
		}
	}
	return []Event{e}, nil
}

// pinned decides about rounds to come, and takes a plan over that has it. It refuses what cannot be kept.
func (l *Ledger) pinned(n *Night, e Pinned, plan []PlannedRound, env Env) ([]Event, error) {
	then := n.clone()
	then.addPins(e.Pins)
	d := newDraw(l.club, then, env.Now)
	for _, u := range d.unpinned {
		if slices.Contains(e.Pins, u.pin) {
			return nil, fmt.Errorf("%s", u.why)
		}
	}
	events := []Event{e}
	if then.suits(plan) && d.keeps(plan) {
		if faults := scheduler.Audit(d.problem, d.schedule(plan)); len(faults) > 0 {
			return nil, fmt.Errorf("%s", faults[0].Text)
		}
		return append(events, RotationPlanned{plan}), nil
	}
	if kept := len(d.problem.Pins); d.problem.Format != scheduler.Ladder {
		if _, err := d.replan(context.Background(), n.Plan); err != nil {
			return nil, err
		}
		if len(d.problem.Pins) < kept {
			return nil, fmt.Errorf("no valid round was found with that")
		}
	}
	return events, nil
}

// PinGame keeps a planned game of a round as it is shown: who plays, with whom, and where. Shown is the rotation.
type PinGame struct {
	Round int
	Court CourtID
	Shown []PlannedRound
}

func (c PinGame) decide(l *Ledger, env Env) ([]Event, error) {
	n, at, err := l.shownRound(c.Round, c.Shown)
	if err != nil {
		return nil, err
	}
	k := c.Shown[at].on(c.Court)
	if k < 0 {
		return nil, fmt.Errorf("no game is planned on court %s in round %d", c.Court, c.Round)
	}
	g := c.Shown[at].Games[k]
	if old, ok := n.PinOn(c.Round, g); ok && old.whole() {
		return nil, fmt.Errorf("that game is pinned already: release it (r, x, r) to have it planned anew")
	}
	return l.pinned(n, Pinned{Pins: []Pin{g.pin(c.Round)}, By: PinnedGame}, c.Shown, env)
}

// SwapPlanned lets two people of a round to come take each other's place: in two games, in the two teams of one, or on
// court and on the bench. Later plans keep the games that it changes, and who sits out by it. Shown is the rotation.
type SwapPlanned struct {
	Round int
	A, B  PersonID
	Shown []PlannedRound
}

func (c SwapPlanned) decide(l *Ledger, env Env) ([]Event, error) {
	n, at, err := l.shownRound(c.Round, c.Shown)
	if err != nil {
		return nil, err
	}
	plan, pins, err := swapped(l.club, c.Shown, at, c.A, c.B)
	if err != nil {
		return nil, err
	}
	for k := range pins {
		pins[k].Round = c.Round
	}
	return l.pinned(n, Pinned{Pins: pins, By: SwappedPeople, People: []PersonID{c.A, c.B}}, plan, env)
}

// swapped is a plan in which two people of a round have changed places, with pins of the games that this changes and of who sits
// out by it; their round is for the caller to say.
func swapped(club *Club, shown []PlannedRound, at int, a, b PersonID) (plan []PlannedRound, pins []Pin, err error) {
	round, other := shown[at], func(id PersonID) PersonID {
		switch id {
		case a:
			return b
		case b:
			return a
		}
		return id
	}
	if a == b {
		return nil, nil, fmt.Errorf("choose two people: %s cannot change places with the same person", club.Name(a))
	}
	for _, id := range [2]PersonID{a, b} {
		plays := slices.ContainsFunc(round.Games, func(g PlannedGame) bool { return g.has(id) })
		if !plays && !slices.Contains(round.Out, id) {
			return nil, nil, fmt.Errorf("%s has no part in that round", club.Name(id))
		}
	}
	fresh := PlannedRound{Out: eachOf(round.Out, other)}
	for _, g := range round.Games {
		h := PlannedGame{g.Court, Team{other(g.A[0]), other(g.A[1])}, Team{other(g.B[0]), other(g.B[1])}}
		if fresh.Games = append(fresh.Games, h); h == g {
			continue
		}
		if h.A.Has(a) && h.A.Has(b) || h.B.Has(a) && h.B.Has(b) {
			return nil, nil, fmt.Errorf("%s and %s are partners in that round", club.Name(a), club.Name(b))
		}
		if h.A[1] == "" {
			return nil, nil, fmt.Errorf("one of them plays singles as what is left over: that cannot be pinned")
		}
		pins = append(pins, h.pin(0))
	}
	if len(pins) == 0 {
		return nil, nil, fmt.Errorf("%s and %s both sit out in that round", club.Name(a), club.Name(b))
	}
	for _, id := range [2]PersonID{a, b} {
		if slices.Contains(fresh.Out, id) {
			pins = append(pins, Pin{A: Team{id}, Out: true})
		}
	}
	plan = slices.Clone(shown)
	plan[at] = fresh
	return plan, pins, nil
}

// MovePlanned takes a planned game to another court; a game that is planned there comes to the court that it leaves.
// Shown is the rotation.
type MovePlanned struct {
	Round    int
	From, To CourtID
	Shown    []PlannedRound
}

func (c MovePlanned) decide(l *Ledger, env Env) ([]Event, error) {
	n, at, err := l.shownRound(c.Round, c.Shown)
	if err != nil {
		return nil, err
	}
	round := PlannedRound{Games: slices.Clone(c.Shown[at].Games), Out: c.Shown[at].Out}
	i, j := round.on(c.From), round.on(c.To)
	k := n.Court(c.To)
	switch {
	case i < 0:
		return nil, fmt.Errorf("no game is planned on court %s in round %d", c.From, c.Round)
	case c.From == c.To:
		return nil, fmt.Errorf("the game is on court %s", c.To)
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.To)
	case !k.Open:
		return nil, fmt.Errorf("court %s is closed: open it first", c.To)
	}
	round.Games[i].Court = c.To
	if j >= 0 {
		round.Games[j].Court = c.From
	}
	var pins []Pin
	for _, at := range []int{i, j} { // the game that was chosen comes first
		if at >= 0 && round.Games[at].A[1] != "" {
			pins = append(pins, round.Games[at].pin(c.Round))
		}
	}
	slices.SortStableFunc(round.Games, func(g, h PlannedGame) int { return n.courtOrder(g.Court) - n.courtOrder(h.Court) })
	plan := slices.Clone(c.Shown)
	plan[at] = round
	if len(pins) == 0 {
		return nil, fmt.Errorf("singles of what is left over cannot be pinned to a court")
	}
	return l.pinned(n, Pinned{Pins: pins, By: MovedGame}, plan, env)
}

// courtOrder is the place of a court among those of the night.
func (n *Night) courtOrder(id CourtID) int {
	return slices.IndexFunc(n.Courts, func(c Court) bool { return c.ID == id })
}

// on is which of the round's games is on a court, -1 for none.
func (r PlannedRound) on(c CourtID) int {
	return slices.IndexFunc(r.Games, func(g PlannedGame) bool { return g.Court == c })
}

// pin keeps a planned game as it is.
func (g PlannedGame) pin(round int) Pin { return Pin{Round: round, A: g.A, B: g.B, Court: g.Court} }

// shownRound is where a round to come stands in the rotation that was shown.
func (l *Ledger) shownRound(round int, shown []PlannedRound) (n *Night, at int, err error) {
	if n, err = openNight(l); err != nil {
		return nil, 0, err
	}
	at = round - len(n.Rounds) - 1
	switch {
	case n.Settings.Flow != Rounds:
		return nil, 0, fmt.Errorf("tonight is rolling: there are no rounds to come")
	case at < 0:
		return nil, 0, fmt.Errorf("round %d has been called", round)
	case at >= len(shown) || !n.suits(shown):
		return nil, 0, fmt.Errorf("the rotation is being worked out anew: try again in a moment")
	}
	return n, at, nil
}

// ExchangePlayers lets two people who are on court take each other's place, before play or during it. Whoever was in
// a game before that stays in its sheet for the rallies played.
type ExchangePlayers struct{ One, Other PersonID }

func (c ExchangePlayers) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if err := n.mayExchange(l.club, c.One, c.Other); err != nil {
		return nil, err
	}
	g, h := n.Playing(c.One), n.Playing(c.Other)
	if g.Format == scheduler.Pairs && g.A[1] != "" || h.Format == scheduler.Pairs && h.A[1] != "" {
		return nil, fmt.Errorf("set pairs stay together: send a substitute instead")
	}
	for _, x := range [2]struct {
		id, leaves PersonID
		game       *Game
	}{{c.One, c.Other, h}, {c.Other, c.One, g}} {
		for _, other := range x.game.Players() {
			if g != h && other != x.leaves && l.club.apart(x.id, other) {
				return nil, fmt.Errorf("%s and %s shall never meet", l.club.Name(x.id), l.club.Name(other))
			}
			mates := x.game.A.Has(other) == x.game.A.Has(x.leaves)
			if other != x.leaves && other != x.id && mates && l.club.noTeam(x.id, other) {
				return nil, fmt.Errorf("%s and %s shall never be partners", l.club.Name(x.id), l.club.Name(other))
			}
		}
	}
	return []Event{PlayersExchanged(c)}, nil
}

// apart tells whether two people shall not meet.
func (c *Club) apart(a, b PersonID) bool {
	p, _ := c.Person(a)
	q, _ := c.Person(b)
	return slices.Contains(p.KeepApart, b) || slices.Contains(q.KeepApart, a)
}

// noTeam tells whether two people shall not be partners.
func (c *Club) noTeam(a, b PersonID) bool {
	p, _ := c.Person(a)
	q, _ := c.Person(b)
	return slices.Contains(p.NotPartner, b) || slices.Contains(q.NotPartner, a)
}

// MoveGame takes a game that goes on to another court; a game that goes on there comes to the court that it leaves.
type MoveGame struct {
	Game  GameID
	Court CourtID
}

func (c MoveGame) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	g, k := n.Game(c.Game), n.Court(c.Court)
	switch {
	case g == nil || !g.Running():
		return nil, fmt.Errorf("that game is over")
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case g.Court == c.Court:
		return nil, fmt.Errorf("the game is on court %s", c.Court)
	case k.Game == 0 && !k.Open:
		return nil, fmt.Errorf("court %s is closed: open it first", c.Court)
	}
	return []Event{GameMoved{Game: c.Game, Court: c.Court, Other: k.Game}}, nil
}
