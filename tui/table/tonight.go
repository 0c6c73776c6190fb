package table

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/standings"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// wideTable is from where on there is room to say why somebody stands where.
const wideTable = 110

// tonightSheet is the standings of the newest night.
func tonightSheet(c ui.Context) sheet {
	s := sheet{
		head:  cells(c, "place", "name", "games", "won", "lost", "for", "against", "diff", "win share", "why here"),
		empty: "No game is over yet. The table fills with the first score.",
		foot:  "Order: " + standings.Order + ".",
	}
	n := c.Club().Night()
	if n == nil {
		return s
	}
	s.note = n.TableNote()
	for _, r := range session.Places(c.Club(), n) {
		text := rowText(c, r.Row)
		s.people = append(s.people, slices.Concat(r.People, []session.PersonID{""})[0])
		if r.Rank == 1 {
			text = c.Theme.Strong.Render(text)
		}
		s.rows = append(s.rows, text)
	}
	return s
}

// Night is the standings of any night as a page to read.
func Night(c ui.Context, n *session.Night) []string {
	out := []string{c.Theme.Dim.Render(cells(c, "place", "name", "games", "won", "lost", "for", "against", "diff", "win share", "why here"))}
	for _, r := range session.Standings(c.Club(), n) {
		out = append(out, rowText(c, r))
	}
	if len(out) == 1 {
		return []string{"No game of this night is over."}
	}
	return append(append(out, ""), line.Wrap(n.TableNote()+" Order: "+standings.Order+".", c.Width)...)
}

func rowText(c ui.Context, r standings.Row) string {
	won := fmt.Sprint(r.Wins)
	if r.Draws > 0 {
		won += fmt.Sprintf("+%dd", r.Draws)
	}
	return cells(c, fmt.Sprint(r.Rank), r.Name, fmt.Sprint(r.Games), won, fmt.Sprint(r.Losses),
		fmt.Sprint(r.PointsFor), fmt.Sprint(r.PointsAgainst), fmt.Sprintf("%+d", r.Difference), line.Percent(r.WinShare), r.Why)
}

// cells lays one line of the standings out.
func cells(c ui.Context, place, name, games, won, lost, pf, pa, diff, share, why string) string {
	const numbers = 6 + 7 + 6 + 6 + 6 + 9 + 6 + 11
	text := line.Right(place, 5) + " " + line.Fit(name, nameWidth(c, numbers)) + line.Right(games, 7) + line.Right(won, 6) + line.Right(lost, 6) +
		line.Right(pf, 6) + line.Right(pa, 9) + line.Right(diff, 6) + line.Right(share, 11)
	if c.Width >= wideTable {
		text += "   " + why
	}
	return text
}

// nameWidth is the room for names beside so many cells of numbers.
func nameWidth(c ui.Context, numbers int) int { return max(10, min(40, c.Width-numbers-1)) }

func plural(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}
