package person

import (
	"slices"

	"club/quadrille/scoring/rating"
	"club/quadrille/session"
	"club/quadrille/session/evening"
	"club/quadrille/session/hall"
	"club/quadrille/tui/ui"
)

// facts are what the page shows, worked out beside the drawing.
type facts struct {
	known   bool // the club knows the person
	person  session.Person
	row     string // which of a row it is
	night   *session.Night
	open    bool // the night goes on
	took    bool // the person has a part in it
	evening evening.Evening
	place   *session.Place // in the table, nil without a game that counts
	places  int            // lines of the table
	bench   int            // the place on the bench from 1, 0 elsewhere
	waiting int            // people on the bench
	turn    session.Wait   // until the next game, of somebody on the bench
	why     []string       // why the person is not called next; only in the rolling flow
	brief   []string       // the same in fewer words

	rated ratings
}

// tables are what pages of all persons share, worked out once for a ledger.
type tables struct {
	of      *session.Ledger
	places  []session.Place
	ratings rating.Table[session.PersonID]
}

func tablesOf(l *session.Ledger) tables {
	t := tables{of: l, places: l.Places()}
	t.ratings, _ = session.Ratings(l.Club(), rating.Club()) // without one a page shows none
	return t
}

// ratings are the course of the person's rating.
type ratings struct {
	start      rating.Rating
	nights     []session.RatedNight
	now        rating.Person[session.PersonID] // as the table of ratings has it
	has        bool
	place, all int
}

// Survey implements ui.Surveyor.
func (p *Page) Survey(c ui.Context) {
	if p.survey(c); p.facts.known {
		p.facts.told(whyNotNext(c, p.id))
	}
}

// survey is Survey but for why the person is not called next.
func (p *Page) survey(c ui.Context) {
	var f facts
	club := c.Club()
	if p.tables.of != c.Ledger {
		p.tables = tablesOf(c.Ledger)
	}
	f.person, f.known = club.Person(p.id)
	if !f.known {
		p.facts = f
		return
	}
	f.rated = rate(club, f.person, p.tables.ratings)
	f.row = p.place(c)
	if f.night = club.Night(); f.night != nil {
		f.open = f.night.IsOpen()
		f.evening, f.took = evening.Of(club, f.night, ahead(c), c.Now, p.id)
		f.stands(p.tables.places)
		f.waits(c)
	}
	p.facts = f
}

// ahead is what is known of the rounds to come, or of the next game of the rolling flow.
func ahead(c ui.Context) []session.PlannedRound {
	n := c.Night()
	switch {
	case n == nil:
		return nil
	case n.Settings.Flow == session.Rolling:
		if len(c.Hall.Next) == 0 {
			return nil
		}
		return []session.PlannedRound{{Games: c.Hall.Next}}
	case c.Rotation.Ready && c.Rotation.Err == nil:
		return c.Rotation.Rounds
	}
	return nil
}

// stands finds the person's line in the table.
func (f *facts) stands(places []session.Place) {
	f.places = len(places)
	if i := slices.IndexFunc(places, func(p session.Place) bool { return slices.Contains(p.People, f.person.ID) }); i >= 0 {
		f.place = &places[i]
	}
}

// waits says about somebody on the bench when the person plays.
func (f *facts) waits(c ui.Context) {
	f.waiting = len(c.Hall.Bench)
	for i, w := range c.Hall.Bench {
		if w.Person == f.person.ID {
			f.bench, f.turn = i+1, w.Turn
		}
	}
}

// reason is why somebody is not called next, in full and in fewer words; nil where there is nothing to say.
type reason struct{ why, brief []string }

// told takes the reason.
func (f *facts) told(r reason) { f.why, f.brief = r.why, r.brief }

// whyNotNext works out why somebody on the bench of the rolling flow is not called next.
func whyNotNext(c ui.Context, id session.PersonID) reason {
	n := c.Night()
	waits := slices.ContainsFunc(c.Hall.Bench, func(w hall.Waiting) bool { return w.Person == id })
	if n == nil || !waits || n.Settings.Flow != session.Rolling || n.LastCall {
		return reason{}
	}
	w, err := c.Ledger.WhyNot(id, c.Now)
	switch {
	case err != nil:
		why := []string{"Nobody is called: " + err.Error() + "."}
		return reason{why, why}
	case !w.IsNext:
		return reason{w.Words(c.Names.Short), w.Brief(c.Names.Short)}
	}
	return reason{}
}

// rate follows the rating of somebody over the nights.
func rate(club *session.Club, p session.Person, table rating.Table[session.PersonID]) ratings {
	m := rating.Club()
	r := ratings{start: m.New()}
	if p.Level > 0 {
		r.start = m.Level(p.Level)
	}
	nights, err := session.RatingOver(club, m, p.ID)
	if err != nil {
		return r
	}
	r.nights, r.all = nights, len(table)
	for i, line := range table {
		if line.Who == p.ID {
			r.now, r.place, r.has = line, i+1, true
		}
	}
	return r
}
