package rotation

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"club/quadrille/session/paper"
)

// Paper is what sheets of a rotation that was planned ahead are made of.
func (d *Document) Paper() paper.Night {
	n := paper.Night{Title: fmt.Sprintf("Rotation of %d people on %d courts in %d rounds", len(d.Players), len(d.Courts), len(d.Rounds))}
	known := map[string]Person{}
	for _, p := range d.Roster {
		known[p.Name] = p
	}
	for _, name := range d.Players {
		p := known[name]
		n.People = append(n.People, paper.Person{Name: name, Full: name, Group: p.Group, Note: p.stay()})
	}
	slices.SortStableFunc(n.People, func(a, b paper.Person) int {
		return cmp.Compare(strings.ToLower(a.Full), strings.ToLower(b.Full))
	})
	for _, r := range d.Rounds {
		round := paper.Round{Number: r.Round, Out: d.outOf(r, known)}
		for _, g := range r.Games {
			round.Games = append(round.Games, paper.Game{Court: g.Court, A: g.A, B: g.B})
		}
		round.Mark = paper.Mark(round.Games)
		n.Rounds = append(n.Rounds, round)
	}
	return n
}

// outOf is who is there in a round and sits out, also where the document leaves that out.
func (d *Document) outOf(r Round, known map[string]Person) []string {
	if r.Out != nil {
		return r.Out
	}
	var out []string
	for _, name := range d.Players {
		p := known[name]
		here := r.Round >= p.Arrive && (p.Leave == 0 || r.Round <= p.Leave)
		plays := slices.ContainsFunc(r.Games, func(g Game) bool { return slices.Contains(g.A, name) || slices.Contains(g.B, name) })
		if here && !plays {
			out = append(out, name)
		}
	}
	return out
}

// stay says in which rounds somebody is there who is not there all night.
func (p Person) stay() string {
	var parts []string
	if p.Arrive > 1 {
		parts = append(parts, fmt.Sprintf("from round %d", p.Arrive))
	}
	if p.Leave > 0 {
		parts = append(parts, fmt.Sprintf("until round %d", p.Leave))
	}
	return strings.Join(parts, ", ")
}
