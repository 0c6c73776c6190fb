package table

import (
	"club/quadrille/scoring/rating"
	"club/quadrille/session"
	"club/quadrille/session/rungs"
	"club/quadrille/session/standings"
	"club/quadrille/tui/ui"
)

// facts are what the tables show, worked out beside the drawing: each when it is shown, and only once for a
// state.
type facts struct {
	of     *session.Ledger
	night  *session.Night
	places []session.Place
	games  map[session.PersonID][]session.GameID // of the night, in the order of their calls
	stages int                                   // rounds of the course
	course map[string][]int                      // the place of each line after each of them
	least  int                                   // games that a line should have
	wide   float64                               // the largest point difference
	note   string

	climb   rungs.Ladder
	climbed bool

	league  []standings.LeagueRow
	leaders []session.PersonID // of the league, in its order
	best    int
	leagued bool

	span      session.Span // that league and partners were worked out for
	company   []session.Company
	unsaid    int // pairs of whom nothing can be said yet
	companied bool

	ratings rating.Table[session.PersonID]
	wrong   error // why there are no ratings
	rated   bool
}

// Survey implements ui.Surveyor.
func (t *Table) Survey(c ui.Context) {
	f := &t.facts
	if f.of != c.Ledger {
		*f = facts{of: c.Ledger, night: c.Club().Night()}
		f.standings(c)
	}
	var ahead []session.PlannedRound
	if c.Rotation.Ready && c.Rotation.Err == nil {
		ahead = c.Rotation.Rounds
	}
	f.climb, f.climbed = rungs.Of(f.night, ahead)
	if f.span != t.span {
		f.span, f.leagued, f.companied = t.span, false, false
	}
	switch t.shown(c) {
	case partners:
		if !f.companied {
			f.partners(c)
		}
	case league:
		if !f.leagued || f.best != c.Club().Best {
			f.league, f.leaders, f.best, f.leagued = session.League(c.Club(), c.Club().Best, f.span), nil, c.Club().Best, true
			for _, r := range f.league {
				f.leaders = append(f.leaders, named(c, r.Name))
			}
		}
	case ratings:
		if !f.rated {
			f.ratings, f.wrong = session.Ratings(c.Club(), rating.Club())
			f.rated = true
		}
	}
}

// standings works tonight's table out.
func (f *facts) standings(c ui.Context) {
	if f.night == nil {
		return
	}
	f.places = c.Ledger.Places()
	f.stages, f.course = session.Course(c.Club(), f.night)
	f.least, f.note = session.LeastGames(f.places), f.night.TableNote()
	for _, p := range f.places {
		f.wide = max(f.wide, float64(max(p.Difference, -p.Difference)))
	}
	f.games = map[session.PersonID][]session.GameID{}
	for i := range f.night.Games {
		g := &f.night.Games[i]
		for _, id := range g.Players() {
			f.games[id] = append(f.games[id], g.ID)
		}
	}
}
