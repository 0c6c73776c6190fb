package session

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// TestAnyNight draws whole nights: any format, flow, scoring, closing time and groups, wishes that may
// contradict each other, a clock that jumps, any command, and the undo of any action. After every command:
// no court is free without a reason that is true, what was played keeps its meaning, what the night is said
// to need next is accepted, an undo can be redone, and the night can be ended.
func TestAnyNight(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, log, clock := newTestDesk(t)
		must(t, d, OpenNight{Settings: drawNight(rt, evening), Courts: rapid.IntRange(1, 3).Draw(rt, "courts")})
		for i := range rapid.IntRange(0, 12).Draw(rt, "people") {
			must(t, d, AddGuest{Name: fmt.Sprintf("Early %d", i), Group: drawGroup(rt)})
		}
		for range rapid.IntRange(1, 40).Draw(rt, "steps") {
			clock.now = clock.now.Add(drawPassing(rt))
			before := d.Ledger()
			c := drawAny(rt, before, d.Now())
			_, err := d.Do(c)
			now := d.Now()
			checkMeaning(rt, before, d.Ledger())
			checkNight(rt, d.Ledger())
			checkIdle(rt, d.Ledger(), now, err == nil)
			checkNext(rt, d.Ledger(), now)
			checkEnd(rt, d.Ledger(), now)
			if _, undoes := c.(UndoAction); undoes && err == nil {
				checkRedo(rt, before, d.Ledger(), now)
			}
		}
		checkReplay(t, d, log)
	})
}

// drawNight draws the settings of a night, short enough that plans are quick.
func drawNight(t *rapid.T, now time.Time) Settings {
	s := DefaultSettings(uint64(rapid.IntRange(1, 99).Draw(t, "seed")))
	s.Rounds = rapid.IntRange(2, 4).Draw(t, "rounds")
	s.Flow = rapid.SampledFrom([]Flow{Rounds, Rolling, Rolling}).Draw(t, "flow")
	s.Format = rapid.SampledFrom(append(scheduler.Formats(), scheduler.Mixed, scheduler.Mixed)).Draw(t, "format")
	s.Scoring = rapid.SampledFrom([]scoring.Rules{
		{To: 11, WinBy: 2},
		{To: 11, WinBy: 2, Minutes: 12},
		{Scoring: scoring.RallyScoring, To: 15, WinBy: 2},
		{Scoring: scoring.RallyScoring, To: 3, WinBy: 1},
	}).Draw(t, "rules")
	if minutes := rapid.IntRange(-90, 240).Draw(t, "closing"); minutes > 0 {
		s.Closing = now.Add(time.Duration(minutes) * time.Minute).UTC()
	}
	return s
}

func drawGroup(t *rapid.T) string {
	return rapid.SampledFrom([]string{"x", "x", "x", "y", "y", "Y", "", "z"}).Draw(t, "group")
}

// drawPassing draws how the clock goes on: by minutes as a rule, at times by a jump of hours or days.
func drawPassing(t *rapid.T) time.Duration {
	passing := time.Duration(rapid.IntRange(0, 900).Draw(t, "seconds")) * time.Second
	return passing + rapid.SampledFrom([]time.Duration{
		0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, -3 * time.Hour, 3 * time.Hour, -24 * time.Hour, 24 * time.Hour,
	}).Draw(t, "jump")
}

// drawAny draws any command, and rather often those that end games and change what courts wait for.
func drawAny(t *rapid.T, l *Ledger, now time.Time) Command {
	n := l.Night()
	some := func(name string) (PersonID, bool) {
		if len(l.Club().People) == 0 {
			return "", false
		}
		return rapid.SampledFrom(l.Club().People).Draw(t, name).ID, true
	}
	switch rapid.IntRange(0, 9).Draw(t, "sort") {
	case 0, 1, 2:
		if n == nil || len(n.Running()) == 0 {
			break
		}
		g := rapid.SampledFrom(n.Running()).Draw(t, "running")
		if f, err := g.Rules.Final(g.Rules.To, 0, scoring.Played); err == nil {
			return FinishGame{g.ID, f}
		}
	case 3:
		return ChangeSettings{drawNight(t, now)}
	case 4:
		id, ok := some("who")
		other, _ := some("other")
		if !ok {
			break
		}
		p, _ := l.Club().Person(id)
		p = p.clone()
		switch p.Group = drawGroup(t); rapid.IntRange(0, 4).Draw(t, "wish") {
		case 0:
			p.Together = []Together{{With: other}}
		case 1:
			p.KeepApart = append(p.KeepApart, other)
		case 2:
			p.Together, p.KeepApart, p.NotPartner = nil, nil, nil
		case 3:
			p.Courts = rapid.SampledFrom([][]CourtID{nil, {"1"}, {"2"}, {"2", "3"}, {"9"}}).Draw(t, "own courts")
		case 4:
			p.NotPartner = append(p.NotPartner, other)
		}
		return ChangePerson{p}
	case 5:
		if id, ok := some("who"); ok {
			return CheckInAs{id, drawGroup(t)}
		}
	case 6:
		return AddGuest{Name: fmt.Sprintf("Guest %d", len(l.Club().People)), Group: drawGroup(t)}
	case 7:
		return UndoAction{rapid.SampledFrom(l.Actions()).Draw(t, "action").ID}
	}
	return drawCommand(t, l)
}

