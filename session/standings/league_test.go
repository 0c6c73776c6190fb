package standings

import (
	"encoding/json"
	"math"
	"os"
	"testing"
)

func TestLeagueCountsTheBestNights(t *testing.T) {
	night := func(shares map[string]float64) []Row {
		var out []Row
		for name, s := range shares {
			out = append(out, Row{Name: name, Games: 4, Wins: int(4 * s), WinShare: s})
		}
		return out
	}
	nights := [][]Row{
		night(map[string]float64{"ann": 1, "bob": 0.5, "cat": 0.5}),
		night(map[string]float64{"ann": 0.25, "bob": 0.75}),
		night(map[string]float64{"bob": 0.5, "cat": 0.75}),
	}
	rows := League(nights, 2)
	want := []LeagueRow{
		{Rank: 1, Name: "bob", Nights: 3, Counts: 2, Points: 125, Games: 12, Wins: 7},
		{Rank: 2, Name: "ann", Nights: 2, Counts: 2, Points: 125, Games: 8, Wins: 5},
		{Rank: 2, Name: "cat", Nights: 2, Counts: 2, Points: 125, Games: 8, Wins: 5},
	}
	for i := range want {
		if rows[i] != want[i] {
			t.Errorf("place %d: %+v, want %+v", i+1, rows[i], want[i])
		}
	}
	if all := League(nights, 0); all[0].Points != 175 {
		t.Errorf("counting all nights bob has %v points, want 175", all[0].Points)
	}
}

// The check values are Wilson's interval recomputed in Python; two of them stand to four digits in
// R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872. See testdata/wilson.json.
func TestWilsonInterval(t *testing.T) {
	raw, err := os.ReadFile("testdata/wilson.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Cases []struct {
			Wins, Games  int
			Lower, Upper float64
		} `json:"wilson_95"`
	}
	if err := json.Unmarshal(raw, &file); err != nil || len(file.Cases) == 0 {
		t.Fatalf("%d cases, %v", len(file.Cases), err)
	}
	for _, c := range file.Cases {
		low, high := Interval(float64(c.Wins), c.Games)
		if math.Abs(low-c.Lower) > 1e-12 || math.Abs(high-c.Upper) > 1e-12 {
			t.Errorf("%d of %d: %v to %v, want %v to %v", c.Wins, c.Games, low, high, c.Lower, c.Upper)
		}
	}
}
