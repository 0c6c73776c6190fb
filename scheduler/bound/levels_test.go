package bound

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// everyDraw calls visit with every way to fill each round's courts from the people, who play where.
func everyDraw(p *night.Problem, visit func([]night.Round)) {
	rounds := make([]night.Round, p.Rounds)
	var fill func(r, c int, left []night.Player)
	fill = func(r, c int, left []night.Player) {
		if c == len(p.Courts) || len(left) < 4 {
			if rounds[r].Out = left; r+1 == p.Rounds {
				visit(rounds)
			} else {
				rounds[r+1].Games = nil
				fill(r+1, 0, night.New(p).Everybody())
			}
			return
		}
		fours(left, func(four [4]night.Player, rest []night.Player) {
			if k := len(rounds[r].Games); k > 0 && rounds[r].Games[k-1].A[0] > four[0] {
				return // each set of games once
			}
			for _, s := range [3][4]int{{0, 1, 2, 3}, {0, 2, 1, 3}, {0, 3, 1, 2}} {
				g := night.Game{Court: night.Court(c), A: night.Team{four[s[0]], four[s[1]]}, B: night.Team{four[s[2]], four[s[3]]}}
				rounds[r].Games = append(rounds[r].Games, g)
				fill(r, c+1, rest)
				rounds[r].Games = rounds[r].Games[:c]
			}
		})
	}
	fill(0, 0, night.New(p).Everybody())
}

// fours lists all ways to take four of the people.
func fours(left []night.Player, visit func(four [4]night.Player, rest []night.Player)) {
	for bits := range 1 << len(left) {
		var four, rest []night.Player
		for k, i := range left {
			if bits>>k&1 == 1 {
				four = append(four, i)
			} else {
				rest = append(rest, i)
			}
		}
		if len(four) == 4 {
			visit([4]night.Player(four), rest)
		}
	}
}

// TestLevelBoundsNeverExceedTheLeast tries all rotations of tiny nights of people of any levels: none is below a bound.
func TestLevelBoundsNeverExceedTheLeast(t *testing.T) {
	nights, tight := 0, [3]int{}
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom([][3]int{{4, 1, 2}, {5, 1, 2}, {6, 1, 2}, {8, 2, 1}, {9, 2, 1}}).Draw(t, "night")
		p := nighttest.Club(c[0], c[1], c[2])
		for i := range p.People {
			p.People[i].Level = rapid.SampledFrom([]float64{2, 2.5, 3, 3.1, 3.4, 4, 5, 7}).Draw(t, "level")
		}
		var least, bounds [3]int
		first := true
		everyDraw(&p, func(rounds []night.Round) {
			n := night.New(&p)
			m := measure.Count(n, rounds)
			s := ScopeOf(n, rounds, m)
			if slices.Max(m.Games)-slices.Min(m.Games) > 1 {
				return // of another family: sit-outs are not even
			}
			var games []night.Game
			for _, r := range rounds {
				games = append(games, r.Games...)
			}
			l := measure.LevelsOf(&p, games)
			got := [3]int{l.Onesided, l.TeamGap, l.Spread}
			for k, bound := range []func() (int, bool){s.SureWinners, s.TeamGap, s.CourtLevels} {
				low, known := bound()
				if !known || low > got[k] {
					t.Fatalf("%v: bound %d of measure %d (known %v), the rotation %v has %v", c, low, k, known, rounds, got)
				}
				if first || got[k] < least[k] {
					least[k] = got[k]
				}
				if first || low < bounds[k] {
					bounds[k] = low
				}
			}
			first = false
		})
		nights++
		for k := range least {
			tight[k] += night.One(least[k] == bounds[k])
		}
	})
	for k, count := range tight {
		if 5*count < nights {
			t.Errorf("measure %d: only %d of %d nights reach the bound", k, count, nights)
		}
	}
}

// TestLevelBoundsByHand: levels so far apart that some games must be one-sided, and such of which some are not known.
func TestLevelBoundsByHand(t *testing.T) {
	p := nighttest.Club(4, 1, 3)
	for i, l := range []float64{2, 2, 2, 6} {
		p.People[i].Level = l
	}
	rounds := drawn(&p)
	n := night.New(&p)
	s := ScopeOf(n, rounds, measure.Count(n, rounds))
	for name, c := range map[string]struct {
		bound func() (int, bool)
		want  int
	}{
		"sure winners":      {s.SureWinners, 3},
		"team gap":          {s.TeamGap, 120},
		"levels on a court": {s.CourtLevels, 120},
	} {
		if got, known := c.bound(); !known || got != c.want {
			t.Errorf("%s: bound %d (known %v), want %d", name, got, known, c.want)
		}
	}
	p.People[0].Level = 0
	if _, known := ScopeOf(n, rounds, measure.Count(n, rounds)).TeamGap(); known {
		t.Error("a bound is said to be known where somebody states no level")
	}
}
