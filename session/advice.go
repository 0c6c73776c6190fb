package session

import (
	"context"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// Step is what the night needs next.
type Step uint8

// The steps of a night, in the order in which a night usually takes them.
const (
	StepOpen    Step = iota // no night is open
	StepCheckIn             // fewer than four people are here
	StepCall                // rounds: the next round can be called
	StepBegin               // rolling: play can begin
	StepFill                // rolling: a court is free and can be called
	StepScores              // games go on: their scores come next
	StepHeld                // play is held
	StepBlocked             // the next round, or a free court, cannot be called: Idle says why
	StepClose               // nothing more is planned, Ending says why: end the night, or play on
)

// Ending is why nothing more is called by itself, where the next step is to end the night or to play on.
type Ending uint8

// The reasons, the first that holds counts.
const (
	AllPlayed     Ending = iota // all planned rounds, or the last games, are played
	TooFewLeft                  // fewer than four people are here
	ClosingPassed               // closing time has passed, and more was planned
)

func (n *Night) ending(a Advice) Ending {
	switch {
	case n.Settings.Flow == Rounds && a.Round > a.Rounds, n.Settings.Flow == Rolling && n.LastCall:
		return AllPlayed
	case a.Here < 4:
		return TooFewLeft
	}
	return ClosingPassed
}

// Advice is what the organiser would do next and the figures to say so.
type Advice struct {
	Step    Step
	Here    int      // people in the rotation
	Running int      // games going on
	Round   int      // the round that goes on or comes next
	Rounds  int      // rounds planned for the night
	Late    int      // expected people whose time has passed
	Ending  Ending   // why the night may end, of StepClose
	Idle    Idle     // why a court stays free, or the next round uncalled; Callable when nothing is the matter
	Barred  []Barred // rolling: who waits and is not called until something is put right
}

// NextStep says what the night that goes on needs next; without one, it is to be opened.
func (l *Ledger) NextStep(now time.Time) Advice {
	n := l.Night()
	if n == nil {
		return Advice{Step: StepOpen}
	}
	a := Advice{Here: n.staying(), Running: len(n.Running()), Round: len(n.Rounds), Rounds: n.Settings.Rounds}
	for _, p := range n.Roll {
		if n.Late(p, now) {
			a.Late++
		}
	}
	if a.Running == 0 {
		a.Round++
	}
	switch {
	case n.Hold != nil:
		a.Step = StepHeld
	case a.Running == 0 && a.Here < 4 && len(n.Games) == 0:
		a.Step = StepCheckIn
	case n.Settings.Flow == Rounds:
		a.Step, a.Idle = l.roundStep(n, a, now)
	default:
		a.Step, a.Idle = l.rollingStep(n, a, now)
		a.Barred = newLineup(l.club, n, now).barred
	}
	if a.Step == StepClose {
		a.Ending = n.ending(a)
	}
	return a
}

func (l *Ledger) roundStep(n *Night, a Advice, now time.Time) (Step, Idle) {
	switch {
	case a.Running > 0:
		return StepScores, Idle{}
	case a.Here < 4 || a.Round > a.Rounds || n.pastClosing(now):
		return StepClose, Idle{}
	}
	if why := newDraw(l.club, n, now).unplannable(); why.Cause != Callable {
		return StepBlocked, why
	}
	return StepCall, Idle{}
}

func (l *Ledger) rollingStep(n *Night, a Advice, now time.Time) (Step, Idle) {
	fresh := !n.Rolls && !n.LastCall
	asked := n
	if fresh {
		asked = n.begun()
	}
	var why Idle
	free := n.freeCourts()
	if len(free) > 0 {
		why = asked.idleOf(l.club, free, now)
	}
	switch {
	case why.Cause == LastGames, why.Cause == PastClosing, n.LastCall, n.pastClosing(now):
		if a.Running > 0 {
			return StepScores, why
		}
		return StepClose, why
	case fresh && (why.Cause == Callable || a.Running > 0) && a.Here >= 4:
		return StepBegin, why
	case len(free) > 0 && why.Cause == Callable:
		return StepFill, why
	case a.Running > 0 && (why.Cause == Callable || why.Cause == TooFew || why.Cause == NoFour || why.Cause == NewPartners):
		return StepScores, why // whoever comes off may be called there
	}
	return StepBlocked, why
}

// Offers lists commands that do what the step asks, the likeliest first, as the desk's keys send them:
// none where the step needs somebody to type. The session accepts each of them as long as nothing else
// happens before.
func (l *Ledger) Offers(now time.Time) []Command {
	n, a := l.Night(), l.NextStep(now)
	switch a.Step {
	case StepCall:
		return []Command{CallRound{}}
	case StepBegin:
		return []Command{BeginPlay{}}
	case StepHeld:
		return []Command{ResumePlay{}}
	case StepFill:
		return []Command{CallGame{a.Idle.Court}}
	case StepScores:
		return n.anyScore()
	case StepBlocked:
		return l.mending(n, a)
	case StepClose:
		out := []Command{EndNight{}}
		if play, ok := l.PlayOn(now); ok {
			out = append(out, play)
		}
		return out
	}
	return nil
}

// PlayOn is the command for one more round or game when all that was planned is played or closing time has
// passed. Ok is false where none can be called.
func (l *Ledger) PlayOn(now time.Time) (c Command, ok bool) {
	n := l.Night()
	switch {
	case n == nil || n.Hold != nil:
		return nil, false
	case n.Settings.Flow == Rounds:
		can := len(n.Running()) == 0 && n.staying() >= 4 && newDraw(l.club, n, now).unplannable().Cause == Callable
		return CallRound{}, can
	}
	for _, court := range n.freeCourts() {
		if _, err := NextGame(l.club, n, court, now); err == nil {
			return CallGame{court}, true
		}
	}
	return nil, false
}

// anyScore ends the first game that goes on as if its sides had played to the target.
func (n *Night) anyScore() []Command {
	g := n.Running()[0]
	final, err := g.Rules.Final(g.Rules.To, 0, scoring.Played)
	if err != nil {
		return nil
	}
	return []Command{FinishGame{g.ID, final}}
}

// mending lists what the organiser may do about what keeps courts empty.
func (l *Ledger) mending(n *Night, a Advice) []Command {
	switch a.Idle.Cause {
	case TooLate:
		out := []Command{CallGame{a.Idle.Court}}
		if n.Rolls {
			out = append(out, EndCalls{})
		}
		return out
	case NoGroup:
		var out []Command
		p, _ := l.club.Person(a.Idle.People[0])
		for _, g := range n.GroupChoice(l.club) {
			if q := p.clone(); !sameGroup(q.Group, g) {
				q.Group = g
				out = append(out, ChangePerson{q})
			}
		}
		return out
	}
	return nil
}

// unplannable is why the next round cannot be planned, as far as that is known without planning.
func (d *draw) unplannable() Idle {
	if missing := d.groupless(); len(missing) > 0 {
		return Idle{Cause: NoGroup, People: missing}
	}
	if clashes := scheduler.Clashes(d.problem); len(clashes) > 0 {
		why := Idle{Cause: NoFour, Text: clashes[0].Text}
		for _, p := range clashes[0].People {
			why.Cause, why.People = Contradiction, append(why.People, d.person(p))
		}
		return why
	}
	err := scheduler.Possible(d.problem)
	if d.problem.Format == scheduler.Ladder && len(d.night.Running()) == 0 {
		_, err = d.plan(context.Background(), nil) // a ladder's next round follows from the last one without a search
	}
	if err != nil {
		return Idle{Cause: NoFour, Text: err.Error()}
	}
	return Idle{}
}
