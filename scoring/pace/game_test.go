package pace_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

func readJSON(t *testing.T, file string, into any) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}

// near fails the test when got is further from want than the tolerance, relative for values above 1.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*max(1, math.Abs(want))) {
		t.Errorf("%s is %.15g, want %.15g", what, got, want)
	}
}

func distribution(t *testing.T, r scoring.Rules, a, b float64) pace.Game {
	t.Helper()
	g, err := pace.Distribution(r, a, b)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// formats are the rules that the check values name.
func rulesOf(format string, to int) scoring.Rules {
	r := scoring.Rules{To: to, WinBy: 2}
	switch format {
	case "rally_scoring":
		r.Scoring = scoring.RallyScoring
	case "singles_sideout":
		r.Singles = true
	}
	return r
}

type equalRow struct {
	Format    string
	To        int
	P         float64            `json:"p_server_wins_rally"`
	Mean      float64            `json:"expected_rallies"`
	SD        float64            `json:"sd_rallies"`
	Least     int                `json:"min_rallies"`
	Quantiles map[string]int     `json:"quantiles_rallies"`
	First     float64            `json:"p_first_server_wins"`
	Points    float64            `json:"expected_total_points"`
	Margin    float64            `json:"expected_margin"`
	Scores    map[string]float64 `json:"score_distribution_top12_first_server_first"`
	Margins   map[string]float64 `json:"margin_distribution"`
}

// DeFord and Ethier 2023: every row of the table of equal teams.
func TestEqualTeams(t *testing.T) {
	var file struct {
		Rows []equalRow `json:"equal_teams"`
	}
	readJSON(t, "game_length.json", &file)
	if len(file.Rows) != 72 {
		t.Fatalf("%d rows, want 72", len(file.Rows))
	}
	for _, row := range file.Rows {
		t.Run(fmt.Sprintf("%s to %d, %v", row.Format, row.To, row.P), func(t *testing.T) {
			g := distribution(t, rulesOf(row.Format, row.To), row.P, row.P)
			near(t, "mean", g.Mean, row.Mean, 1e-11)
			near(t, "sd", g.SD, row.SD, 1e-9)
			near(t, "chance of the first side", g.WinsA, row.First, 1e-12)
			near(t, "points", g.Points, row.Points, 1e-11)
			if g.Chance(row.Least) == 0 || g.Chance(row.Least-1) != 0 {
				t.Errorf("the shortest game has %v and %v, want %d rallies", g.Chance(row.Least-1), g.Chance(row.Least), row.Least)
			}
			for q, want := range row.Quantiles {
				share, err := strconv.ParseFloat(q, 64)
				if err != nil {
					t.Fatal(err)
				}
				if got := g.Quantile(share); got != want {
					t.Errorf("quantile %s is %d, want %d", q, got, want)
				}
			}
			checkScores(t, g, row)
		})
	}
}

func checkScores(t *testing.T, g pace.Game, row equalRow) {
	t.Helper()
	for text, want := range row.Scores {
		var s scoring.Score
		if _, err := fmt.Sscanf(text, "%d-%d", &s.A, &s.B); err != nil {
			t.Fatal(err)
		}
		o, _ := g.Of(s)
		near(t, "chance of "+text, o.P, want, 1e-12)
	}
	margins, margin := map[string]float64{}, 0.0
	for _, o := range g.Outcomes {
		d := max(o.Score.A-o.Score.B, o.Score.B-o.Score.A)
		margins[strconv.Itoa(d)] += o.P
		margin += o.P * float64(d)
	}
	near(t, "margin", margin, row.Margin, 1e-7) // the negligible scores are missing from the sum
	for d, want := range row.Margins {
		near(t, "chance of a margin of "+d, margins[d], want, 1e-7)
	}
}

func TestUnequalTeams(t *testing.T) {
	type game struct {
		First   float64 `json:"p_stronger_wins_when_first"`
		Second  float64 `json:"p_stronger_wins_when_second"`
		Mean    float64 `json:"expected_rallies"`
		SD      float64 `json:"sd_rallies"`
		Lead    float64 `json:"expected_point_difference_stronger_minus_weaker"`
		Between float64 `json:"expected_margin_abs"`
	}
	var file struct {
		Unequal struct {
			Rows []struct {
				A        float64 `json:"p_a"`
				B        float64 `json:"p_b"`
				Eleven   game    `json:"to11"`
				Fifteen  game    `json:"to15"`
				Distance float64 `json:"d"`
			}
		} `json:"unequal_teams_doubles_sideout"`
	}
	readJSON(t, "game_length.json", &file)
	if len(file.Unequal.Rows) != 13 {
		t.Fatalf("%d rows, want 13", len(file.Unequal.Rows))
	}
	for _, row := range file.Unequal.Rows {
		for to, want := range map[int]game{11: row.Eleven, 15: row.Fifteen} {
			t.Run(fmt.Sprintf("to %d, %v apart", to, row.Distance), func(t *testing.T) {
				r := scoring.Rules{To: to, WinBy: 2}
				g := distribution(t, r, row.A, row.B)
				near(t, "chance of the stronger, first", g.WinsA, want.First, 1e-12)
				near(t, "mean", g.Mean, want.Mean, 1e-11)
				near(t, "sd", g.SD, want.SD, 1e-9)
				second, err := pace.Remaining(scoring.Start(r, scoring.B), row.A, row.B)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "chance of the stronger, second", second.WinsA, want.Second, 1e-12)
				lead, between := 0.0, 0.0
				for _, o := range g.Outcomes {
					d := float64(o.Score.A - o.Score.B)
					lead += o.P * d
					between += o.P * math.Abs(d)
				}
				near(t, "lead of the stronger", lead, want.Lead, 1e-6)
				near(t, "margin", between, want.Between, 1e-6)
			})
		}
	}
}

