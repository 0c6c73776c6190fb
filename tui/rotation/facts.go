package rotation

import (
	"slices"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// facts are what the screen shows beside the rounds, worked out beside the drawing.
type facts struct {
	ledger *session.Ledger
	ready  bool                  // the rotation was worked out
	plan   *session.PlannedRound // the first of the rounds to come, nil without any: others are at another place

	people []session.PersonID // whom the map is about, by name
	place  map[session.PersonID]int
	played []tally // at row·people + column: games that were called
	ahead  []tally // the same of games that are planned
	apart  []bool  // who shall never meet
	always []bool  // who always plays together
}

// tally is how often two people were partners and opponents.
type tally struct{ partners, opponents int }

// Survey implements ui.Surveyor.
func (r *Rotation) Survey(c ui.Context) {
	n := c.Night()
	if n == nil {
		r.facts = facts{}
		return
	}
	planned := 0
	if c.Rotation.Ready && c.Rotation.Err == nil {
		planned = len(c.Rotation.Rounds)
	}
	if f := r.facts; f.ledger == c.Ledger && f.ready == c.Rotation.Ready && f.plan == firstAhead(c) {
		return
	}
	f := facts{ledger: c.Ledger, ready: c.Rotation.Ready, plan: firstAhead(c)}
	f.people = mapped(c, n)
	f.place = make(map[session.PersonID]int, len(f.people))
	for i, id := range f.people {
		f.place[id] = i
	}
	size := len(f.people) * len(f.people)
	f.played, f.ahead, f.apart, f.always = make([]tally, size), make([]tally, size), make([]bool, size), make([]bool, size)
	for i := range n.Games {
		if g := &n.Games[i]; g.Final == nil || g.Final.How() != scoring.Void {
			f.count(f.played, g.A, g.B)
		}
	}
	if n.Settings.Flow == session.Rounds {
		for _, round := range c.Rotation.Rounds[:planned] {
			for _, g := range round.Games {
				f.count(f.ahead, g.A, g.B)
			}
		}
	}
	f.wishes(c)
	r.facts = f
}

// firstAhead is the first round to come, nil without any. It tells a rotation from another one: rounds are never
// changed in their place.
func firstAhead(c ui.Context) *session.PlannedRound {
	if !c.Rotation.Ready || c.Rotation.Err != nil || len(c.Rotation.Rounds) == 0 {
		return nil
	}
	return &c.Rotation.Rounds[0]
}

// mapped lists who is here, has played or will, by name.
func mapped(c ui.Context, n *session.Night) []session.PersonID {
	played := map[session.PersonID]bool{}
	for i := range n.Games {
		for _, id := range n.Games[i].Players() {
			played[id] = true
		}
	}
	if c.Rotation.Ready && c.Rotation.Err == nil {
		for _, r := range c.Rotation.Rounds {
			for _, g := range r.Games {
				for _, id := range [4]session.PersonID{g.A[0], g.A[1], g.B[0], g.B[1]} {
					played[id] = true
				}
			}
		}
	}
	var out []session.PersonID
	for _, a := range n.Roll {
		if a.State == session.Here || a.State == session.Resting || played[a.Person] {
			out = append(out, a.Person)
		}
	}
	slices.SortStableFunc(out, func(a, b session.PersonID) int {
		return strings.Compare(strings.ToLower(c.Names.Full(a)), strings.ToLower(c.Names.Full(b)))
	})
	return out
}

// count adds a game to the tallies.
func (f *facts) count(to []tally, a, b session.Team) {
	seats := [4]session.PersonID{a[0], a[1], b[0], b[1]}
	for x, one := range seats {
		for y, other := range seats {
			i, known := f.place[one]
			j, also := f.place[other]
			if x == y || !known || !also {
				continue
			}
			if x/2 == y/2 {
				to[i*len(f.people)+j].partners++
			} else {
				to[i*len(f.people)+j].opponents++
			}
		}
	}
}

// wishes notes who shall never meet and who always plays together.
func (f *facts) wishes(c ui.Context) {
	for i, id := range f.people {
		p, _ := c.Club().Person(id)
		for _, other := range p.KeepApart {
			if j, ok := f.place[other]; ok {
				f.apart[i*len(f.people)+j], f.apart[j*len(f.people)+i] = true, true
			}
		}
		for _, t := range p.Together {
			if j, ok := f.place[t.With]; ok && t.Times == 0 {
				f.always[i*len(f.people)+j], f.always[j*len(f.people)+i] = true, true
			}
		}
	}
}

// at is how often two people were and will be together, with what is planned or without.
func (f *facts) at(i, j int, planned bool) tally {
	t := f.played[i*len(f.people)+j]
	if planned {
		a := f.ahead[i*len(f.people)+j]
		t.partners += a.partners
		t.opponents += a.opponents
	}
	return t
}
