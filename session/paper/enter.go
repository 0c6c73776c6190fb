package paper

import (
	"errors"
	"fmt"
	"reflect"
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/roster"
)

// Plan is a rotation that was printed before the night: what somebody has in hand who could not open the night.
type Plan struct {
	Night   Night // as its sheets have it: full names, and rounds from 1
	Open    session.OpenNight
	Courts  []string
	Entries []roster.Entry // everybody of the plan
	Same    session.SameName
}

// Entered is a game whose result was entered.
type Entered struct {
	Round int
	Game  Game
}

// Enter enters what was typed into the night that is open, all of it or nothing. With a plan the rounds to come are those
// of the plan, and a night is opened for it if none is open; plan may be nil. Rounds that are not called yet are called, once the
// round before them is over, with exactly the games of the plan. A game that has just that score already is left as it is,
// so that the same lines can be typed twice.
func Enter(d Desk, typed Typed, plan *Plan) ([]Entered, error) {
	return (&entry{typed: typed, plan: plan}).enter(d)
}

// EnterShown is [Enter] where the rounds to come are those that the desk shows: shown, of which the first comes next. Its
// errors name no lines, since nobody wrote any.
func EnterShown(d Desk, typed Typed, shown []session.PlannedRound) ([]Entered, error) {
	return (&entry{typed: typed, shown: shown, desk: true}).enter(d)
}

// Desk does several commands as one, see [session.Desk].
type Desk interface {
	Ledger() *session.Ledger
	DoAll(func(one func(session.Command) (*session.Ledger, error)) error) (*session.Ledger, error)
}

func (e *entry) enter(d Desk) ([]Entered, error) {
	_, err := d.DoAll(func(one func(session.Command) (*session.Ledger, error)) error {
		e.one = func(c session.Command) (err error) {
			e.ledger, err = one(c)
			return err
		}
		e.ledger, e.done = d.Ledger(), nil
		if n := e.night(); n != nil {
			e.called = len(n.Rounds)
		}
		return e.run()
	})
	if err != nil {
		return nil, err
	}
	return e.done, nil
}

// entry is under way.
type entry struct {
	typed  Typed
	plan   *Plan
	shown  []session.PlannedRound // at the desk, after the rounds called
	called int                    // rounds that were called before
	desk   bool                   // it was typed there, a field for each court
	one    func(session.Command) error
	ledger *session.Ledger
	done   []Entered
}

func (e *entry) night() *session.Night { return e.ledger.Night() }

// wrong is an error about a line.
func (e *entry) wrong(line int, format string, args ...any) error {
	if e.desk {
		return fmt.Errorf(format, args...)
	}
	return fmt.Errorf("line %d: "+format, append([]any{line}, args...)...)
}

func (e *entry) run() error {
	if err := e.open(); err != nil {
		return err
	}
	if n := e.night(); n.Settings.Flow != session.Rounds {
		return fmt.Errorf("the night that is open is rolling: results of paper go by rounds, so end it or set its flow to rounds first")
	}
	last := 0
	for _, r := range e.typed.Results {
		last = max(last, r.Round)
	}
	for _, m := range e.typed.Marks {
		last = max(last, m.Round)
	}
	for round := 1; round <= last; round++ {
		if err := e.round(round); err != nil {
			return err
		}
	}
	return nil
}

// open opens the night of the plan, unless one is open, and expects its people.
func (e *entry) open() error {
	if e.plan == nil {
		if e.night() == nil {
			return fmt.Errorf("no night is open: name the rotation that was printed, or open the night at the desk first")
		}
		return nil
	}
	if e.night() == nil {
		if err := e.one(e.plan.Open); err != nil {
			return err
		}
		if err := e.courts(); err != nil {
			return err
		}
	}
	var missing []roster.Entry
	for _, p := range e.plan.Entries {
		known, ok := e.ledger.Club().Named(p.Name)
		if !ok || e.night().Attending(known.ID) == nil {
			missing = append(missing, p)
		}
	}
	if len(missing) == 0 {
		return nil
	}
	for i := range missing { // wishes are about people of the same list
		missing[i].PartnerWith, missing[i].KeepApart, missing[i].NotPartner = nil, nil, nil
	}
	if len(missing) == len(e.plan.Entries) {
		missing = e.plan.Entries
	}
	return e.one(session.ImportRoster{Entries: missing, Same: e.plan.Same})
}

