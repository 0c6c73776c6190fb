package session

import (
	"fmt"
	"slices"

	"club/quadrille/scheduler"
)

// Pin is what the organiser has decided by hand about a round to come, or about the next call of the rolling flow.
// It stands until that round is called, or those whom it is about are called together.
type Pin struct {
	Round int     `json:"round,omitempty"` // 0: whatever is called next
	A     Team    `json:"a"`               // partners; with an empty second place the first plays, with anybody
	B     Team    `json:"b,omitzero"`      // their opponents, where the whole game is pinned
	Court CourtID `json:"court,omitempty"` // of a whole game
	Out   bool    `json:"out,omitempty"`   // the first of A, named alone, sits out in that round
}

// People lists whom the pin is about.
func (p Pin) People() []PersonID { return (&Game{A: p.A, B: p.B}).Players() }

// Has tells whether the pin is about somebody.
func (p Pin) Has(id PersonID) bool { return p.A.Has(id) || p.B.Has(id) }

// whole tells whether a whole game is pinned.
func (p Pin) whole() bool { return p.B[0] != "" }

// wellFormed tells whether a pin is about one person, two partners, or four people of a game, each once.
func (p Pin) wellFormed() bool {
	people := p.People()
	slices.Sort(people)
	if len(slices.Compact(people)) != len((&Game{A: p.A, B: p.B}).Players()) || p.A[0] == "" || p.Round < 0 {
		return false
	}
	if p.Out && (len(people) != 1 || p.Round == 0) {
		return false
	}
	if p.B == (Team{}) {
		return p.Court == ""
	}
	return len(people) == 4
}

// kept tells whether a game is as the pin wants it.
func (p Pin) kept(g PlannedGame) bool {
	partners := func(t Team) bool { return g.A.Has(t[0]) && g.A.Has(t[1]) || g.B.Has(t[0]) && g.B.Has(t[1]) }
	switch {
	case p.Out:
		return false // no game is as it wants it
	case p.A[1] == "":
		return g.has(p.A[0])
	case !p.whole():
		return partners(p.A)
	}
	return partners(p.A) && partners(p.B) && (p.Court == "" || p.Court == g.Court)
}

// PinOn is the pin that a planned game of a round keeps, false where nobody decided about it.
func (n *Night) PinOn(round int, g PlannedGame) (Pin, bool) {
	for _, p := range n.Pins {
		if (p.Round == round || p.Round == 0 && round == len(n.Rounds)+1) && p.kept(g) {
			return p, true
		}
	}
	return Pin{}, false
}

// HeldOut lists those of a planned round's bench who sit out by hand.
func (n *Night) HeldOut(round int, out []PersonID) (held []PersonID) {
	for _, id := range out {
		if slices.Contains(n.Pins, Pin{Round: round, A: Team{id}, Out: true}) {
			held = append(held, id)
		}
	}
	return held
}

// PinOf is what was decided by hand about somebody's next game, false where nothing was.
func (n *Night) PinOf(id PersonID) (Pin, bool) {
	for _, p := range n.Pins {
		if p.Has(id) && (p.Round == 0 || p.Round == len(n.Rounds)+1) {
			return p, true
		}
	}
	return Pin{}, false
}

// Decision is something that was decided by hand about what is to be called, and still holds.
type Decision struct {
	Action uint64 // [UndoAction] releases it
	Words  string
}

// Decisions lists what was decided by hand and still holds, the newest first.
func (l *Ledger) Decisions() []Decision {
	n := l.Night()
	if n == nil || len(n.Pins) == 0 {
		return nil
	}
	var out []Decision
	for _, a := range slices.Backward(l.Actions()) {
		if !a.Undone && a.has(func(e Event) bool { return n.holds(e) }) {
			out = append(out, Decision{a.ID, l.Describe(a)})
		}
	}
	return out
}

// holds tells whether an event noted a decision that still holds.
func (n *Night) holds(e Event) bool {
	pinned, ok := e.(Pinned)
	return ok && slices.ContainsFunc(pinned.Pins, func(p Pin) bool { return slices.Contains(n.Pins, p) })
}

// addPins notes decisions. They take the place of those before them about the same people, or the same court, in the
// same round.
func (n *Night) addPins(pins []Pin) {
	n.Pins = slices.DeleteFunc(slices.Clone(n.Pins), func(old Pin) bool {
		return slices.ContainsFunc(pins, func(p Pin) bool {
			return p.Round == old.Round && (p.Court != "" && p.Court == old.Court || slices.ContainsFunc(p.People(), old.Has))
		})
	})
	n.Pins = append(n.Pins, pins...)
}

// endPins drops decisions that have had their day.
func (n *Night) endPins(over func(Pin) bool) {
	if slices.ContainsFunc(n.Pins, over) {
		n.Pins = slices.DeleteFunc(slices.Clone(n.Pins), over)
	}
}

