package paper

import (
	"fmt"
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
	s := Sheet{Title: n.Title, Large: true, Beside: 1}
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
				row = append(row, g.ending())
			}
			b.Table.Rows = append(b.Table.Rows, row)
		}
		if len(r.Out) > 0 {
			b.Lines = []string{"Sits out: " + strings.Join(r.Out, ", ")}
		}
		s.Blocks = append(s.Blocks, b)
	}
	if len(n.Rounds) == 0 {
		s.Under = append(s.Under, "No round is called or planned yet.")
	}
	return s
}

// ending is the score of a game, or that it is void.
func (g Game) ending() string {
	if g.Void {
		return "void"
	}
	return g.Score
}
