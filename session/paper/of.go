package paper

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/public"
	"club/quadrille/session/standings"
)

// Of is what sheets of a night are made of. Ahead are its rounds to come, as [session.PlanRotation] gives them; times
// of day are those of zone. People are called as the club wants the hall to see them.
func Of(club *session.Club, n *session.Night, ahead []session.PlannedRound, zone *time.Location) Night {
	s := sourceOf(club, n, zone)
	out := Night{Title: s.title(), Rules: n.Settings.Scoring, People: s.people(), Rounds: s.rounds(0, ahead), Note: n.TableNote(), Card: club.Card(n.Venue)}
	out.Table, out.Why = s.table()
	return out
}

// Newest are the rounds of [Of] from the one that was called last.
func Newest(club *session.Club, n *session.Night, ahead []session.PlannedRound) []Round {
	return sourceOf(club, n, nil).rounds(max(0, len(n.Rounds)-1), ahead)
}

// source is a night with the names that it may be shown by.
type source struct {
	club   *session.Club
	n      *session.Night
	called func(session.PersonID) string
	hidden func(session.PersonID) bool
	zone   *time.Location // of the times that are told
}

func sourceOf(club *session.Club, n *session.Night, zone *time.Location) source {
	called, hidden := public.Names(club, n)
	return source{club: club, n: n, called: called, hidden: hidden, zone: zone}
}

func (s source) title() string {
	text := fmt.Sprintf("Night %d, %s", s.n.ID, s.n.Opened.In(s.zone).Format(time.DateOnly))
	if s.n.Name != "" {
		text += ": " + s.n.Name
	}
	return text
}

// people are all of the night by their full names.
func (s source) people() []Person {
	var out []Person
	for _, a := range s.n.Roll {
		p, _ := s.club.Person(a.Person)
		out = append(out, Person{
			Name: s.called(a.Person), Full: s.club.Name(a.Person), Group: p.Group, Hidden: s.hidden(a.Person),
			Here: a.State == session.Here || a.State == session.Resting, Note: s.stay(a),
			Left: a.State == session.Gone && s.n.IsOpen(),
		})
	}
	slices.SortStableFunc(out, func(a, b Person) int { return strings.Compare(strings.ToLower(a.Full), strings.ToLower(b.Full)) })
	return out
}

// stay says when somebody is announced to come and to go.
func (s source) stay(a session.Attendance) string {
	var parts []string
	if a.State == session.Expected {
		switch {
		case !a.Due.IsZero():
			parts = append(parts, "from "+a.Due.In(s.zone).Format("15:04"))
		case a.From > 0:
			parts = append(parts, fmt.Sprintf("from round %d", a.From))
		}
	}
	switch {
	case !a.Leaves.IsZero():
		parts = append(parts, "until "+a.Leaves.In(s.zone).Format("15:04"))
	case a.Last > 0:
		parts = append(parts, fmt.Sprintf("until round %d", a.Last))
	}
	return strings.Join(parts, ", ")
}

// rounds are those that were called, without so many of the first, and behind them those to come.
func (s source) rounds(without int, ahead []session.PlannedRound) []Round {
	out := s.played(without)
	for i, r := range ahead {
		round := Round{Number: len(s.n.Rounds) + i + 1, Out: s.names(r.Out)}
		full := make([]Game, len(r.Games))
		for j, g := range r.Games {
			round.Games = append(round.Games, s.game(g.Court, g.A, g.B, s.called))
			full[j] = s.game(g.Court, g.A, g.B, s.club.Name)
		}
		round.Mark = Mark(full)
		out = append(out, round)
	}
	return out
}

// played are the rounds that were called, without so many of the first, after them the games that belong to none.
func (s source) played(without int) []Round {
	var out []Round
	for _, r := range s.n.Rounds[without:] {
		round := Round{Number: r.Number, Out: s.names(r.Out)}
		for _, id := range r.Games {
			round.Games = append(round.Games, s.gameOf(s.n.Game(id)))
		}
		round.Mark = MarkOf(s.club, s.n, r)
		out = append(out, round)
	}
	var rolled Round
	for i := range s.n.Games {
		if g := &s.n.Games[i]; g.Round == 0 {
			rolled.Games = append(rolled.Games, s.gameOf(g))
		}
	}
	if len(rolled.Games) > 0 {
		out = append(out, rolled)
	}
	return out
}

// MarkOf is the mark of a round that was called.
func MarkOf(club *session.Club, n *session.Night, r session.CalledRound) string {
	full := make([]Game, len(r.Games))
	for i, id := range r.Games {
		g := n.Game(id)
		full[i] = source{}.game(g.Court, g.A, g.B, club.Name)
	}
	return Mark(full)
}

// gameOf is a game that was called.
func (s source) gameOf(g *session.Game) Game {
	out := s.game(g.Court, g.A, g.B, s.called)
	if g.Final != nil {
		score := g.Final.Score()
		out.Played, out.Points, out.Void = true, [2]int{score.A, score.B}, g.Final.How() == scoring.Void
		out.How = out.ended(*g.Final)
	}
	return out
}

// ended says how a game ended that was not played to its end, who retired, and who won where the points do not tell.
func (g Game) ended(f scoring.Final) string {
	if f.How() == scoring.Played || f.How() == scoring.Void {
		return ""
	}
	winner, won := f.Winner()
	teams := map[scoring.Team][]string{scoring.A: g.A, scoring.B: g.B}
	if won && f.How() == scoring.Retired {
		return Team(teams[winner.Other()]) + " retired"
	}
	ahead := scoring.A
	if g.Points[1] > g.Points[0] {
		ahead = scoring.B
	}
	if !won || winner == ahead && g.Points[0] != g.Points[1] {
		return f.How().String()
	}
	return f.How().String() + ", won by " + Team(teams[winner])
}

func (s source) game(court session.CourtID, a, b session.Team, name func(session.PersonID) string) Game {
	team := func(t session.Team) (out []string) {
		for _, id := range t {
			if id != "" {
				out = append(out, name(id))
			}
		}
		return out
	}
	return Game{Court: string(court), A: team(a), B: team(b)}
}

// names are the names of people.
func (s source) names(ids []session.PersonID) []string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = s.called(id)
	}
	return out
}

// table is the table of the night without those who are hidden, and why each row stands before the next.
func (s source) table() ([]standings.Row, map[string]string) {
	unseen := map[string]bool{}
	for _, a := range s.n.Roll {
		if s.hidden(a.Person) {
			unseen[s.called(a.Person)] = true
		}
	}
	rows, why := s.n.Standings(s.called), map[string]string{}
	for i, p := range s.n.Partings(s.called) {
		if i+1 < len(rows) {
			why[rows[i].Name] = p.Words(rows[i+1].Name)
		}
	}
	return slices.DeleteFunc(rows, func(r standings.Row) bool { return unseen[r.Name] }), why
}