// mergePins names one of two people in the place of the other. What is about both of them, or about one of them twice,
// means nothing any more.
func (n *Night) mergePins(side func(Team) Team) {
	var out []Pin
	for _, p := range n.Pins {
		p.A, p.B = side(p.A), side(p.B)
		if p.wellFormed() && !slices.ContainsFunc(out, func(q Pin) bool { return q.Round == p.Round && slices.ContainsFunc(p.People(), q.Has) }) {
			out = append(out, p)
		}
	}
	n.Pins = out
}

// pin is a decision in the scheduler's numbers; why says what keeps it from being one at all.
func (d *draw) pin(p Pin) (pin scheduler.Pin, why string) {
	round := p.Round
	if round == 0 {
		round = len(d.night.Rounds) + 1
	}
	pin = scheduler.Pin{Round: round - 1, A: d.team(p.A), B: d.team(p.B), Court: scheduler.NoCourt, Out: p.Out}
	for _, id := range p.People() {
		if why := d.night.away(d.club, id); why != "" && round == len(d.night.Rounds)+1 {
			return pin, why
		}
		if d.player(id) == scheduler.Nobody {
			return pin, d.club.Name(id) + " is not expected tonight"
		}
	}
	if p.Court != "" {
		at := slices.Index(d.courts, p.Court)
		if at < 0 {
			return pin, "court " + string(p.Court) + " is closed"
		}
		pin.Court = scheduler.Court(at)
	}
	return pin, ""
}

// away says why somebody has no part in what is called next, empty for whoever has.
func (n *Night) away(club *Club, id PersonID) string {
	a := n.Attending(id)
	switch {
	case a == nil || a.State == Expected:
		return club.Name(id) + " is not checked in"
	case a.State == Resting:
		return club.Name(id) + " rests"
	case a.State == Gone:
		return club.Name(id) + " has left"
	case !n.stays(*a):
		return club.Name(id) + " leaves after this round"
	}
	return ""
}

// takePins hands the decisions by hand over to the scheduler, in their order, and notes which cannot be kept and why.
func (d *draw) takePins() {
	for _, p := range d.night.Pins {
		pin, why := d.pin(p)
		if why != "" && p.Out {
			continue // whoever is not there has no game
		}
		if why == "" {
			why = scheduler.Unpinnable(d.problem, pin)
		}
		if why != "" {
			d.unpinned = append(d.unpinned, unpinned{p, why})
			continue
		}
		d.problem.Pins = append(d.problem.Pins, pin)
	}
}

// unpinned is a decision that cannot be kept as things stand, and why.
type unpinned struct {
	pin Pin
	why string
}

// words says what cannot be kept.
func (u unpinned) words(club *Club) string {
	return "by hand, not kept: " + u.pin.words(club) + ": " + u.why
}

// words says what was decided.
func (p Pin) words(club *Club) string {
	text := pairName(club, p.A)
	switch {
	case p.Out:
		text += " sits out"
	case p.whole():
		text += " v " + pairName(club, p.B)
		if p.Court != "" {
			text += " on court " + string(p.Court)
		}
	case p.A[1] != "":
		text += " as partners"
	}
	return text
}

// keeps tells whether a plan has all that was decided by hand and can be kept.
func (d *draw) keeps(plan []PlannedRound) bool {
	for _, p := range d.problem.Pins {
		at := p.Round - len(d.night.Rounds)
		if at < 0 || at >= len(plan) {
			return false
		}
		if !p.KeptIn(d.schedule(plan[at : at+1])[0]) {
			return false
		}
	}
	return true
}

// Decided says what was decided by hand and has not been called yet, a line each, with what it waits for. What the
// scheduler has against one of the rounds flow is a warning of the rotation.
func (n *Night) Decided(club *Club) []string {
	var out []string
	for _, p := range n.Pins {
		text := "By hand: " + p.words(club)
		if p.Round > 0 {
			text += fmt.Sprintf(" in round %d", p.Round)
		} else {
			text += " next"
		}
		if why := n.waitsFor(club, p); why != "" {
			text += ", once that is possible: " + why
		}
		out = append(out, text)
	}
	return out
}

// waitsFor says what keeps a decision from being kept by the next call, as far as it is known without planning.
func (n *Night) waitsFor(club *Club, p Pin) string {
	rolling := n.Settings.Flow == Rolling
	if rolling && p.Out {
		return "who sits out is decided for a round, and tonight is rolling"
	}
	if rolling && p.whole() {
		return "a whole game is for a round, and tonight is rolling"
	}
	for _, id := range p.People() {
		if why := n.away(club, id); why != "" {
			return why
		}
		if g := n.Playing(id); g != nil && rolling {
			return fmt.Sprintf("%s plays on court %s", club.Name(id), g.Court)
		}
	}
	return ""
}
