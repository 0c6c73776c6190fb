package session

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"
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
