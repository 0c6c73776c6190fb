package paper

import (
	"fmt"
	"slices"
	"strings"
)

// heading is how a round is called.
func (r Round) heading() string {
	if r.Number == 0 {
		return "Games"
	}
	return fmt.Sprintf("Round %d", r.Number)
}

// Rotation is the sheet for the wall: who plays whom on which court, round by round, and who sits out.
func Rotation(n Night) Sheet {
	s := Sheet{Title: n.Title, Large: true, Beside: 1, Code: n.Phones}
	if n.Phones != "" {
		s.Under = append(s.Under, "Tonight on your phone, in the Wi-Fi of the desk: "+n.Phones)
	}
	for _, r := range n.Rounds {
		b := Block{Heading: r.heading(), Mark: r.Mark, Table: Table{Columns: []Column{{Right: true}, {}, {}, {}}}}
		scored := false
		for _, g := range r.Games {
			scored = scored || g.Played
		}
		if scored {
			b.Table.Columns = append(b.Table.Columns, Column{Right: true})
		}
		for _, g := range r.Games {
			row := []string{g.Court, Team(g.A), "v", Team(g.B)}
			if scored {
				row = append(row, g.ending(true))
			}
			b.Table.Rows = append(b.Table.Rows, row)
		}
		if out := n.shown(r.Out); len(out) > 0 {
			b.Lines = []string{"Sits out: " + strings.Join(out, ", ")}
		}
		s.Blocks = append(s.Blocks, b)
	}
	if len(n.Rounds) == 0 {
		s.Under = append(s.Under, "No round is called or planned yet.")
	}
	return s
}

// ending is the score of a game that is over, for team A first or last, or that it is void; "" before.
func (g Game) ending(aFirst bool) string {
	own, other := g.Points[0], g.Points[1]
	if !aFirst {
		own, other = other, own
	}
	switch {
	case !g.Played:
		return ""
	case g.Void:
		return "void"
	}
	return strings.TrimSpace(fmt.Sprintf("%d-%d %s", own, other, g.How))
}

// shown are those of some names whom the hall sees in lists.
func (n Night) shown(names []string) []string {
	hidden := func(name string) bool {
		return slices.ContainsFunc(n.People, func(p Person) bool { return p.Hidden && p.Name == name })
	}
	return slices.DeleteFunc(slices.Clone(names), hidden)
}
