package session

import (
	"cmp"
	"context"
	"fmt"
	"reflect"
	"slices"
)

// CallRound sends everybody to the courts of the next round. Plan is the rotation that the
// organiser has seen; it is taken if it still fits who is here, else that of the round before, and made anew if
// neither does.
type CallRound struct{ Plan []PlannedRound }

func (c CallRound) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Settings.Flow != Rounds {
		return nil, fmt.Errorf("tonight is rolling: free courts call the next four one by one")
	}
	if err := n.held(); err != nil {
		return nil, err
	}
	if g := n.Running(); len(g) > 0 {
		return nil, fmt.Errorf("round %d still goes on: enter the score of court %s first", len(n.Rounds), g[0].Court)
	}
	if here := n.staying(); here < 4 {
		return nil, fmt.Errorf("%w: %d checked in", ErrTooFew, here)
	}
	events, plan := n.farewells(), c.Plan
	d := newDraw(l.club, n, env.Now)
	fits := func(plan []PlannedRound) bool { return n.fits(plan) && d.keeps(plan) }
	if !fits(plan) {
		if plan = n.Plan; !fits(plan) {
			if plan, err = d.plan(context.Background(), n.Plan); err != nil {
				return nil, err
			}
		}
	}
	if len(events) > 0 || !reflect.DeepEqual(plan, n.Plan) {
		events = append(events, RotationPlanned{plan}) // whoever leaves makes the plan before stale
	}
	return append(events, RoundCalled{Round: len(n.Rounds) + 1, Games: plan[0].Games, Out: plan[0].Out, Terms: n.Settings.Terms()}), nil
}

// farewells note that those have left whose last round was called.
func (n *Night) farewells() []Event {
	var out []Event
	for _, a := range n.Roll {
		if a.State == Here && !n.stays(a) {
			out = append(out, PersonLeft{a.Person})
		}
	}
	return out
}

// fits tells whether the first planned round can be called as it is.
func (n *Night) fits(plan []PlannedRound) bool {
	return n.suits(plan) && len(n.Running()) == 0
}

// suits tells whether the first planned round is about exactly the people who are here now and
// open courts.
func (n *Night) suits(plan []PlannedRound) bool {
	if len(plan) == 0 || len(plan[0].Games) == 0 {
		return false
	}
	var who []PersonID
	for _, g := range plan[0].Games {
		c := n.Court(g.Court)
		if c == nil || !c.Open {
			return false
		}
		for _, id := range []PersonID{g.A[0], g.A[1], g.B[0], g.B[1]} {
			if id != "" {
				who = append(who, id)
			}
		}
	}
	who = append(who, plan[0].Out...)
	slices.Sort(who)
	if len(slices.Compact(who)) != len(who) || len(who) != n.staying() {
		return false
	}
	return !slices.ContainsFunc(who, func(id PersonID) bool { return !n.stays(*cmp.Or(n.Attending(id), &Attendance{})) })
}

// BeginPlay starts the rolling flow: every free court gets its first four, and from then on a
// court that frees calls the next.
type BeginPlay struct{}

func (BeginPlay) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Settings.Flow != Rolling {
		return nil, fmt.Errorf("tonight goes by rounds: call the next round")
	}
	if n.Rolls {
		return nil, fmt.Errorf("play has begun: free courts call the next four by themselves")
	}
	if err := n.held(); err != nil {
		return nil, err
	}
	if here := n.Count(Here); here < 4 {
		return nil, fmt.Errorf("%w: %d checked in", ErrTooFew, here)
	}
	if free := n.freeCourts(); len(free) > 0 && len(n.Running()) == 0 {
		if why := n.begun().idleOf(l.club, free, env.Now); why.Cause != Callable {
			return nil, fmt.Errorf("play cannot begin: %s", why.Words(l.club, env.Zone))
		}
	}
	return []Event{PlayBegun{Rolling}}, nil
}

// EndCalls makes the games on court the last ones of a rolling night.
type EndCalls struct{}

func (EndCalls) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if !n.Rolls {
		return nil, fmt.Errorf("free courts call nobody by themselves")
	}
	return []Event{CallsEnded{}}, nil
}

// CallGame sends the next four to one free court. In the rolling flow it is seldom needed, since
// courts call by themselves; after closing time it is the only way to one more game.
type CallGame struct{ Court CourtID }

func (c CallGame) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if err := n.held(); err != nil {
		return nil, err
	}
	switch k := n.Court(c.Court); {
	case n.Settings.Flow != Rolling:
		return nil, fmt.Errorf("tonight goes by rounds: call the next round")
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case !k.Open:
		return nil, fmt.Errorf("court %s is closed: open it first", c.Court)
	case k.Game != 0:
		return nil, fmt.Errorf("court %s still has a game: enter its score first", c.Court)
	}
	g, err := pickNext(l.club, n, c.Court, env.Now, env.picker(false))
	if err != nil {
		return nil, err
	}
	call := GameCalled{Game: GameID(len(n.Games) + 1), Court: c.Court, A: g.A, B: g.B, Terms: n.Settings.Terms()}
	if !n.Rolls && !n.LastCall {
		return []Event{PlayBegun{Rolling}, call}, nil // the first game begins the play
	}
	return []Event{call}, nil
}

// Substitute puts somebody in for somebody else in a game that goes on: an ankle is twisted, or the
// person called is nowhere to be seen.
type Substitute struct {
	Game    GameID
	Out, In PersonID
}

func (c Substitute) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	g := n.Game(c.Game)
	switch {
	case g == nil || !g.Running():
		return nil, fmt.Errorf("that game is over")
	case !g.Has(c.Out):
		return nil, fmt.Errorf("%s does not play on court %s", l.club.Name(c.Out), g.Court)
	case n.Playing(c.In) != nil:
		return nil, fmt.Errorf("%s plays on court %s", l.club.Name(c.In), n.Playing(c.In).Court)
	case !n.contains(c.In, Here):
		return nil, fmt.Errorf("%s is not in the rotation: check in first", l.club.Name(c.In))
	}
	return []Event{PlayerReplaced(c)}, nil
}
