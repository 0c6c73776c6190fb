package session

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

func TestExportGamesOpensRightInASpreadsheet(t *testing.T) {
	d, _, clock := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	for _, name := range []string{"=SUM(A1)", "+Plus", "-Minus", "@At"} {
		must(t, d, AddGuest{Name: name})
	}
	playRound(t, d, clock)
	var out bytes.Buffer
	if err := ExportGames(&out, d.Ledger().Club(), d.Ledger().Club().Nights, time.UTC); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	if got := strings.Join(rows[0][:6], ","); got != "a1,a2,b1,b2,score_a,score_b" {
		t.Errorf("header %s", got)
	}
	for _, cell := range rows[1][:4] {
		if !strings.HasPrefix(cell, "'") {
			t.Errorf("cell %q would be taken for a formula", cell)
		}
	}
	if rows[1][4] != "11" || rows[1][5] != "0" || rows[1][6] != "2026-11-20" {
		t.Errorf("row %v", rows[1])
	}
}

func TestExportEventsIsOneRecordALine(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	playRound(t, d, clock)
	var out bytes.Buffer
	if err := ExportEvents(&out, log.Records(1)); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	if len(lines) != int(log.Last())+1 || lines[0] != `{"quadrille":"events","format":1}` {
		t.Fatalf("%d lines for %d records, the first %s", len(lines), log.Last(), lines[0])
	}
	again := &MemoryLog{}
	for _, text := range lines[1:] {
		var r Record
		if err := json.Unmarshal([]byte(text), &r); err != nil {
			t.Fatal(err)
		}
		if err := again.Append([]Record{r}); err != nil {
			t.Fatal(err)
		}
	}
	checkReplay(t, d, again)
}

// TestExportedGamesTellWhatTheyWerePlayedUnder: each its own format and rules, whatever tonight's are, and no
// round for a game of the rolling flow.
func TestExportedGamesTellWhatTheyWerePlayedUnder(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	playRound(t, d, clock)
	must(t, d, changed(d, func(s *Settings) {
		s.Flow, s.Format, s.Scoring = Rolling, scheduler.Pairs, scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2}
	}))
	must(t, d, BeginPlay{}, FinishGame{Game: 2, Final: final(t, 11, 3)})
	must(t, d, changed(d, func(s *Settings) { s.Format = scheduler.Rotating }))
	var out strings.Builder
	if err := ExportGames(&out, d.Ledger().Club(), d.Ledger().Club().Nights, time.UTC); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(out.String())).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%v\n%s", err, out.String())
	}
	for i, want := range [][]string{{"1", "rotating", "side-out to 11, win by 2"}, {"", "pairs", "rally to 11, win by 2"}} {
		if r := rows[i+1]; r[7] != want[0] || r[12] != want[1] || r[13] != want[2] {
			t.Errorf("game %d is exported as %q, want round, format and rules %q", i+1, r, want)
		}
	}
}
