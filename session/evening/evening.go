// Package evening tells one person's night: where the person is now, what comes next, what was played
// and sat out, whom the person has met, and how that compares with everybody else. It is a pure function
// of the club, the night, the rounds to come and the time.
package evening

import (
	"cmp"
	"slices"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Kind is what a part of an evening was or will be.
type Kind uint8

// The kinds of a part.
const (
	Played  Kind = iota // a game that is over
	OnCourt             // a game that goes on
	SatOut              // here, without a game in a round
	Away                // not in the rotation when the round was called
	Planned             // a game to come
	WillSit             // will have no game in a round to come
	Left                // a game of a round that a substitute went into for the person
)

// Part is one round of an evening, or one game of the rolling flow.
type Part struct {
	Kind     Kind
	Round    int // 0 in the rolling flow
	Court    session.CourtID
	Partner  session.PersonID // empty in singles
	Against  session.Team
	Ours     int // points, of a game that has some
	Theirs   int
	How      scoring.How // of a game that is over
	Won      bool        // of a game that is over and has a winner
	Level    bool        // of a game that is over and has none
	Called   time.Time
	Finished time.Time

	Of, Places int       // how many people a round that was sat out had, and for how many it had places
	About      time.Time // when a round to come is likely to be called; zero where nobody can tell
}

// Meeting is how often the person met another one.
type Meeting struct {
	With     session.PersonID
	Partner  int // games together, played or on court
	Opponent int // games against each other, played or on court
	Ahead    int // games together or against each other in the rounds to come
	Together int // those of Ahead as partners
}

// Count is how much somebody has played, to compare.
type Count struct {
	Person  session.PersonID
	Games   int
	SatOut  int
	Present time.Duration
	Wait    time.Duration // the present wait, 0 for who is on court or not in the rotation
}

// Evening is one person's night.
type Evening struct {
	Person     session.Person
	Attendance session.Attendance
	Parts      []Part    // in the order of the night, rounds to come last
	Met        []Meeting // everybody else of tonight, most often met first, then by name
	Counts     []Count   // everybody in the rotation, of a night that is over everybody who came, and the person
	Wishes     []Wish
}

// Of tells the evening of a person. Ahead are the rounds to come, nil when they are not known; in the rolling
// flow it is one round with the game that is called next. Ok is false for somebody who has no part in the
// night.
func Of(club *session.Club, n *session.Night, ahead []session.PlannedRound, now time.Time, id session.PersonID) (Evening, bool) {
	a := n.Attending(id)
	p, known := club.Person(id)
	if a == nil || !known {
		return Evening{}, false
	}
	e := Evening{Person: p, Attendance: *a}
	e.Parts = append(past(n, id), coming(n, ahead, now, id)...)
	e.Met = met(club, n, ahead, id)
	e.Counts = counts(club, n, now, id)
	e.Wishes = wishes(club, n, p, e.Met)
	return e, true
}

// Now is the game that the person is in, nil when there is none.
func (e Evening) Now() *Part { return e.first(OnCourt) }

// Next is what comes next: a game, or a round to sit out; nil when it is not known.
func (e Evening) Next() *Part { return e.first(Planned, WillSit) }

// NextGame is the next game to come, nil when none is known.
func (e Evening) NextGame() *Part { return e.first(Planned) }

func (e Evening) first(kinds ...Kind) *Part {
	i := slices.IndexFunc(e.Parts, func(p Part) bool { return slices.Contains(kinds, p.Kind) })
	if i < 0 {
		return nil
	}
	return &e.Parts[i]
}

// MetOf is how many of the others of tonight the person has met, and how many others there are.
func (e Evening) MetOf() (met, others int) {
	for _, m := range e.Met {
		if m.Partner+m.Opponent > 0 {
			met++
		}
	}
	return met, len(e.Met)
}

// Place is where the person stands among Counts by sit-outs: how many have sat out more often, and how
// many as often.
func (e Evening) Place() (more, same int) {
	own := 0
	for _, c := range e.Counts {
		if c.Person == e.Person.ID {
			own = c.SatOut
		}
	}
	for _, c := range e.Counts {
		switch {
		case c.Person == e.Person.ID:
		case c.SatOut > own:
			more++
		case c.SatOut == own:
			same++
		}
	}
	return more, same
}

// past lists the parts that have been, in their order.
func past(n *session.Night, id session.PersonID) []Part {
	var out []Part
	round := 0
	for i := range n.Games {
		g := &n.Games[i]
		for round < g.Round { // the rounds before this game in which the person had none
			round++
			if p, ok := without(n, n.Rounds[round-1], id); ok {
				out = append(out, p)
			}
		}
		if g.Has(id) {
			out = append(out, played(g, id))
		}
	}
	for round < len(n.Rounds) {
		round++
		if p, ok := without(n, n.Rounds[round-1], id); ok {
			out = append(out, p)
		}
	}
	return out
}

// without is the part of a round in which the person had no game; false if there was one.
func without(n *session.Night, r session.CalledRound, id session.PersonID) (Part, bool) {
	for _, gid := range r.Games {
		if n.Game(gid).Has(id) {
			return Part{}, false
		}
	}
	p := Part{Kind: Away, Round: r.Number, Called: r.Called}
	if slices.Contains(r.Out, id) {
		p.Kind = SatOut
		for _, gid := range r.Games {
			p.Places += len(n.Game(gid).Players())
		}
		p.Of = p.Places + len(r.Out)
		if g := n.LeftIn(r, id); g != nil {
			p.Kind, p.Court = Left, g.Court
		}
	}
	return p, true
}

// played is a game that was called, as the person sees it.
func played(g *session.Game, id session.PersonID) Part {
	us, them := seats(g.A, g.B, id)
	p := Part{
		Kind: OnCourt, Round: g.Round, Court: g.Court, Partner: partner(us, id), Against: them,
		Called: g.Called, Finished: g.Finished,
	}
	score, first := g.State.Score, g.A.Has(id)
	if g.Final != nil {
		p.Kind, p.How, score = Played, g.Final.How(), g.Final.Score()
		w, ok := g.Final.Winner()
		p.Won, p.Level = ok && (w == scoring.A) == first, !ok && p.How != scoring.Void
	}
	if p.Ours, p.Theirs = score.A, score.B; !first {
		p.Ours, p.Theirs = score.B, score.A
	}
	return p
}

// coming lists the parts of the rounds to come, without the games that go on.
func coming(n *session.Night, ahead []session.PlannedRound, now time.Time, id session.PersonID) []Part {
	var out []Part
	begins := n.RoundsBegin(len(ahead), now)
	for i, r := range ahead {
		number := len(n.Rounds) + 1 + i
		if n.Settings.Flow == session.Rolling {
			number = 0
		}
		about := time.Time{}
		if begins[i].Known {
			about = now.Add(begins[i].In)
		}
		if slices.Contains(r.Out, id) && number > 0 {
			out = append(out, Part{Kind: WillSit, Round: number, About: about})
			continue
		}
		for _, g := range r.Games {
			if g.A.Has(id) || g.B.Has(id) {
				us, them := seats(g.A, g.B, id)
				out = append(out, Part{Kind: Planned, Round: number, Court: g.Court, Partner: partner(us, id), Against: them, About: about})
			}
		}
	}
	return out
}

// seats are the team of a person and the other one.
func seats(a, b session.Team, id session.PersonID) (us, them session.Team) {
	if a.Has(id) {
		return a, b
	}
	return b, a
}

func partner(us session.Team, id session.PersonID) session.PersonID {
	if us[0] == id {
		return us[1]
	}
	return us[0]
}

// met counts the person's games with and against everybody else of tonight. Void games were no meeting.
func met(club *session.Club, n *session.Night, ahead []session.PlannedRound, id session.PersonID) []Meeting {
	index := map[session.PersonID]int{}
	var out []Meeting
	for _, a := range n.Roll {
		if a.Person != id && (a.State != session.Gone || !a.Arrived.IsZero()) {
			index[a.Person] = len(out)
			out = append(out, Meeting{With: a.Person})
		}
	}
	each := func(a, b session.Team, count func(m *Meeting, together bool)) {
		if !a.Has(id) && !b.Has(id) {
			return
		}
		us, them := seats(a, b, id)
		for _, s := range []session.Team{us, them} {
			for _, other := range s {
				if i, ok := index[other]; ok {
					count(&out[i], s == us)
				}
			}
		}
	}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final != nil && g.Final.How() == scoring.Void {
			continue
		}
		each(g.A, g.B, func(m *Meeting, together bool) {
			if together {
				m.Partner++
			} else {
				m.Opponent++
			}
		})
	}
	for _, r := range ahead {
		for _, g := range r.Games {
			each(g.A, g.B, func(m *Meeting, together bool) {
				m.Ahead++
				if together {
					m.Together++
				}
			})
		}
	}
	slices.SortStableFunc(out, func(x, y Meeting) int {
		if met := cmp.Or(cmp.Compare(y.Partner+y.Opponent, x.Partner+x.Opponent), cmp.Compare(y.Partner, x.Partner)); met != 0 {
			return met
		}
		return cmp.Compare(club.Name(x.With), club.Name(y.With))
	})
	return out
}

// counts lists everybody in the rotation, of a night that is over everybody who came, and the person: most
// sit-outs first, then fewest games.
func counts(club *session.Club, n *session.Night, now time.Time, id session.PersonID) []Count {
	var out []Count
	turns := n.TurnsOfAll()
	for _, a := range n.Roll {
		in := a.State == session.Here || !n.IsOpen() && !a.Arrived.IsZero()
		if !in && a.Person != id {
			continue
		}
		c := Count{Person: a.Person, Games: turns[a.Person].Games, SatOut: turns[a.Person].SatOut, Present: a.PresentFor(now)}
		if n.IsOpen() && a.State == session.Here && n.Playing(a.Person) == nil {
			c.Wait = a.Waited(now)
		}
		out = append(out, c)
	}
	slices.SortStableFunc(out, func(x, y Count) int {
		if had := cmp.Or(cmp.Compare(y.SatOut, x.SatOut), cmp.Compare(x.Games, y.Games)); had != 0 {
			return had
		}
		return cmp.Compare(club.Name(x.Person), club.Name(y.Person))
	})
	return out
}
