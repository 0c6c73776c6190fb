package rating_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"club/quadrille/scoring/rating"
)

const exact = 1e-9

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

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.15g, want %.15g", what, got, want)
	}
}

// shares are what A has of the outcomes that the vectors name.
var shares = map[string]float64{"a_wins": 1, "b_wins": 0, "tie": 0.5, "draw": 0.5}

// unbounded is the growth of the vectors: it comes before every game and has no upper limit.
func unbounded(r rating.Rating, tau float64) rating.Rating {
	r.Sigma = math.Hypot(r.Sigma, tau)
	return r
}

// normalChance is the chance that the library which made the vectors predicts. Ours is logistic.
func normalChance(m rating.Model, a, b []rating.Rating) float64 {
	mu, variance := 0.0, 2*m.Beta*m.Beta
	for _, r := range a {
		mu += r.Mu
		variance += r.Sigma * r.Sigma
	}
	for _, r := range b {
		mu -= r.Mu
		variance += r.Sigma * r.Sigma
	}
	return math.Erfc(-mu/math.Sqrt(2*variance)) / 2
}

// Weng and Lin 2011: 82 games by Bradley–Terry and the same by Plackett–Luce.
func TestSingleGames(t *testing.T) {
	var file struct {
		Games []struct {
			ID      int
			Model   string
			Outcome string
			Tau     float64
			Beta    *float64
			Before  [2][]rating.Rating
			After   [2][]rating.Rating
			Chance  [2]float64 `json:"predict_win_before"`
		} `json:"single_games"`
	}
	readJSON(t, "weng_lin.json", &file)
	if len(file.Games) != 164 {
		t.Fatalf("%d games, want 164", len(file.Games))
	}
	for _, g := range file.Games {
		m := rating.Default()
		if g.Beta != nil {
			m.Beta = *g.Beta
		}
		share, known := shares[g.Outcome]
		if !known {
			t.Fatalf("game %d ends %q", g.ID, g.Outcome)
		}
		near(t, fmt.Sprintf("chance in game %d", g.ID), normalChance(m, g.Before[0], g.Before[1]), g.Chance[0], exact)
		for _, team := range g.Before {
			for i := range team {
				team[i] = unbounded(team[i], g.Tau)
			}
		}
		m.Update(g.Before[0], g.Before[1], share)
		for side := range g.After {
			for i, want := range g.After[side] {
				name := fmt.Sprintf("game %d (%s), side %d, person %d", g.ID, g.Model, side, i)
				near(t, name, g.Before[side][i].Mu, want.Mu, exact)
				near(t, name, g.Before[side][i].Sigma, want.Sigma, exact)
			}
		}
	}
}

type chain struct {
	Players int
	Tau     float64
	Games   []struct {
		A       []int `json:"team_a"`
		B       []int `json:"team_b"`
		Outcome string
		After   []rating.Rating
	}
	Final []rating.Rating
}

func TestChainsOfGames(t *testing.T) {
	var file struct {
		Chain  chain `json:"chain"`
		Growth chain `json:"chain_with_growth"`
	}
	readJSON(t, "weng_lin.json", &file)
	for name, c := range map[string]chain{"no growth": file.Chain, "growth before each game": file.Growth} {
		t.Run(name, func(t *testing.T) {
			m := rating.Default()
			people := make([]rating.Rating, c.Players)
			for i := range people {
				people[i] = m.New()
			}
			for n, g := range c.Games {
				var teams [2][]rating.Rating
				for side, who := range [2][]int{g.A, g.B} {
					for _, p := range who {
						teams[side] = append(teams[side], unbounded(people[p], c.Tau))
					}
				}
				m.Update(teams[0], teams[1], shares[g.Outcome])
				for side, who := range [2][]int{g.A, g.B} {
					for i, p := range who {
						people[p] = teams[side][i]
					}
				}
				compare(t, fmt.Sprintf("after game %d", n+1), people, g.After)
			}
			compare(t, "at the end", people, c.Final)
		})
	}
}

func compare(t *testing.T, when string, got, want []rating.Rating) {
	t.Helper()
	for i := range want {
		near(t, fmt.Sprintf("%s person %d, mean", when, i), got[i].Mu, want[i].Mu, exact)
		near(t, fmt.Sprintf("%s person %d, deviation", when, i), got[i].Sigma, want[i].Sigma, exact)
	}
}

// The same chain through Replay, whole: what the command line shows.
func TestReplayIsTheChain(t *testing.T) {
	var file struct{ Chain chain }
	readJSON(t, "weng_lin.json", &file)
	var games []rating.Game[int]
	for _, g := range file.Chain.Games {
		games = append(games, rating.Game[int]{A: g.A, B: g.B, Share: shares[g.Outcome]})
	}
	table, err := rating.Replay(rating.Default(), nil, games)
	if err != nil || len(table) != file.Chain.Players {
		t.Fatalf("%d people, %v", len(table), err)
	}
	for who, want := range file.Chain.Final {
		p, _ := table.Of(who)
		compare(t, "replayed", []rating.Rating{p.Rating}, []rating.Rating{want})
	}
}

// A second value, as printed on a public page about the same model.
func TestPrintedExample(t *testing.T) {
	a := []rating.Rating{{Mu: 25, Sigma: 25.0 / 3}, {Mu: 32.444, Sigma: 5.123}}
	b := []rating.Rating{{Mu: 43.381, Sigma: 2.421}, {Mu: 25.188, Sigma: 6.211}}
	rating.Default().Update(a, b, 1)
	compare(t, "winners", a, []rating.Rating{{Mu: 28.669648436582808, Sigma: 8.071520788025197}, {Mu: 33.83086971107981, Sigma: 5.062772998705765}})
	compare(t, "losers", b, []rating.Rating{{Mu: 43.071274808241974, Sigma: 2.4166900452721256}, {Mu: 23.149503312339064, Sigma: 6.1378606973362135}})
}
