package paper

import (
	"fmt"
	"slices"
	"strings"
)

// Personal has a strip for each person, to cut: in which round on which court, with whom and against whom.
func Personal(n Night) Sheet {
	s := Sheet{Title: n.Title, Beside: 2}
	for _, p := range n.People {
		if p.Left {
			continue
		}
		b := Block{Heading: p.Full, Table: Table{Columns: []Column{{Right: true}, {}, {}}}, Cut: true}
		for _, r := range n.Rounds {
			b.Table.Rows = append(b.Table.Rows, r.of(p.Name)...)
		}
		if p.Note != "" {
			b.Lines = append(b.Lines, "Here "+p.Note+".")
		}
		if len(b.Table.Rows) == 0 {
			b.Lines = append(b.Lines, "No game is called or planned yet.")
		}
		s.Blocks = append(s.Blocks, b)
	}
	return s
}

// of are the rows of a person's strip that a round gives.
func (r Round) of(name string) (rows [][]string) {
	number := ""
	if r.Number > 0 {
		number = fmt.Sprint(r.Number)
	}
	for _, g := range r.Games {
		own, other, ok := g.has(name)
		if !ok {
			continue
		}
		text := "v " + Team(other)
		if partner := partnerOf(own, name); partner != "" {
			text = "with " + partner + " " + text
		}
		if ending := g.ending(slices.Contains(g.A, name)); ending != "" {
			text += ": " + ending
		}
		rows = append(rows, []string{number, "court " + g.Court, text})
	}
	for _, out := range r.Out {
		if out == name {
			rows = append(rows, []string{number, "sits out", ""})
		}
	}
	return rows
}

// partnerOf is the other name of a team, "" in singles.
func partnerOf(team []string, name string) string {
	for _, other := range team {
		if other != name {
			return other
		}
	}
	return ""
}

// terms says how games are scored, "" where a rotation does not know.
func (n Night) terms() string {
	if n.Rules.To == 0 {
		return ""
	}
	return strings.ToUpper(n.Rules.String()[:1]) + n.Rules.String()[1:]
}
