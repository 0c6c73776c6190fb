// Package rungs says how the ladder of a night stands: who is on which court, the top one first, where everybody
// came from, and who moves up and who down. It is a pure function of the night and the rounds to come.
package rungs

import (
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Step is one person on the ladder.
type Step struct {
	Person  session.PersonID
	Partner session.PersonID
	From    session.CourtID // of the person's last game before, empty for none
	Over    bool            // the game is over, and what follows is known
	Void    bool            // it counted for nothing: it moves nobody
	Level   bool            // it ended level: a lot decides who moves
	Won     bool
	Ours    int // points of the game
	Theirs  int
	Next    session.CourtID // of the next round, empty while it is not known, or for who sits out then
	Sits    bool            // the person has no game in the next round, which is known
}

// Rung is one court of the ladder.
type Rung struct {
	Court session.CourtID
	Steps []Step // four in doubles: the first team, then the other
}

// Ladder is how it stands after or in the newest round.
type Ladder struct {
	Round int
	Rungs []Rung             // the top court first
	Out   []session.PersonID // of that round
}

// Of is the ladder in the newest round of a night. Ahead are the rounds to come, nil where they are not known:
// on a ladder the next round is known when all scores are in. Ok is false before the first round.
func Of(n *session.Night, ahead []session.PlannedRound) (l Ladder, ok bool) {
	if n == nil || len(n.Rounds) == 0 {
		return Ladder{}, false
	}
	r := n.Rounds[len(n.Rounds)-1]
	l.Round, l.Out = r.Number, r.Out
	games := make([]*session.Game, 0, len(r.Games))
	for _, id := range r.Games {
		games = append(games, n.Game(id))
	}
	slices.SortStableFunc(games, func(a, b *session.Game) int { return order(n, a.Court) - order(n, b.Court) })
	for _, g := range games {
		rung := Rung{Court: g.Court}
		for _, s := range []scoring.Team{scoring.A, scoring.B} {
			for _, id := range g.Team(s) {
				if id != "" {
					rung.Steps = append(rung.Steps, step(n, g, s, id, ahead))
				}
			}
		}
		l.Rungs = append(l.Rungs, rung)
	}
	return l, true
}

// order is the place of a court on the ladder, the top one 0.
func order(n *session.Night, id session.CourtID) int {
	return slices.IndexFunc(n.Courts, func(c session.Court) bool { return c.ID == id })
}

func step(n *session.Night, g *session.Game, side scoring.Team, id session.PersonID, ahead []session.PlannedRound) Step {
	s := Step{Person: id, From: before(n, g, id)}
	for _, other := range g.Team(side) {
		if other != id {
			s.Partner = other
		}
	}
	if g.Final != nil {
		w, decided := g.Final.Winner()
		s.Over, s.Void = true, g.Final.How() == scoring.Void
		s.Won, s.Level = decided && w == side, !decided && !s.Void
		score := g.Final.Score()
		s.Ours, s.Theirs = score.A, score.B
		if side == scoring.B {
			s.Ours, s.Theirs = score.B, score.A
		}
	}
	if len(ahead) > 0 && len(n.Running()) == 0 {
		i := slices.IndexFunc(ahead[0].Games, func(p session.PlannedGame) bool { return p.A.Has(id) || p.B.Has(id) })
		if s.Sits = i < 0; !s.Sits {
			s.Next = ahead[0].Games[i].Court
		}
	}
	return s
}

// before is the court of a person's last game before another one.
func before(n *session.Night, g *session.Game, id session.PersonID) session.CourtID {
	for i := int(g.ID) - 2; i >= 0; i-- {
		if n.Games[i].Has(id) {
			return n.Games[i].Court
		}
	}
	return ""
}

// Way is how somebody goes on a ladder.
type Way int

// The ways.
const (
	Unknown Way = iota // the game goes on, or a lot decides
	Up
	Down
	Stays
)

// Goes is how a person goes after the game: to the court that is known, or else as winners and losers go.
func (l Ladder) Goes(rung int, s Step) Way {
	at := func(id session.CourtID) int {
		return slices.IndexFunc(l.Rungs, func(r Rung) bool { return r.Court == id })
	}
	switch to := at(s.Next); {
	case s.Next != "" && to >= 0:
		return compare(to, rung)
	case !s.Over || s.Level || s.Sits:
		return Unknown
	case s.Void:
		return Stays
	case s.Won && rung > 0:
		return Up
	case !s.Won && rung < len(l.Rungs)-1:
		return Down
	}
	return Stays
}

// ByRule is the rung to which the game alone sends a person, without regard to who sits out, comes in or is kept apart;
// false where the game moves nobody, or a lot does.
func (l Ladder) ByRule(rung int, s Step) (to int, ok bool) {
	switch {
	case !s.Over || s.Level || s.Void:
		return 0, false
	case s.Won:
		return max(0, rung-1), true
	}
	return min(rung+1, len(l.Rungs)-1), true
}

// Off is how many rungs below the one by rule a person goes on, negative above it; 0 where that is not known.
func (l Ladder) Off(rung int, s Step) int {
	rule, ok := l.ByRule(rung, s)
	to := slices.IndexFunc(l.Rungs, func(r Rung) bool { return r.Court == s.Next })
	if !ok || s.Next == "" || to < 0 {
		return 0
	}
	return to - rule
}

// Came is how a person came to the court, by the court of the game before.
func (l Ladder) Came(rung int, s Step) Way {
	from := slices.IndexFunc(l.Rungs, func(r Rung) bool { return r.Court == s.From })
	if s.From == "" || from < 0 {
		return Unknown
	}
	return compare(rung, from)
}

// compare is the way from one rung to another, the top one being 0.
func compare(to, from int) Way {
	switch {
	case to < from:
		return Up
	case to > from:
		return Down
	}
	return Stays
}
