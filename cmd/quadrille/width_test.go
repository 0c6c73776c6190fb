package main

import (
	"bytes"
	"strings"
	"testing"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scoring/rating"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
	"club/quadrille/session/standings"
)

// long is a name as wide as the club takes it, of wide characters.
var long = strings.Repeat("漢字", 10)

// Whatever stands in a table, its lines fit the columns.
func TestTablesFitTheColumns(t *testing.T) {
	row := standings.Row{
		Rank: 199, Name: long, Games: 99, Wins: 33, Draws: 33, Losses: 33, PointsFor: 9999, PointsAgainst: 9999, Difference: -9999,
		WinShare: 0.5, Why: "won head to head against " + long,
	}
	report := simulation.Report{Players: 200, Games: 9999, Rounds: 99, Minutes: 720, Events: 99999}
	report.Queue = &simulation.Report{}
	doc := rotation.Document{Rounds: []rotation.Round{{
		Round: 100, Out: []string{long, long, long},
		Games: []rotation.Game{{Court: "100", A: []string{long, long}, B: []string{long, long}}, {Court: "7", A: []string{long}, B: []string{"Ann"}}},
	}}}
	person := rating.Person[string]{Who: long, Rating: rating.Rating{Mu: -12.34, Sigma: 8.3}, Games: 999, Group: 99}
	tests := map[string]func(*bytes.Buffer) error{
		"standings": func(b *bytes.Buffer) error { return printStandings(b, "Night 100", []standings.Row{row}, false) },
		"intervals": func(b *bytes.Buffer) error { return printStandings(b, "Night 100", []standings.Row{row}, true) },
		"league": func(b *bytes.Buffer) error {
			return printLeagueTable(b, 100, 50, session.Span{}, []standings.LeagueRow{{Rank: 199, Name: long, Nights: 100, Counts: 50, Points: 5000, Games: 1000, Wins: 999}})
		},
		"simulate": func(b *bytes.Buffer) error { return printReport(b, report) },
		"plan":     func(b *bytes.Buffer) error { return printRotation(b, doc) },
		"rate":     func(b *bytes.Buffer) error { return printRatings(b, rating.Table[string]{person}, false) },
		"ranges":   func(b *bytes.Buffer) error { return printRatings(b, rating.Table[string]{person}, true) },
	}
	for name, print := range tests {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			if err := print(&out); err != nil {
				t.Fatal(err)
			}
			for line := range strings.Lines(out.String()) {
				if w := width(strings.TrimRight(line, "\n")); w > columns {
					t.Errorf("%d columns: %s", w, line)
				}
			}
		})
	}
}

func TestFlowBreaksBetweenPieces(t *testing.T) {
	piece := strings.Repeat("x", 30)
	got := flow([]string{piece, piece, piece}, 2, 4)
	if want := "  " + piece + "    " + piece + "\n  " + piece; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := wrap("one two  three", 4); got != "one two three" {
		t.Errorf("%q", got)
	}
}

func TestPrintableKeepsLettersAndLinesOnly(t *testing.T) {
	if got := printable("Z\x1b[31moë\x1b]0;title\x07 \x7f\u0085漢\r\n"); got != "Zoë 漢\n" {
		t.Errorf("%q", got)
	}
}