// stateAt is a game to 11 in which play stands at a-b.
func stateAt(t *testing.T, r scoring.Rules, score scoring.Score, serving scoring.Team, number int) scoring.State {
	t.Helper()
	s := scoring.Start(r, scoring.A)
	set := s.Setting()
	set.Score, set.Serving, set.Number, set.Server = score, serving, number, scoring.Seat{Team: serving}
	s, err := s.Set(set)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestGamesInProgress(t *testing.T) {
	var file struct {
		Rows []struct {
			P       float64
			First   int     `json:"score_first_team"`
			Other   int     `json:"score_other_team"`
			Serving string  `json:"serving"`
			Number  int     `json:"server_number"`
			Mean    float64 `json:"expected_remaining_rallies"`
			Wins    float64 `json:"p_first_team_wins"`
		} `json:"in_progress_doubles_to_11"`
	}
	readJSON(t, "game_length.json", &file)
	if len(file.Rows) != 36 {
		t.Fatalf("%d rows, want 36", len(file.Rows))
	}
	for _, row := range file.Rows {
		serving := scoring.A
		if row.Serving == "other_team" {
			serving = scoring.B
		}
		s := stateAt(t, scoring.Rules{To: 11, WinBy: 2}, scoring.Score{A: row.First, B: row.Other}, serving, row.Number)
		g, err := pace.Remaining(s, row.P, row.P)
		if err != nil {
			t.Fatal(err)
		}
		near(t, s.Call()+": rallies", g.Mean, row.Mean, 1e-11)
		near(t, s.Call()+": chance", g.WinsA, row.Wins, 1e-12)
	}
}

func TestRalliesGivenTheFinalScore(t *testing.T) {
	var file struct {
		Tables []struct {
			P    float64
			To   int
			Rows []struct {
				Score string
				P     float64 `json:"probability"`
				Mean  float64 `json:"mean_rallies"`
				SD    float64 `json:"sd_rallies"`
			}
		} `json:"rallies_given_final_score_doubles"`
	}
	readJSON(t, "game_length.json", &file)
	for _, table := range file.Tables {
		g := distribution(t, scoring.Rules{To: table.To, WinBy: 2}, table.P, table.P)
		for _, row := range table.Rows {
			var s scoring.Score
			if _, err := fmt.Sscanf(row.Score, "%d-%d", &s.A, &s.B); err != nil {
				t.Fatal(err)
			}
			x, _ := g.Of(s)
			y, _ := g.Of(scoring.Score{A: s.B, B: s.A})
			// The table takes both teams together.
			mean := (x.P*x.Rallies + y.P*y.Rallies) / (x.P + y.P)
			square := func(o pace.Outcome) float64 { return o.P * (o.SD*o.SD + o.Rallies*o.Rallies) }
			near(t, row.Score, x.P+y.P, row.P, 1e-12)
			near(t, row.Score+" rallies", mean, row.Mean, 1e-9)
			near(t, row.Score+" sd", math.Sqrt((square(x)+square(y))/(x.P+y.P)-mean*mean), row.SD, 1e-7)
		}
	}
}

func TestChancesThatCannotBe(t *testing.T) {
	for _, p := range []float64{0, 1, -0.1, math.NaN(), math.Inf(1)} {
		if _, err := pace.Distribution(scoring.Rules{To: 11, WinBy: 2}, 0.44, p); err == nil {
			t.Errorf("a chance of %v is accepted", p)
		}
	}
	if _, err := pace.Distribution(scoring.Rules{}, 0.44, 0.44); err == nil {
		t.Errorf("no rules are accepted")
	}
}

func TestNothingRemainsOfAFinishedGame(t *testing.T) {
	r := scoring.Rules{To: 1, WinBy: 1}
	for side, want := range map[scoring.Team]float64{scoring.A: 1, scoring.B: 0} {
		s := scoring.Start(r, side).After(scoring.Rally{Won: side})
		g, err := pace.Remaining(s, 0.44, 0.44)
		if err != nil || g.Mean != 0 || g.WinsA != want || g.Quantile(0.9) != 0 {
			t.Errorf("%+v, %v", g, err)
		}
	}
}
