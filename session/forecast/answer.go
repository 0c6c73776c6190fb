package forecast

import (
	"math"
	"math/rand/v2"
	"slices"
)

// nights is how many times a hall is played: chances are then right to about 2 in 100.
const nights = 1500

// Answer is what a night comes to.
type Answer struct {
	Games  Range     // in all, over by closing time
	Each   []AtLeast // games that everybody gets, as far as they are shared fairly among those who are expected
	Rounds []AtLeast // that are over by closing time; empty in the rolling flow
	Round  float64   // minutes from one call to the next, half of the rounds take longer; rolling: of a game on a court
	End    Span      // minutes from the first call to the last score
}

// Range is a range of numbers with the chance that it holds.
type Range struct {
	Low, High int
	Chance    float64
}

// AtLeast is a number with the chance of at least so many.
type AtLeast struct {
	N      int
	Chance float64
}

// Span is when half of the nights are over, and when nine of ten.
type Span struct{ Median, P90 float64 }

// Of plays a hall many times over and says what it comes to. Equal seeds give equal answers.
func Of(h Hall, habit Habit, seed uint64) (Answer, error) {
	if err := h.Validate(); err != nil {
		return Answer{}, err
	}
	p := player{h, habit, rand.New(rand.NewPCG(seed, 1))}
	var games, rounds, each []int
	var ends []float64
	for range nights {
		e := p.play()
		games, rounds = append(games, e.games), append(rounds, e.rounds)
		each = append(each, e.games*h.Seats()/h.People)
		ends = append(ends, e.end)
	}
	slices.Sort(ends)
	a := Answer{Games: about(games), Each: atLeast(each), End: Span{ends[len(ends)/2], ends[len(ends)*9/10]}}
	one := habit.Clock.Median()
	if limit := float64(h.Rules.Minutes); limit > 0 {
		one = min(one, limit)
	}
	a.Round = one
	if rounds[0] >= 0 && slices.Max(rounds) > 0 {
		a.Rounds = atLeast(rounds)
		longest := habit.Clock.Quantile(math.Pow(0.5, 1/float64(max(1, h.Busy()))))
		if limit := float64(h.Rules.Minutes); limit > 0 {
			longest = min(longest, limit)
		}
		a.Round = longest + habit.Change
	}
	return a, nil
}

// Sure is how many are there with at least a chance, 0 for none.
func Sure(all []AtLeast, chance float64) int {
	n := 0
	for _, a := range all {
		if a.Chance >= chance {
			n = max(n, a.N)
		}
	}
	return n
}

// atLeast counts how often there are at least so many, from 1 up.
func atLeast(drawn []int) (out []AtLeast) {
	for n := 1; n <= slices.Max(drawn); n++ {
		reached := 0
		for _, d := range drawn {
			if d >= n {
				reached++
			}
		}
		out = append(out, AtLeast{n, float64(reached) / float64(len(drawn))})
	}
	return out
}

// about is the range around the middle whose chance is nearest to 90 %, the wider one of two that are as
// near. Whole numbers seldom have a range of just 90 %.
func about(drawn []int) Range {
	const wanted = 0.9
	sorted := slices.Clone(drawn)
	slices.Sort(sorted)
	chance := map[int]float64{}
	for _, d := range sorted {
		chance[d] += 1 / float64(len(sorted))
	}
	middle := sorted[len(sorted)/2]
	r := Range{middle, middle, chance[middle]}
	for {
		wider := r
		below, above := under(sorted, r.Low), over(sorted, r.High)
		switch {
		case below < 0 && above < 0:
			return r
		case above < 0 || below >= 0 && chance[below] > chance[above]:
			wider.Low, wider.Chance = below, r.Chance+chance[below]
		default:
			wider.High, wider.Chance = above, r.Chance+chance[above]
		}
		if math.Abs(wider.Chance-wanted) > math.Abs(r.Chance-wanted) {
			return r
		}
		r = wider
	}
}

// under is the greatest of sorted numbers below n, -1 for none.
func under(sorted []int, n int) int {
	if i, _ := slices.BinarySearch(sorted, n); i > 0 {
		return sorted[i-1]
	}
	return -1
}

// over is the least of sorted numbers above n, -1 for none.
func over(sorted []int, n int) int {
	if i, _ := slices.BinarySearch(sorted, n+1); i < len(sorted) {
		return sorted[i]
	}
	return -1
}
