package session

import "club/quadrille/session/standings"

// League adds the tables of all nights up; the best so many nights of each person count, 0 for all.
func League(club *Club, best int) []standings.LeagueRow {
	var nights [][]standings.Row
	for _, n := range club.Nights {
		if rows := Standings(club, n); len(rows) > 0 {
			nights = append(nights, rows)
		}
	}
	return standings.League(nights, best)
}