// courts gives a night that was just opened the courts of the plan.
func (e *entry) courts() error {
	for _, c := range e.plan.Courts {
		if e.night().Court(session.CourtID(c)) == nil {
			if err := e.one(session.OpenCourt{Court: session.CourtID(c)}); err != nil {
				return fmt.Errorf("court %s: %w", c, err)
			}
		}
	}
	for _, c := range e.night().OpenCourts() {
		if !slices.Contains(e.plan.Courts, string(c)) {
			if err := e.one(session.CloseCourt{Court: c}); err != nil {
				return err
			}
		}
	}
	return nil
}

// round enters the results of one round, and calls it first if it was not.
func (e *entry) round(number int) error {
	line := e.line(number)
	if line == 0 {
		return nil
	}
	if number > len(e.night().Rounds) {
		if err := e.call(number); err != nil {
			return e.wrong(line, "round %d: %w", number, err)
		}
	}
	n := e.night()
	called := n.Rounds[number-1]
	mark := MarkOf(e.ledger.Club(), n, called)
	for _, m := range e.typed.Marks {
		if m.Round == number && m.Mark != mark {
			return e.wrong(m.Line, "round %d has other games here than on the paper with the letters %s: the letters here are %s, so print the round again and compare",
				number, m.Mark, mark)
		}
	}
	if e.plan != nil && number <= len(e.plan.Night.Rounds) && e.plan.Night.Rounds[number-1].Mark != mark && !e.renamed(called, number) {
		return e.wrong(line, "round %d was called with other games than those of the rotation", number)
	}
	seen := map[string]int{}
	for _, r := range e.typed.Results {
		if r.Round != number {
			continue
		}
		if err := e.result(r, called, seen); err != nil {
			return err
		}
	}
	return nil
}

// line is the first line about a round, 0 where there is none.
func (e *entry) line(round int) int {
	line := 0
	note := func(of, at int) {
		if of == round && (line == 0 || at < line) {
			line = at
		}
	}
	for _, r := range e.typed.Results {
		note(r.Round, r.Line)
	}
	for _, m := range e.typed.Marks {
		note(m.Round, m.Line)
	}
	return line
}

// call calls a round with just the games that were printed.
func (e *entry) call(number int) error {
	n := e.night()
	if next := len(n.Rounds) + 1; number > next {
		return fmt.Errorf("round %d comes before it and has no result: type its games too, as %d 1 void where one was not played", next, next)
	}
	if g := n.Running(); len(g) > 0 {
		return fmt.Errorf("round %d has no result of court %s: type it too, as %d %s void if it was not played", len(n.Rounds), g[0].Court, len(n.Rounds), g[0].Court)
	}
	rounds := n.Plan
	if at := number - 1 - e.called; at >= 0 && at < len(e.shown) {
		rounds = e.shown[at:]
	}
	if e.plan != nil {
		var err error
		if rounds, err = e.planned(number); err != nil {
			return err
		}
		if err := e.gather(number, rounds[0]); err != nil {
			return err
		}
	}
	if len(rounds) == 0 {
		return fmt.Errorf("the club file does not know its games: name the rotation that was printed, or call the round at the desk")
	}
	if err := e.one(session.CallRound{Plan: rounds}); err != nil {
		return err
	}
	if !e.same(number, rounds[0]) {
		return fmt.Errorf("the rotation does not fit who is here or which courts are open: call the round at the desk and type its results there")
	}
	return nil
}

// same tells whether a round was called as it was planned.
func (e *entry) same(number int, planned session.PlannedRound) bool {
	var called []session.PlannedGame
	for _, id := range e.night().Rounds[number-1].Games {
		g := e.night().Game(id)
		called = append(called, session.PlannedGame{Court: g.Court, A: g.A, B: g.B})
	}
	return reflect.DeepEqual(called, planned.Games)
}

// renamed tells whether a round that was called has the people of the plan, though under other names.
func (e *entry) renamed(called session.CalledRound, number int) bool {
	rounds, err := e.planned(number)
	return err == nil && e.same(called.Number, rounds[0])
}

