package evening

import (
	"slices"

	"club/quadrille/session"
)

// Wish is what a person asks for about another one, or another one about the person, with how far tonight
// has kept it.
type Wish struct {
	With   session.PersonID
	Theirs bool // the other one asks for it
	Apart  bool // never on one court
	NoTeam bool // never in one team; where neither is asked for, partners are
	Times  int  // games as partners that are asked for, 0 for all of them
	Done   int  // games as partners, of Apart games on one court, played or on court
	Games  int  // what the person has played in all
	Ahead  int  // such games in the rounds to come
	Here   bool // the other one is in the rotation
}

// Kept tells whether tonight has been as it was asked for, as far as it has gone.
func (w Wish) Kept() bool {
	switch {
	case w.Apart, w.NoTeam:
		return w.Done == 0
	case w.Times > 0:
		return w.Done >= w.Times
	}
	return w.Done == w.Games
}

// wishes lists the person's own, and who asks to be the person's partner. Who asks to be kept apart from the
// person is not told.
func wishes(club *session.Club, n *session.Night, p session.Person, met []Meeting) []Wish {
	add := func(out []Wish, w Wish) []Wish {
		if a := n.Attending(w.With); a != nil {
			w.Here = a.State == session.Here
		}
		w.Games = n.GamesOf(p.ID)
		if i := slices.IndexFunc(met, func(m Meeting) bool { return m.With == w.With }); i >= 0 {
			w.Done, w.Ahead = met[i].Partner, met[i].Together
			if w.Apart {
				w.Done, w.Ahead = met[i].Partner+met[i].Opponent, met[i].Ahead
			}
		}
		return append(out, w)
	}
	var out []Wish
	for _, t := range p.Together {
		out = add(out, Wish{With: t.With, Times: t.Times})
	}
	for _, other := range p.KeepApart {
		out = add(out, Wish{With: other, Apart: true})
	}
	for _, other := range p.NotPartner {
		out = add(out, Wish{With: other, NoTeam: true})
	}
	for _, a := range n.Roll {
		other, _ := club.Person(a.Person)
		for _, t := range other.Together {
			asked := slices.ContainsFunc(p.Together, func(own session.Together) bool { return own.With == other.ID })
			if t.With == p.ID && !asked {
				out = add(out, Wish{With: other.ID, Theirs: true, Times: t.Times})
			}
		}
	}
	return out
}
