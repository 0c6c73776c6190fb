package session

import (
	"time"

	"club/quadrille/scoring"
)

// GameTime is how long a game has been played, without holds: until now while it goes on, and until its end
// once it is over.
func (n *Night) GameTime(g *Game, now time.Time) time.Duration {
	switch {
	case g.Final != nil:
		now = g.Finished
	case n.Hold != nil && n.Hold.Since.Before(now):
		now = n.Hold.Since // what the hold takes is added to Stood at its end
	}
	return max(0, now.Sub(g.Called)-g.Stood)
}

// LastOn is the last finished game of a court, as long as no round was called after it; nil if there is
// none.
func (n *Night) LastOn(id CourtID) *Game {
	g := n.FinishedOn(id)
	if k := len(n.Rounds); g != nil && k > 0 && len(n.Rounds[k-1].Games) > 0 && g.ID < n.Rounds[k-1].Games[0] {
		return nil
	}
	return g
}

// FinishedOn is the newest game of a court that is over, nil if there is none.
func (n *Night) FinishedOn(id CourtID) *Game {
	for i := len(n.Games) - 1; i >= 0; i-- {
		if g := &n.Games[i]; g.Court == id && g.Final != nil {
			return g
		}
	}
	return nil
}

// OutOfTime tells whether the clock may have ended a game: its time limit or the night's closing time had
// come when it was over, or has now. Its score is then taken as it stands.
func (n *Night) OutOfTime(g *Game, now time.Time) bool {
	limit := time.Duration(g.Rules.Minutes) * time.Minute
	if limit > 0 && n.GameTime(g, now) >= limit {
		return true
	}
	if g.Final != nil {
		now = g.Finished
	}
	return g.Final != nil && g.Final.How() == scoring.Timed || !n.Settings.Closing.IsZero() && now.After(n.Settings.Closing)
}
