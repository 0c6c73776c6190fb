package pace_test

import (
	"math"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// DeFord and Ethier 2023, abstract: between equal teams the team that serves first is very slightly worse off in
// a game to 11 and very slightly better off in one to 15. The exact value at one half is a fraction.
func TestServingFirstHardlyMattersInDoubles(t *testing.T) {
	eleven := distribution(t, scoring.Rules{To: 11, WinBy: 2}, 0.5, 0.5)
	near(t, "to 11", eleven.WinsA, 820159908044849.0/1640319824218750.0, 1e-14)
	fifteen := distribution(t, scoring.Rules{To: 15, WinBy: 2}, 0.5, 0.5)
	if d := fifteen.WinsA - 0.5; d < 4e-12 || d > 6e-12 {
		t.Errorf("to 15 serving first is worth %g, want about 5.03e-12", d)
	}
}

// T. Beardon, NRICH, "Playing Squash": with p the chance of a team in every rally, whoever serves, it wins the
// next point with p/(1-pq) when it serves and with p²/(1-pq) when it receives.
func TestNextPoint(t *testing.T) {
	r := scoring.Rules{To: 1, WinBy: 1, Singles: true}
	for p := 0.1; p < 0.95; p += 0.1 {
		q := 1 - p
		near(t, "serving", distribution(t, r, p, q).WinsA, p/(1-p*q), 1e-13)
		receiving, err := pace.Remaining(scoring.Start(r, scoring.B), p, q)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "receiving", receiving.WinsA, p*p/(1-p*q), 1e-13)
	}
}

// The same by hand for doubles between equal teams: on the first serve the next point is worth 1/(1+q²), on the
// second (p+q²)/(1+q²).
func TestNextPointInDoubles(t *testing.T) {
	r := scoring.Rules{To: 1, WinBy: 1}
	for p := 0.1; p < 0.95; p += 0.1 {
		q := 1 - p
		for number, want := range map[int]float64{1: 1 / (1 + q*q), 2: (p + q*q) / (1 + q*q)} {
			g, err := pace.Remaining(stateAt(t, r, scoring.Score{}, scoring.A, number), p, p)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "next point", g.WinsA, want, 1e-13)
		}
	}
}

// J. B. Keller, SIAM Review 26 (1984) 267-268: a shutout to 21 has the chance (p/(1-pq))^21 for the side that
// serves first and p times that for the other.
func TestShutouts(t *testing.T) {
	r := scoring.Rules{To: 21, WinBy: 1, Singles: true}
	for _, p := range []float64{0.5, 0.6, 0.7, 0.8} {
		q := 1 - p
		want := math.Pow(p/(1-p*q), 21)
		first, _ := distribution(t, r, p, q).Of(scoring.Score{A: 21})
		near(t, "serving first", first.P/want, 1, 1e-11)
		g, err := pace.Remaining(scoring.Start(r, scoring.B), p, q)
		if err != nil {
			t.Fatal(err)
		}
		second, _ := g.Of(scoring.Score{A: 21})
		near(t, "receiving first", second.P/(p*want), 1, 1e-11)
	}
}

// Wald's identity: with equal chances each rally of side-out scoring is a point with the chance of the serving
// side, whatever the game; each rally of rally scoring is one.
func TestPointsPerRally(t *testing.T) {
	for _, p := range []float64{0.3, 0.44, 0.6} {
		for _, r := range []scoring.Rules{{To: 11, WinBy: 2}, {To: 7, WinBy: 1, Singles: true}, {To: 9, WinBy: 2, Cap: 10, StartA: 3}} {
			g := distribution(t, r, p, p)
			near(t, r.String(), g.Points, p*g.Mean, 1e-11)
			r.Scoring = scoring.RallyScoring
			g = distribution(t, r, p, p)
			near(t, r.String(), g.Points, g.Mean, 1e-11)
		}
	}
}
