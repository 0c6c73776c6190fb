package simulation

import (
	"slices"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
)

// A night small enough to measure by hand: one court from 19:00 to 20:00, five people.
func TestMeasuresByHand(t *testing.T) {
	at := func(minute int) time.Time { return time.Date(2026, 1, 8, 19, minute, 0, 0, time.UTC) }
	final, err := scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}.Final(11, 7, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	game := func(from, to int, a, b, c, d session.PersonID) session.Game {
		return session.Game{Court: "1", A: session.Team{a, b}, B: session.Team{c, d}, Called: at(from), Finished: at(to), Final: &final}
	}
	n := &session.Night{
		Courts:   []session.Court{{ID: "1", Open: true}},
		Settings: session.Settings{Closing: at(60), Format: scheduler.Rotating},
		Games:    []session.Game{game(0, 20, "ann", "bob", "cas", "dan"), game(24, 54, "eve", "ann", "bob", "cas")},
		Closed:   at(65),
		Roll: []session.Attendance{
			{Person: "ann", Arrived: at(-10), Present: 75 * time.Minute},
			{Person: "bob", Arrived: at(-5), Present: 70 * time.Minute},
			{Person: "cas", Arrived: at(0), Present: 65 * time.Minute},
			{Person: "dan", Arrived: at(-2), Present: 32 * time.Minute},
			{Person: "eve", Arrived: at(6), Present: 59 * time.Minute},
			{Person: "fay"}, // announced and never came
		},
	}
	w := playOf(n)
	if stays := stay(n, 3); waits(stays, w) != (Waits{Median: 4, P95: 30.8, Max: 34, Open: 1}) {
		t.Errorf("waits %+v, if dan stays to the end", waits(stays, w))
	}
	if got, want := w.idle(n), 10.0/60; got < want-1e-9 || got > want+1e-9 {
		t.Errorf("idle %v, want %v", got, want)
	}
	// ann, bob and cas waited 4 minutes, eve 18, and dan 10 in vain, until going home; nobody waited for the
	// first call.
	if got, want := waits(n, w), (Waits{Median: 4, P95: 16.4, Max: 18, Open: 1}); got != want {
		t.Errorf("waits %+v, want %+v", got, want)
	}
	// Games an hour: 2, 2, 2; dan 1 in half an hour, 2; eve 1 in 54 minutes, 10/9.
	sum := 2.0*4 + 10.0/9
	jain := sum * sum / (5 * (4*4 + 100.0/81))
	people, got := shares(n, w)
	if want := (Games{Min: 1, Max: 2, Jain: decimals(jain, 4)}); people != 5 || got != want {
		t.Errorf("%d people %+v, want 5 and %+v", people, got, want)
	}
}

// stay is the night in which somebody of the roll stays to the end.
func stay(n *session.Night, i int) *session.Night {
	later := *n
	later.Roll = slices.Clone(n.Roll)
	later.Roll[i].Present = n.Closed.Sub(n.Roll[i].Arrived)
	return &later
}

func TestQuantiles(t *testing.T) {
	tests := []struct {
		values []float64
		share  float64
		want   float64
	}{{nil, 0.5, 0}, {[]float64{3}, 0.95, 3}, {[]float64{1, 2}, 0.5, 1.5}, {[]float64{1, 2, 3, 4, 5}, 0.95, 4.8}, {[]float64{1, 2, 3}, 1, 3}}
	for _, tt := range tests {
		if got := quantile(tt.values, tt.share); got < tt.want-1e-9 || got > tt.want+1e-9 {
			t.Errorf("quantile %v of %v is %v, want %v", tt.share, tt.values, got, tt.want)
		}
	}
}
