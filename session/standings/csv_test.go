package standings

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"club/quadrille/session/spreadsheet"
)

// Whatever a name begins with, a spreadsheet shows it and computes nothing.
func TestTablesOpenRightInASpreadsheet(t *testing.T) {
	for _, name := range []string{"=SUM(A1)", "+Plus", "-Minus", "@At", "\tTab", "\rReturn", "'=Quoted", "Ada, Countess", `"Q"`} {
		row := Row{Rank: 2, Name: name, Games: 6, Wins: 4, Draws: 1, Losses: 1, PointsFor: 60, PointsAgainst: 70, Difference: -10, WinShare: 0.75}
		row.Why = "won head to head against " + name
		league := LeagueRow{Rank: 1, Name: name, Nights: 3, Counts: 2, Points: 133.33, Games: 18, Wins: 9}
		for form, write := range map[string]func(*bytes.Buffer) error{
			"2,,6,4,1,1,60,70,-10,0.7500,,0.3648,0.9400": func(b *bytes.Buffer) error { return WriteCSV(b, []Row{row}) },
			"1,,3,2,133.33,18,9":                         func(b *bytes.Buffer) error { return WriteLeagueCSV(b, []LeagueRow{league}) },
		} {
			var out bytes.Buffer
			if err := write(&out); err != nil {
				t.Fatal(err)
			}
			lines, err := csv.NewReader(&out).ReadAll()
			if err != nil || len(lines) != 2 || len(lines[0]) != len(lines[1]) {
				t.Fatalf("%d lines, %v", len(lines), err)
			}
			cells := lines[1]
			if strings.IndexByte("=+-@\t\r", cells[1][0]) >= 0 {
				t.Errorf("%q is taken for a formula", cells[1])
			}
			if got := spreadsheet.Plain(cells[1]); got != name {
				t.Errorf("%q came back as %q", name, got)
			}
			cells[1] = ""
			if len(cells) > 10 {
				cells[10] = ""
			}
			if got := strings.Join(cells, ","); got != form {
				t.Errorf("the line is %s, want %s", got, form)
			}
		}
	}
}
