package session

import (
	"time"

	"club/quadrille/scheduler"
)

// Certify judges in hindsight what was played so far: the bounds take as given who was there and
// how many games there were, and leave free who played with whom. Taking the played games as given
// too would find no fault with any of them. Where there were no rounds sitting out means nothing, and
// the waits tell instead.
func Certify(club *Club, n *Night, now time.Time) scheduler.Certificate {
	d := newRollingDraw(club, n, now)
	d.problem.Format = n.playedFormat(d.problem.Format)
	d.wishes()
	if len(n.Rounds) == 0 {
		return scheduler.CertifyGames(d.problem, d.games())
	}
	rounds := make([]scheduler.Round, len(n.Rounds))
	for i, r := range n.Rounds {
		rounds[i] = d.round(r)
	}
	d.problem.Met = d.rolled()
	return scheduler.Certify(d.problem, rounds)
}

// playedFormat is the format by whose bounds the games of the night are judged: the one under which all
// of them were called, or rotating where they were called under several, since that asks least of teams
// and its bounds hold for any. With no game yet it is the given one.
func (n *Night) playedFormat(none scheduler.Format) scheduler.Format {
	if len(n.Games) == 0 {
		return none
	}
	for i := range n.Games {
		if n.Games[i].Format != n.Games[0].Format {
			return scheduler.Rotating
		}
	}
	return n.Games[0].Format
}
