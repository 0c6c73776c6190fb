package table

import (
	"fmt"
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// leagueSheet adds the nights up.
func (f *facts) leagueSheet(c ui.Context, best int) sheet {
	row := func(place, name, points, counts, nights, games, wins string) string {
		const numbers = 6 + 9 + 9 + 9 + 8 + 7
		return line.Right(place, 5) + " " + line.Fit(name, nameWidth(c, numbers)) + line.Right(points, 9) +
			line.Right(counts, 9) + line.Right(nights, 9) + line.Right(games, 8) + line.Right(wins, 7)
	}
	counting := "All nights count"
	if best > 0 {
		counting = fmt.Sprintf("The best %d nights count", best)
	}
	s := sheet{
		head:  row("place", "name", "points", "counted", "nights", "games", "won"),
		empty: "The league begins with the first score of the first night.",
		foot:  capital(f.span.Words()) + ". " + counting + "; a night is worth 100 times the win share. Then nights attended, then the share of all games.",
	}
	if !f.span.IsZero() {
		s.empty = capital(f.span.Words()) + ": no game counts. w chooses others."
	}
	s.count = len(f.league)
	s.people = f.leaders
	s.row = func(i int) string {
		r := f.league[i]
		return row(fmt.Sprint(r.Rank), r.Name, fmt.Sprintf("%.1f", r.Points),
			fmt.Sprint(r.Counts), fmt.Sprint(r.Nights), fmt.Sprint(r.Games), fmt.Sprint(r.Wins))
	}
	return s
}

// named is the person of a line of the league, the first of a set pair, empty where nobody is called that.
func named(c ui.Context, name string) session.PersonID {
	if p, ok := c.Club().Named(name); ok {
		return p.ID
	}
	first, _, _ := strings.Cut(name, " & ")
	p, _ := c.Club().Named(first)
	return p.ID
}

// ratingSheet rates everybody by all games of all nights.
func (f *facts) ratingSheet(c ui.Context) sheet {
	row := func(place, name, value, between, games, note string) string {
		const numbers = 6 + 9 + 16 + 7 + 22
		return line.Right(place, 5) + " " + line.Fit(name, nameWidth(c, numbers)) + line.Right(value, 9) +
			line.Right(between, 16) + line.Right(games, 7) + "  " + note
	}
	s := sheet{
		head:  row("", "name", "rating", "95 % range", "games", ""),
		empty: "Ratings begin with the first score.",
		foot: "From all games of all nights, half by their points; 25 is a newcomer. The 95 % range holds the true skill " +
			"19 times of 20.",
	}
	if f.wrong != nil {
		s.empty = "No ratings: " + f.wrong.Error()
		return s
	}
	s.count = len(f.ratings)
	for _, p := range f.ratings {
		s.people = append(s.people, p.Who)
	}
	s.row = func(i int) string {
		p, note := f.ratings[i], ""
		if !p.Comparable {
			note = "not yet comparable"
		}
		low, high := p.Interval()
		return row(fmt.Sprint(i+1), c.Names.Full(p.Who), fmt.Sprintf("%.1f", p.Mu),
			fmt.Sprintf("%.1f to %.1f", low, high), fmt.Sprint(p.Games), note)
	}
	return s
}

// nameWidth is the room for names beside so many cells of numbers.
func nameWidth(c ui.Context, numbers int) int { return max(10, min(40, c.Width-numbers-1)) }
