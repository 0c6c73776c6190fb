package session

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/scoring"
)

// Turns is what somebody has had of the night. A game that was void is neither a game nor a sit-out, and
// so is one that the person left to a substitute; the rotation makes up for both as for a sit-out.
type Turns struct {
	Games      int // played or going on
	SatOut     int // rounds on the bench
	Void       int // games that counted for nothing
	Unfinished int // games that a substitute went into for the person
}

// TurnsOf counts a person's turns.
func (n *Night) TurnsOf(id PersonID) Turns {
	t := Turns{SatOut: n.SatOut(id)}
	for i := range n.Games {
		g := &n.Games[i]
		void := g.Final != nil && g.Final.How() == scoring.Void
		switch {
		case g.Has(id) && void:
			t.Void++
		case g.Has(id):
			t.Games++
		case slices.Contains(g.Replaced, id):
			t.Unfinished++
		}
	}
	return t
}

// TurnsOfAll is TurnsOf of everybody who has had any, counted in one go.
func (n *Night) TurnsOfAll() map[PersonID]Turns {
	all := map[PersonID]Turns{}
	count := func(id PersonID, add func(*Turns)) {
		t := all[id]
		add(&t)
		all[id] = t
	}
	for i := range n.Games {
		g := &n.Games[i]
		void := g.Final != nil && g.Final.How() == scoring.Void
		for _, id := range g.Players() {
			if void {
				count(id, func(t *Turns) { t.Void++ })
			} else {
				count(id, func(t *Turns) { t.Games++ })
			}
		}
		for k, id := range g.Replaced {
			if !g.Has(id) && !slices.Contains(g.Replaced[:k], id) {
				count(id, func(t *Turns) { t.Unfinished++ })
			}
		}
	}
	for _, r := range n.Rounds {
		for _, id := range r.Out {
			if n.LeftIn(r, id) == nil {
				count(id, func(t *Turns) { t.SatOut++ })
			}
		}
	}
	return all
}

// Also says what else there was beside games and sit-outs, empty for nothing.
func (t Turns) Also() string {
	var parts []string
	if t.Void > 0 {
		parts = append(parts, fmt.Sprintf("%d void", t.Void))
	}
	if t.Unfinished > 0 {
		parts = append(parts, fmt.Sprintf("%d unfinished", t.Unfinished))
	}
	return strings.Join(parts, ", ")
}

// SatOut counts the rounds that a person sat out tonight. Who was called and left the game to a substitute
// did not sit that round out.
func (n *Night) SatOut(id PersonID) int {
	k := 0
	for _, r := range n.Rounds {
		if slices.Contains(r.Out, id) && n.LeftIn(r, id) == nil {
			k++
		}
	}
	return k
}

// LeftIn is the game of a round that a person was called to and left to a substitute, nil if there is none.
func (n *Night) LeftIn(r CalledRound, id PersonID) *Game {
	for _, g := range r.Games {
		if g := n.Game(g); slices.Contains(g.Replaced, id) {
			return g
		}
	}
	return nil
}
