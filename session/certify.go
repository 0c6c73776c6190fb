package session

import (
	"time"

	"club/quadrille/scheduler"
)

// Certify judges in hindsight what was played so far: the bounds take as given who was there and
// how many games there were, and leave free who played with whom. Taking the played games as given
// too would find no fault with any of them. In the rolling flow sitting out means nothing, and the
// waits tell instead.
func Certify(club *Club, n *Night, now time.Time) scheduler.Certificate {
	d := newRollingDraw(club, n, now)
	if n.Settings.Flow == Rolling {
		return scheduler.CertifyGames(d.problem, d.games())
	}
	rounds := make([]scheduler.Round, len(n.Rounds))
	for i, r := range n.Rounds {
		rounds[i] = d.round(r)
	}
	d.problem.Met = d.rolled()
	return scheduler.Certify(d.problem, rounds)
}
