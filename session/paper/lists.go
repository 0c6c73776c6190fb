package paper

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"club/quadrille/session/standings"
)

// CheckIn is the list for the desk: everybody in full names, with a box to tick, and rows for guests.
func CheckIn(n Night) Sheet {
	s := Sheet{Title: n.Title, Beside: 1}
	groups := slices.ContainsFunc(n.People, func(p Person) bool { return p.Group != "" })
	t := Table{Columns: []Column{{Head: "here", Tick: true}, {Head: "name"}}}
	if groups {
		t.Columns = append(t.Columns, Column{Head: "group"})
	}
	t.Columns = append(t.Columns, Column{Head: "when"}, Column{Head: "left", Tick: true})
	row := func(p Person) {
		cells := []string{"", p.Full}
		if p.Here {
			cells[0] = "yes"
		}
		if groups {
			cells = append(cells, p.Group)
		}
		t.Rows = append(t.Rows, append(cells, p.Note, ""))
	}
	for _, p := range n.People {
		if !p.Left {
			row(p)
		}
	}
	s.Under = []string{fmt.Sprintf("Check-in: %d on the list.", len(t.Rows))}
	for range guestRows {
		row(Person{Full: strings.Repeat("_", 30)})
	}
	s.Blocks = []Block{{Table: t}}
	return s
}

// guestRows is how many rows of the check-in list are for people who are not on it.
const guestRows = 6

// Standings is the table with what puts everybody before the next.
func Standings(n Night) Sheet {
	s := Sheet{Title: n.Title, Beside: 1}
	if len(n.Table) == 0 {
		s.Under = append(s.Under, "No game is finished yet.")
		return s
	}
	s.Under = append(s.Under, "Sorted by "+standings.Order+".")
	draws := slices.ContainsFunc(n.Table, func(r standings.Row) bool { return r.Draws > 0 })
	t := Table{Columns: []Column{{Head: "place", Right: true}, {Head: "name"}, {Head: "games", Right: true}, {Head: "won", Right: true}}}
	if draws {
		t.Columns = append(t.Columns, Column{Head: "drawn", Right: true})
	}
	t.Columns = append(t.Columns, Column{Head: "lost", Right: true}, Column{Head: "diff", Right: true}, Column{Head: "why", Long: true})
	for _, r := range n.Table {
		row := []string{strconv.Itoa(r.Rank), r.Name, strconv.Itoa(r.Games), strconv.Itoa(r.Wins)}
		if draws {
			row = append(row, strconv.Itoa(r.Draws))
		}
		t.Rows = append(t.Rows, append(row, strconv.Itoa(r.Losses), fmt.Sprintf("%+d", r.Difference), n.Why[r.Name]))
	}
	b := Block{Table: t}
	if n.Note != "" {
		b.Lines = []string{n.Note}
	}
	s.Blocks = []Block{b}
	return s
}

// Met is who met whom in the games of the sheet, called and planned, without void ones: for each person the partners and
// opponents, with how often where it was more than once, and who was not met.
func Met(n Night) Sheet {
	s := Sheet{Title: n.Title, Under: []string{"Who meets whom, in games that were called and games that are planned."}, Beside: 1}
	for _, p := range n.People {
		if p.Hidden {
			continue
		}
		with, against := map[string]int{}, map[string]int{}
		for _, r := range n.Rounds {
			for _, g := range r.Games {
				if own, other, ok := g.has(p.Name); ok && !g.Void {
					if partner := partnerOf(own, p.Name); partner != "" {
						with[partner]++
					}
					for _, name := range other {
						against[name]++
					}
				}
			}
		}
		t := Table{Columns: []Column{{}, {Long: true}}}
		for _, line := range []struct{ what, who string }{
			{"with", n.counted(with)}, {"against", n.counted(against)}, {"not met", n.unmet(p.Name, with, against)},
		} {
			if line.who != "" {
				t.Rows = append(t.Rows, []string{line.what, line.who})
			}
		}
		s.Blocks = append(s.Blocks, Block{Heading: p.Name, Table: t})
	}
	return s
}

// counted lists people in the order of the list, with how often where it was more than once.
func (n Night) counted(times map[string]int) string {
	var out []string
	for _, p := range n.People {
		switch k := times[p.Name]; {
		case p.Hidden || k == 0:
		case k == 1:
			out = append(out, p.Name)
		default:
			out = append(out, fmt.Sprintf("%s ×%d", p.Name, k))
		}
	}
	return strings.Join(out, ", ")
}

// fewUnmet is how many people who were not met are named: in a big hall most were not, and their number says it.
const fewUnmet = 12

// unmet lists who was in no game with somebody, or says how many where they are many.
func (n Night) unmet(name string, with, against map[string]int) string {
	var out []string
	for _, p := range n.People {
		if !p.Hidden && p.Name != name && with[p.Name]+against[p.Name] == 0 {
			out = append(out, p.Name)
		}
	}
	if len(out) > fewUnmet {
		return fmt.Sprintf("%d others", len(out))
	}
	return strings.Join(out, ", ")
}