// try is the state after a command that is not done.
func try(l *Ledger, c Command, now time.Time) (*Ledger, error) {
	people := len(l.Club().People)
	env := Env{Now: stamp(now), Zone: now.Location(), NewID: func() PersonID { people++; return PersonID(fmt.Sprintf("new%d", people)) }}
	events, err := c.decide(l, env)
	if err != nil {
		return l, err
	}
	_, next, err := l.act(events, env)
	return next, err
}

// checkEnd: the night can be ended, whatever goes on.
func checkEnd(t *rapid.T, l *Ledger, now time.Time) {
	if l.Night() == nil {
		return
	}
	after, err := try(l, EndNight{SetAside: true}, now)
	if err != nil || after.Night() != nil {
		t.Fatalf("the night cannot be ended: %v", err)
	}
}

// checkRedo: what was undone can be redone, to what was before.
func checkRedo(t *rapid.T, before, undone *Ledger, now time.Time) {
	after, err := try(undone, Redo{}, now)
	if err != nil {
		t.Fatalf("what was just undone cannot be redone: %v", err)
	}
	was, is := before.Night(), after.Night()
	if (was == nil) != (is == nil) || was != nil && len(is.Games) < len(was.Games) {
		t.Fatalf("after an undo and a redo the night is %+v, and was %+v", is, was)
	}
}

// checkNext: what the night is said to need next can be done.
func checkNext(t *rapid.T, l *Ledger, now time.Time) {
	a, n := l.NextStep(now), l.Night()
	offers := l.Offers(now)
	switch a.Step {
	case StepOpen:
		offers = []Command{OpenNight{Settings: DefaultSettings(1), Courts: 1}}
	case StepCheckIn:
		offers = []Command{AddGuest{Name: "Somebody new"}}
	case StepCall:
		if rapid.IntRange(0, 2).Draw(t, "plan") > 0 {
			return // planning takes its time
		}
	case StepBlocked:
		if a.Idle.Cause == Callable || a.Idle.Words(l.Club(), now.Location()) == "" {
			t.Fatalf("something is to be put right, and nothing says what: %+v", a)
		}
	case StepScores:
		if len(n.Running()) == 0 {
			t.Fatal("scores are asked for while no game goes on")
		}
	}
	if len(offers) == 0 && a.Step != StepBlocked && (a.Step != StepClose || len(n.Running()) == 0) {
		t.Fatalf("next is %+v, and nothing is offered", a)
	}
	for _, c := range offers {
		after, err := try(l, c, now)
		if err != nil {
			t.Fatalf("next is %+v, and %T is refused: %v", a, c, err)
		}
		if calls := a.Step == StepFill || a.Step == StepCall; calls && len(after.Night().Games) <= len(n.Games) {
			t.Fatalf("next is %+v, and %T calls no game", a, c)
		}
	}
}

