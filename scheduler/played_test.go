package scheduler

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/judge"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
	"club/quadrille/scheduler/sitout"
)

// TestNothingThatFollowsIsBelowWhatWasPlayed: of tiny nights some rounds are played anyhow, and every continuation is
// tried. None that shares the sit-outs like the one judged, leaves nobody without a game, and sits out twice running no
// oftener, has a measure below its bound and what the played rounds add to that.
func TestNothingThatFollowsIsBelowWhatWasPlayed(t *testing.T) {
	added := 0
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([][2]int{{4, 1}, {5, 1}, {6, 1}, {7, 1}, {8, 2}}).Draw(t, "size")
		played, ahead := rapid.IntRange(1, 4).Draw(t, "played"), 2
		if size[0] > 6 {
			ahead = 1
		}
		p := nighttest.Club(size[0], size[1], played+ahead)
		p.People[0].Leave = rapid.SampledFrom([]int{0, 0, played, played + 1}).Draw(t, "gone")
		if size[0] == 4 {
			p.People[0].Leave = 0
		}
		p.People[1].Arrive = rapid.SampledFrom([]int{0, 0, 1, played}).Draw(t, "late")
		if rapid.Bool().Draw(t, "levels") {
			for i := range p.People {
				p.People[i].Level = float64(rapid.IntRange(20, 40).Draw(t, "level")) / 10
			}
		}
		n := night.New(&p)
		all := make([][]Round, played+ahead)
		var rounds []Round
		for r := range all {
			all[r] = everyRound(n.Here[r], n.MostGames(r, size[1]))
			rounds = append(rounds, rapid.SampledFrom(all[r]).Draw(t, "round"))
		}
		p.History, p.Rounds = rounds[:played:played], ahead
		own := Certify(p, rounds[played:])
		for _, m := range own.Measures() {
			added += m.Played
			if m.Left() < 0 || m.Played < 0 {
				t.Errorf("%s: %+v", m.Name, m.Value)
			}
		}
		f := familyOf(p, rounds)
		next := slices.Clone(rounds)
		var walk func(r int)
		walk = func(r int) {
			if r < len(all) {
				for _, round := range all[r] {
					next[r] = round
					walk(r + 1)
				}
				return
			}
			if !f.has(next) {
				return
			}
			got, equal := valuesOf(p, next), slices.Equal(measure.Count(f.n, next).Outs, f.outs)
			for k, m := range own.Measures() {
				if least := m.Bound + m.Played; !m.Open && (equal || m.Name != "court spread") && got[k] < least {
					t.Fatalf("%s can still be %d, but %+v\n%v", m.Name, got[k], m.Value, next)
				}
			}
		}
		walk(played)
	})
	if added == 0 {
		t.Error("nothing that was played ever mattered")
	}
}

// family is who shares the sit-outs like a rotation: within the shares owed or as that one does, and twice running no
// oftener.
type family struct {
	n               *night.Night
	low, high, outs []int // fewest and most sit-outs of each person, and those of the rotation
	there           []int // rounds that each person is there for
	twice           int
}

func familyOf(p Problem, rounds []Round) family {
	p.History, p.Rounds = nil, len(rounds)
	n := night.New(&p)
	m, shares := measure.Count(n, rounds), sitout.SharesOf(n, rounds)
	f := family{n: n, low: shares.Low, high: shares.High, outs: m.Outs, twice: m.Twice}
	f.there = make([]int, n.People)
	for _, here := range n.Here {
		for _, i := range here {
			f.there[i]++
		}
	}
	for i, outs := range m.Outs {
		f.low[i], f.high[i] = min(f.low[i], outs), max(f.high[i], outs)
	}
	return f
}

func (f *family) has(rounds []Round) bool {
	m := measure.Count(f.n, rounds)
	for i, outs := range m.Outs {
		if outs == f.there[i] || outs < f.low[i] || outs > f.high[i] {
			return false
		}
	}
	return m.Twice <= f.twice
}

// valuesOf are the values of a night's measures in the order of its certificate.
func valuesOf(p Problem, rounds []Round) (values []int) {
	p.History, p.Rounds = nil, len(rounds)
	c := judge.Rotation(night.New(&p), rounds).Certificate()
	for _, m := range c.Measures() {
		values = append(values, m.Value.Value)
	}
	return values
}
