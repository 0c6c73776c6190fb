package person

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// record is how somebody did with each partner and against each opponent, on all nights of the club.
func record(c ui.Context, who session.Person) ui.Dialog {
	parts := []struct {
		title string
		all   []session.Company
	}{
		{"Partners", session.With(c.Club(), who.ID, session.Span{})},
		{"Opponents", session.Against(c.Club(), who.ID, session.Span{})},
	}
	return dialog.NewWhole(who.Name+": with and against whom, on all nights", func(c ui.Context) []string {
		var out []string
		for _, p := range parts {
			out = append(out, "")
			out = append(out, companyLines(c, p.title, p.all)...)
		}
		return append(append(out, ""), line.Wrap("Best first by the lower end of the range (Wilson), which holds the true share 95 times of 100; ranges that overlap tell nobody apart.", c.Width)...)
	})
}

// companyLines are a table of those of whom something can be said, and the number of the others with how many games
// they had.
func companyLines(c ui.Context, title string, all []session.Company) []string {
	row := func(name, games, won, share, between string) string {
		const names = 30
		return line.Cut(line.Fit(name, names)+line.Right(games, 7)+line.Right(won, 7)+line.Right(share, 8)+line.Right(between, 14), c.Width)
	}
	out := []string{c.Theme.Title.Render(row(title, "games", "won", "share", "95 % range"))}
	few := 0
	for _, p := range all {
		if !p.Enough() {
			few++
			continue
		}
		out = append(out, row(c.Names.Full(p.B), fmt.Sprint(p.Games), fmt.Sprintf("%.4g", p.Won), line.Percent(p.Share()), line.Range(p.Low, p.High)))
	}
	if few > 0 {
		text := fmt.Sprintf("%d with fewer than %d games: too few to say anything of.", few, session.EnoughGames)
		out = append(out, c.Theme.Dim.Render(line.Cut(text, c.Width)))
	}
	if len(all) == 0 {
		out = append(out, c.Theme.Dim.Render("nobody yet"))
	}
	return out
}