// checkIdle: a free court of a rolling night has a reason, and the reason is true. Only a clock that was put
// back can leave one without: the next action calls it, and that is what the line Next says.
func checkIdle(t *rapid.T, l *Ledger, now time.Time, acted bool) {
	n := l.Night()
	if n == nil || n.Settings.Flow != Rolling || len(n.freeCourts()) == 0 {
		return
	}
	why, ok := l.Idle(now)
	if !ok {
		t.Fatalf("courts %v are free, and nothing says why", n.freeCourts())
	}
	chance, closes := n.Chance(now)
	holds := map[Cause]func() bool{
		Callable:    func() bool { return !acted && l.NextStep(now).Step == StepFill },
		OnHold:      func() bool { return n.Hold != nil },
		NotBegun:    func() bool { return !n.Rolls },
		LastGames:   func() bool { return n.LastCall },
		PastClosing: func() bool { return closes && !now.Before(n.Settings.Closing) },
		TooFew:      func() bool { return len(n.Bench()) < 4 },
		TooLate:     func() bool { return closes && chance < LikelyOver && why.Chance == chance },
		NoFour:      func() bool { return !anyFour(l, n) },
		NewPartners: func() bool { return len(n.Running()) >= 3 && !newPartners(l, n) },
		NoGroup: func() bool {
			return len(why.People) > 0 && !slices.ContainsFunc(why.People, func(id PersonID) bool { return ofTonight(l, n, id) }) && !anyFour(l, n)
		},
		Contradiction: func() bool { return len(why.People) > 1 && why.Text != "" && !anyFour(l, n) },
	}
	if !holds[why.Cause]() {
		t.Fatalf("courts %v are free with %d on the bench, and it is not true that: %+v (%s)",
			n.freeCourts(), len(n.Bench()), why, why.Words(l.Club(), now.Location()))
	}
}

// ofTonight tells whether somebody is surely of one of the two groups that most people have who are there or
// expected: where a third has as many, it may be that one.
func ofTonight(l *Ledger, n *Night, id PersonID) bool {
	p, _ := l.Club().Person(id)
	if n.Settings.Format != scheduler.Mixed {
		return true
	}
	count := map[string]int{}
	for _, a := range n.Roll {
		if q, _ := l.Club().Person(a.Person); a.State != Gone && q.Group != "" {
			count[strings.ToLower(q.Group)]++
		}
	}
	more, own := 0, strings.ToLower(p.Group)
	for g, k := range count {
		if g != own && k >= count[own] {
			more++
		}
	}
	return p.Group != "" && more < 2
}

// newPartners looks at every four of the longest wait and others on the bench, where nobody has a wish, for one in
// two teams that are all new.
func newPartners(l *Ledger, n *Night) bool {
	bench := n.Bench()
	for _, a := range bench {
		if p, _ := l.Club().Person(a.Person); len(p.Together)+len(p.KeepApart)+len(p.NotPartner) > 0 {
			return false
		}
	}
	team := func(a, b Attendance) bool {
		partners, _ := n.metBefore(a.Person, b.Person)
		return partners == 0
	}
	a := bench[0]
	for i, b := range bench[1:] {
		for j, c := range bench[1 : i+1] {
			for _, d := range bench[1 : j+1] {
				if n.Settings.Format == scheduler.Rotating && (team(a, b) && team(c, d) || team(a, c) && team(b, d) || team(a, d) && team(b, c)) {
					return true
				}
			}
		}
	}
	return false
}

// anyFour looks at every four on the bench for one that can play, without the scheduler: of those who have
// no wish to be always with somebody.
func anyFour(l *Ledger, n *Night) bool {
	var free []Person
	bench := n.Bench()
	for _, a := range bench {
		p, _ := l.Club().Person(a.Person)
		always := len(p.Together) > 0 || slices.ContainsFunc(l.Club().People, func(q Person) bool {
			return slices.ContainsFunc(q.Together, func(w Together) bool { return w.With == p.ID })
		})
		if !always && ofTonight(l, n, p.ID) {
			free = append(free, p)
		}
	}
	if n.Settings.Format == scheduler.Pairs {
		return false // who is whose partner is the scheduler's business
	}
	for i := range free {
		for j := range free[:i] {
			for k := range free[:j] {
				for m := range free[:k] {
					if mayPlay(n, []Person{free[i], free[j], free[k], free[m]}) {
						return true
					}
				}
			}
		}
	}
	return false
}

func mayPlay(n *Night, four []Person) bool {
	groups := map[string]int{}
	for _, p := range four {
		groups[strings.ToLower(p.Group)]++
		for _, q := range four {
			if slices.Contains(p.KeepApart, q.ID) {
				return false
			}
		}
	}
	if n.Settings.Format != scheduler.Mixed {
		return true
	}
	if len(groups) != 2 {
		return false
	}
	for _, k := range groups {
		if k != 2 {
			return false
		}
	}
	return true
}
