package session

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"iter"
	"strconv"
	"strings"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session/spreadsheet"
)

// ExportFormat is the version of the line format that ExportEvents writes.
const ExportFormat = 1

// ExportEvents writes all records as JSON Lines: first a line that names the format, then one
// record a line, oldest first, with the names as [Record] has them. The lines can be printed: what a
// terminal would act upon is escaped.
func ExportEvents(w io.Writer, records iter.Seq2[Record, error]) error {
	return exportEvents(w, 0, records)
}

// ExportCounted writes as [ExportEvents] does and says in the first line how many records follow, so that a
// reader sees when the end of the file is lost.
func ExportCounted(w io.Writer, count uint64, records iter.Seq2[Record, error]) error {
	return exportEvents(w, count, records)
}

func exportEvents(w io.Writer, count uint64, records iter.Seq2[Record, error]) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	head := struct {
		Quadrille string `json:"quadrille"`
		Format    int    `json:"format"`
		Records   uint64 `json:"records,omitempty"`
	}{"events", ExportFormat, count}
	if err := out.Encode(head); err != nil {
		return err
	}
	for r, err := range records {
		if err != nil {
			return err
		}
		r.Payload = printableJSON(r.Payload)
		if err := out.Encode(r); err != nil {
			return err
		}
	}
	return nil
}

// gamesHeader names the columns of ExportGames. The first six are the games CSV that `standings`
// and `rate` read; readers must not mind the others.
var gamesHeader = []string{"a1", "a2", "b1", "b2", "score_a", "score_b", "night", "round", "court", "how", "called", "finished", "format", "rules"}

// ExportGames writes the finished games of the given nights as CSV for a spreadsheet. Times are in
// the given zone.
func ExportGames(w io.Writer, club *Club, nights []*Night, zone *time.Location) error {
	out := csv.NewWriter(w)
	_ = out.Write(gamesHeader) // a failed write is kept by the writer and told by Error
	for _, n := range nights {
		for i := range n.Games {
			if g := &n.Games[i]; g.Final != nil {
				_ = out.Write(gameRow(club, n, g, zone))
			}
		}
	}
	out.Flush()
	return out.Error()
}

func gameRow(club *Club, n *Night, g *Game, zone *time.Location) []string {
	name := func(id PersonID) string {
		if id == "" {
			return ""
		}
		return spreadsheet.Text(club.Name(id))
	}
	round := ""
	if g.Round > 0 {
		round = strconv.Itoa(g.Round)
	}
	s := g.Final.Score()
	score := []string{strconv.Itoa(s.A), strconv.Itoa(s.B)}
	if g.Final.How() == scoring.Void {
		score = []string{"", ""}
	}
	return []string{
		name(g.A[0]), name(g.A[1]), name(g.B[0]), name(g.B[1]), score[0], score[1],
		n.Opened.In(zone).Format(time.DateOnly), round, spreadsheet.Text(string(g.Court)), ending(*g.Final),
		g.Called.In(zone).Format(time.TimeOnly), g.Finished.In(zone).Format(time.TimeOnly),
		g.Format.String(), g.Rules.String(),
	}
}

// ending is how a game ended. A retirement is told with the team that gave up, since the score need not tell.
func ending(f scoring.Final) string {
	if w, ok := f.Winner(); ok && f.How() == scoring.Retired {
		return f.How().String() + " " + strings.ToLower(w.Other().String())
	}
	return f.How().String()
}