// planned are the rounds of the plan from a number on, with the people of the club.
func (e *entry) planned(from int) ([]session.PlannedRound, error) {
	all := e.plan.Night.Rounds
	if from > len(all) {
		return nil, fmt.Errorf("the rotation has %d rounds", len(all))
	}
	var out []session.PlannedRound
	for _, r := range all[from-1:] {
		var round session.PlannedRound
		for _, g := range r.Games {
			a, errA := e.team(g.A)
			b, errB := e.team(g.B)
			if err := errors.Join(errA, errB); err != nil {
				return nil, err
			}
			round.Games = append(round.Games, session.PlannedGame{Court: session.CourtID(g.Court), A: a, B: b})
		}
		for _, name := range r.Out {
			t, err := e.team([]string{name})
			if err != nil {
				return nil, err
			}
			round.Out = append(round.Out, t[0])
		}
		out = append(out, round)
	}
	return out, nil
}

func (e *entry) team(names []string) (session.Team, error) {
	var t session.Team
	for i, name := range names {
		p, err := e.person(name)
		if err != nil {
			return t, err
		}
		t[i] = p
	}
	return t, nil
}

// person finds somebody of the plan, who may be known to the club by nearly that name.
func (e *entry) person(name string) (session.PersonID, error) {
	if p, ok := e.ledger.Club().Named(name); ok {
		return p.ID, nil
	}
	if near := e.ledger.Club().Alike(name); len(near) > 0 && e.plan.Same == session.OneAlike {
		return near[0].ID, nil
	}
	return "", fmt.Errorf("the club knows nobody called %s", name)
}

// gather checks in who is in a round, and lets rest or leave who is not.
func (e *entry) gather(number int, r session.PlannedRound) error {
	in := map[session.PersonID]bool{}
	for _, g := range r.Games {
		for _, t := range []session.Team{g.A, g.B} {
			in[t[0]], in[t[1]] = true, true
		}
	}
	for _, id := range r.Out {
		in[id] = true
	}
	delete(in, "")
	for _, a := range slices.Clone(e.night().Roll) {
		var c session.Command
		switch here := a.State == session.Here; {
		case in[a.Person] && !here:
			c = session.CheckIn{Person: a.Person}
		case !in[a.Person] && here && e.later(a.Person, number):
			c = session.Rest{Person: a.Person}
		case !in[a.Person] && here:
			c = session.Leave{Person: a.Person}
		default:
			continue
		}
		if err := e.one(c); err != nil {
			return err
		}
	}
	return nil
}

// later tells whether somebody is in a round of the plan after a number.
func (e *entry) later(id session.PersonID, number int) bool {
	name := e.ledger.Club().Name(id)
	for _, r := range e.plan.Night.Rounds[number:] {
		if slices.Contains(r.Out, name) {
			return true
		}
		for _, g := range r.Games {
			if _, _, ok := g.has(name); ok {
				return true
			}
		}
	}
	return false
}

// result enters one result.
func (e *entry) result(r TypedResult, called session.CalledRound, seen map[string]int) error {
	n := e.night()
	var courts []string
	games := map[string]*session.Game{}
	for _, id := range called.Games {
		g := n.Game(id)
		courts = append(courts, string(g.Court))
		games[string(g.Court)] = g
	}
	court, score, err := r.at(courts)
	if err != nil {
		return err
	}
	if first, twice := seen[court]; twice {
		return e.wrong(r.Line, "round %d, court %s stands on line %d already", r.Round, court, first)
	}
	seen[court] = r.Line
	g := games[court]
	final, err := g.Rules.ParseFinal(score)
	if err != nil {
		return e.wrong(r.Line, "round %d, court %s: %w", r.Round, court, err)
	}
	switch {
	case g.Final == nil:
		if err := e.one(session.FinishGame{Game: g.ID, Final: final}); err != nil {
			return e.wrong(r.Line, "%w", err)
		}
	case *g.Final != final:
		return e.wrong(r.Line, "round %d, court %s has the score %v already: correct it at the desk if %v is right", r.Round, court, *g.Final, final)
	default:
		return nil
	}
	e.done = append(e.done, Entered{r.Round, e.told(g, final)})
	return nil
}

// told is a game as it was entered, in full names.
func (e *entry) told(g *session.Game, f scoring.Final) Game {
	with := *g
	with.Final = &f
	return source{club: e.ledger.Club(), n: e.night(), called: e.ledger.Club().Name}.gameOf(&with)
}

// String is the game in a line.
func (d Entered) String() string {
	return fmt.Sprintf("round %d, court %s: %s  %s  %s", d.Round, d.Game.Court, Team(d.Game.A), d.Game.ending(true), Team(d.Game.B))
}
