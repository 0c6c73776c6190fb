package standings

import (
	"encoding/csv"
	"io"
	"strconv"

	"club/quadrille/session/spreadsheet"
)

// WriteCSV writes a table for a spreadsheet, with the names of the JSON form in its header. The last
// two columns are the 95 % range of the win share, see [Interval].
func WriteCSV(w io.Writer, rows []Row) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{ // a failed write is kept by the writer and told by Error
		"rank", "name", "games", "wins", "draws", "losses", "points_for", "points_against", "difference", "win_share", "why", "low", "high",
	})
	for _, r := range rows {
		low, high := r.Interval()
		_ = out.Write([]string{
			strconv.Itoa(r.Rank), spreadsheet.Text(r.Name), strconv.Itoa(r.Games), strconv.Itoa(r.Wins), strconv.Itoa(r.Draws),
			strconv.Itoa(r.Losses), strconv.Itoa(r.PointsFor), strconv.Itoa(r.PointsAgainst), strconv.Itoa(r.Difference),
			decimal(r.WinShare, 4), spreadsheet.Text(r.Why), decimal(low, 4), decimal(high, 4),
		})
	}
	out.Flush()
	return out.Error()
}

// WriteLeagueCSV writes a league for a spreadsheet, with the names of the JSON form in its header.
func WriteLeagueCSV(w io.Writer, rows []LeagueRow) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"rank", "name", "nights", "counts", "points", "games", "wins"})
	for _, r := range rows {
		_ = out.Write([]string{
			strconv.Itoa(r.Rank), spreadsheet.Text(r.Name), strconv.Itoa(r.Nights), strconv.Itoa(r.Counts),
			decimal(r.Points, 2), strconv.Itoa(r.Games), strconv.Itoa(r.Wins),
		})
	}
	out.Flush()
	return out.Error()
}

func decimal(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
