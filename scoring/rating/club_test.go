package rating_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/rating"
)

// club is invented people with known skills, whose games are played rally by rally.
type club struct {
	rng    *rand.Rand
	skills []float64 // in rally logits
	games  []rating.Game[int]
}

// rallySpread is the deviation of the skills, that of a club from beginners to strong players: of two drawn
// pairs the better one wins about four games of five. In a more even club games tell less: at 0.25
// the rank correlation after 60 games is 0.88, at 0.2 it is 0.83, with or without the half margin.
const rallySpread = 0.35

func newClub(people int, seed uint64) *club {
	c := &club{rng: rand.New(rand.NewPCG(seed, 11)), skills: make([]float64, people)}
	for i := range c.skills {
		c.skills[i] = rallySpread * c.rng.NormFloat64()
	}
	return c
}

// play plays a game to 11 between two pairs and returns its score.
func (c *club) play(a, b []int) scoring.Score {
	lead := (c.skills[a[0]] + c.skills[a[1]] - c.skills[b[0]] - c.skills[b[1]]) / 2
	chance := func(d float64) float64 { return 1 / (1 + math.Exp(0.24-d)) } // 0.44 between equals
	chances := [2]float64{chance(lead), chance(-lead)}
	s := scoring.Start(scoring.Rules{To: 11, WinBy: 2}, scoring.Team(c.rng.IntN(2)))
	for !s.Done {
		won := s.Serving
		if c.rng.Float64() > chances[won] {
			won = won.Other()
		}
		s = s.After(scoring.Rally{Won: won})
	}
	return s.Score
}

// round lets everybody play once, in random fours.
func (c *club) round(m rating.Model) {
	p := c.rng.Perm(len(c.skills))
	for ; len(p) >= 4; p = p[4:] {
		s := c.play(p[:2], p[2:4])
		c.games = append(c.games, rating.Game[int]{A: p[:2], B: p[2:4], Share: m.Share(s.A, s.B, 11)})
	}
}

func (c *club) table(t *testing.T, m rating.Model) rating.Table[int] {
	t.Helper()
	table, err := rating.Replay(m, nil, c.games)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// spearman is the rank correlation of the table with the true skills.
func (c *club) spearman(table rating.Table[int]) float64 {
	n := len(table)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(p, q int) int {
		if c.skills[p] > c.skills[q] {
			return -1
		}
		return 1
	})
	sum := 0.0
	for i, p := range table {
		d := float64(i - slices.Index(order, p.Who))
		sum += d * d
	}
	return 1 - 6*sum/float64(n*(n*n-1))
}

// True skills are recovered, with a rank correlation of 0.9 or more after 60 games a person.
func TestTrueSkillsAreRecovered(t *testing.T) {
	for _, half := range []bool{false, true} {
		m := rating.Default()
		m.HalfMargin = half
		mean, clubs := 0.0, 6
		for seed := range clubs {
			c := newClub(32, uint64(seed))
			for range 60 {
				c.round(m)
			}
			mean += c.spearman(c.table(t, m)) / float64(clubs)
		}
		t.Logf("half margin %v: mean rank correlation %.3f", half, mean)
		if mean < 0.9 {
			t.Errorf("half margin %v: the mean rank correlation is %.3f", half, mean)
		}
	}
}

// The Brier score of the model's own chances, against that of the normal curve which the reference library
// predicts with. Less is better; 0.25 is what a coin gets.
func TestChancesAreCalibrated(t *testing.T) {
	m := rating.Default()
	var ours, theirs, games float64
	var bins [10]struct{ expected, won, n float64 }
	for seed := range uint64(6) {
		c := newClub(32, 100+seed)
		for range 40 {
			before := len(c.games)
			table := c.table(t, m)
			c.round(m)
			for _, g := range c.games[before:] {
				team := func(who []int) []rating.Rating {
					var out []rating.Rating
					for _, p := range who {
						r := m.New()
						if person, known := table.Of(p); known {
							r = person.Rating
						}
						out = append(out, r)
					}
					return out
				}
				a, b := team(g.A), team(g.B)
				p, q := m.WinChance(a, b), normalChance(m, a, b)
				ours += (p - g.Share) * (p - g.Share)
				theirs += (q - g.Share) * (q - g.Share)
				games++
				bin := &bins[min(int(p*10), 9)]
				bin.expected += p
				bin.won += g.Share
				bin.n++
			}
		}
	}
	t.Logf("Brier score %.4f, of the normal curve %.4f", ours/games, theirs/games)
	if ours > theirs || ours/games > 0.25 {
		t.Errorf("the Brier score is %.4f, of the normal curve %.4f", ours/games, theirs/games)
	}
	for i, bin := range bins {
		if bin.n > 50 && math.Abs(bin.expected-bin.won)/bin.n > 0.12 {
			t.Errorf("of the games with a chance of about 0.%d5 a share of %.2f was won, expected %.2f", i, bin.won/bin.n, bin.expected/bin.n)
		}
	}
}

// Fours that the ratings make even become closer games than fours as they come.
func TestBalancedDrawsBecomeCloserGames(t *testing.T) {
	m := rating.Default()
	c := newClub(32, 5)
	for range 20 {
		c.round(m)
	}
	table := c.table(t, m)
	of := func(who ...int) []rating.Rating {
		var out []rating.Rating
		for _, w := range who {
			p, _ := table.Of(w)
			out = append(out, p.Rating)
		}
		return out
	}
	margin := func(a, b []int) float64 { s := c.play(a, b); return math.Abs(float64(s.A - s.B)) }
	var balanced, random float64
	const games = 3000
	for range games {
		p := c.rng.Perm(32)[:4]
		random += margin(p[:2], p[2:])
		best, split := 1.0, p
		for _, s := range [][]int{{p[0], p[1], p[2], p[3]}, {p[0], p[2], p[1], p[3]}, {p[0], p[3], p[1], p[2]}} {
			if off := math.Abs(m.WinChance(of(s[0], s[1]), of(s[2], s[3])) - 0.5); off < best {
				best, split = off, s
			}
		}
		balanced += margin(split[:2], split[2:])
	}
	t.Logf("mean margin %.2f balanced, %.2f as it comes", balanced/games, random/games)
	if balanced >= 0.97*random {
		t.Errorf("the mean margin is %.2f in balanced games and %.2f as it comes", balanced/games, random/games)
	}
}
