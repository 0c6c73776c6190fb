package table

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// partners works out who played well together: only those of whom something can be said have a row.
func (f *facts) partners(c ui.Context) {
	all := session.Partners(c.Club(), f.span)
	f.company, f.companied = nil, true
	for _, p := range all {
		if p.Enough() {
			f.company = append(f.company, p)
		}
	}
	f.unsaid = len(all) - len(f.company)
}

// partnerSheet lists who played well together.
func (f *facts) partnerSheet(c ui.Context) sheet {
	few := ""
	if f.unsaid > 0 {
		few = fmt.Sprintf("%d pairs with fewer than %d games: too few to say anything of. ", f.unsaid, session.EnoughGames)
	}
	s := sheet{
		head:  companyRow(c, "", "partners", "games", "won", "share", "95 % range"),
		empty: fmt.Sprintf("%s: nobody has had %d games with one partner yet; of fewer nothing is said, since any share could be luck.", capital(f.span.Words()), session.EnoughGames),
		foot:  capital(f.span.Words()) + ". " + few + "Best first by the lower end of the range (Wilson); ranges that overlap tell nobody apart.",
	}
	s.count = len(f.company)
	for _, p := range f.company {
		s.people = append(s.people, p.A)
	}
	s.row = func(i int) string {
		p := f.company[i]
		return companyRow(c, fmt.Sprint(i+1), c.Names.Full(p.A)+" & "+c.Names.Full(p.B), fmt.Sprint(p.Games), fmt.Sprintf("%.4g", p.Won),
			line.Percent(p.Share()), line.Range(p.Low, p.High))
	}
	return s
}

func companyRow(c ui.Context, place, names, games, won, share, between string) string {
	const numbers = 6 + 7 + 7 + 8 + 14
	return line.Right(place, 5) + " " + line.Fit(names, nameWidth(c, numbers)) + line.Right(games, 7) + line.Right(won, 7) + line.Right(share, 8) + line.Right(between, 14)
}

// capital is a sentence with a capital letter at its beginning.
func capital(text string) string { return string(text[0]-'a'+'A') + text[1:] }
