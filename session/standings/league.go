package standings

import (
	"cmp"
	"slices"
	"strings"
)

// LeagueRow is one line of the table over many nights.
type LeagueRow struct {
	Rank   int     `json:"rank"` // equal people share one
	Name   string  `json:"name"`
	Nights int     `json:"nights"` // attended, with at least one game that counts
	Counts int     `json:"counts"` // nights that count: the best ones
	Points float64 `json:"points"` // of the nights that count: 100 times the win share of each, added up
	Games  int     `json:"games"`  // of all nights
	Wins   int     `json:"wins"`
}

// League adds the tables of several nights up. Each night is worth 100 times the win share, and
// the best so many nights count; 0 counts all. Who is level is parted by nights attended and then
// by the share of all games won; who is level still shares the rank. This way of counting is the
// club's own choice (common practice, no source): attendance pays until the best nights are full.
func League(nights [][]Row, best int) []LeagueRow {
	points, rows := map[string][]float64{}, map[string]*LeagueRow{}
	for _, night := range nights {
		for _, r := range night {
			if rows[r.Name] == nil {
				rows[r.Name] = &LeagueRow{Name: r.Name}
			}
			rows[r.Name].Nights++
			rows[r.Name].Games += r.Games
			rows[r.Name].Wins += r.Wins
			points[r.Name] = append(points[r.Name], 100*r.WinShare)
		}
	}
	out := make([]LeagueRow, 0, len(rows))
	for name, r := range rows {
		p := points[name]
		slices.SortFunc(p, func(a, b float64) int { return cmp.Compare(b, a) })
		if best > 0 {
			p = p[:min(best, len(p))]
		}
		r.Counts = len(p)
		for _, v := range p {
			r.Points += v
		}
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b LeagueRow) int {
		return cmp.Or(leagueOrder(a, b), strings.Compare(a.Name, b.Name))
	})
	for i := range out {
		if out[i].Rank = i + 1; i > 0 && leagueOrder(out[i-1], out[i]) == 0 {
			out[i].Rank = out[i-1].Rank
		}
	}
	return out
}

// leagueOrder compares two lines, the better one first.
func leagueOrder(a, b LeagueRow) int {
	return cmp.Or(
		cmp.Compare(b.Points, a.Points),
		cmp.Compare(b.Nights, a.Nights),
		ratio{b.Wins, b.Games}.compare(ratio{a.Wins, a.Games}),
	)
}
