// Package calling says what there is to read aloud: the games that were called last, and who sits out. It is a
// pure function of the night, the rounds to come and the time.
package calling

import (
	"slices"
	"time"

	"club/quadrille/session"
)

// Fresh is for how long a game of the rolling flow, or a game of a round, is worth reading out after its call.
// Who has not come to the court by then is asked for and not read out. Common practice, no source.
const Fresh = 5 * time.Minute

// Call is a game to be read out. Two of them are equal only as long as the call stands: other people on the
// court, or the same people called anew, are another call.
type Call struct {
	Game   session.GameID
	Court  session.CourtID
	A, B   session.Team
	Action uint64 // that called it
}

// Sitting is somebody who sits out the round.
type Sitting struct {
	Person session.PersonID
	Round  int             // of the next game, 0 where none is known
	Court  session.CourtID // of the next game
}

// List is what there is to read out.
type List struct {
	Round int // 0 in the rolling flow
	Calls []Call
	Out   []Sitting // of the round, in the order of the round
	Until time.Time // as long as it is fresh; zero where there is nothing
}

// Of is the list of a night. In rounds it is the newest round, as long as a game of it goes on; in the rolling
// flow it is what was called last, with whatever else was called within the time that calls are fresh. Games
// that are over are left out. Ahead are the rounds to come, nil where they are not known.
func Of(n *session.Night, ahead []session.PlannedRound, now time.Time) List {
	if n == nil {
		return List{}
	}
	var l List
	newest := uint64(0)
	for _, g := range n.Running() {
		newest = max(newest, g.Call)
	}
	for _, g := range n.Running() {
		if g.Call != newest && (g.Round > 0 || now.Sub(g.Called) >= Fresh) {
			continue
		}
		l.Calls = append(l.Calls, Call{g.ID, g.Court, g.A, g.B, g.Call})
		if g.Round > 0 {
			l.Round = g.Round
		}
		if until := g.Called.Add(Fresh); until.After(l.Until) {
			l.Until = until
		}
	}
	if l.Round > 0 && l.Round == len(n.Rounds) {
		for _, id := range n.Rounds[l.Round-1].Out {
			if n.Playing(id) == nil {
				l.Out = append(l.Out, sitting(l.Round, ahead, id))
			}
		}
	}
	return l
}

// sitting is somebody who sits out a round, with the next game.
func sitting(round int, ahead []session.PlannedRound, id session.PersonID) Sitting {
	for i, r := range ahead {
		g := slices.IndexFunc(r.Games, func(g session.PlannedGame) bool { return g.A.Has(id) || g.B.Has(id) })
		if g >= 0 {
			return Sitting{id, round + 1 + i, r.Games[g].Court}
		}
	}
	return Sitting{Person: id}
}
