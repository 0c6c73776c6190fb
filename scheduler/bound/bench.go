package bound

import (
	"math"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// LongestBound is for how many rounds running somebody must sit out, or did in fixed rounds: in any stretch of free
// rounds, if more of a pool are there in all of them than these rounds have seats for it together.
func (s *Scope) LongestBound() int {
	longest := measure.Count(s.n, nil).Longest
	for first := range s.games {
		pools := s.n.Pools(s.n.First + first)
		seats := make([]int, len(pools))
		for r := first; r < len(s.games); r++ {
			for k, pool := range s.n.Pools(s.n.First + r) {
				seats[k] += s.n.SeatsOf(k, s.seats(r)+s.extra[r])
				pools[k] = night.Intersect(pools[k], pool)
				if len(pools[k]) > seats[k] {
					longest = max(longest, r-first+1)
				}
			}
		}
	}
	return longest
}

// Sitouts are the measures of how sit-outs are shared: Σ (sit-outs - share owed)² over people, in hundredths, and the
// difference between most and fewest sit-outs of those present throughout, each beside the least that there can be.
// The least comes from the fairest sit-outs, see [sitout.Fairest], for rounds of as many games.
func (s *Scope) Sitouts(rounds []night.Round, m *measure.Counts) (evenness, spread measure.Value) {
	spread = measure.Value{Value: m.Spread(), Bound: s.spreadBound(m)}
	shares := sitout.SharesOf(s.n, rounds)
	own := shares.Deviation(m.Outs)
	evenness.Value = hundredths(own)
	if m.Singles {
		evenness.Bound = evenness.Value
		return evenness, spread
	}
	out := make([][]night.Player, len(rounds))
	for r, round := range rounds {
		out[r] = slices.Clone(round.Out)
	}
	sitout.Fairest(s.n, shares, out)
	best, low, high := s.n.PastOuts(), math.MaxInt, -1
	for _, bench := range out {
		for _, i := range bench {
			best[i]++
		}
	}
	for i, outs := range best {
		if m.Throughout[i] {
			low, high = min(low, outs), max(high, outs)
		}
	}
	least := shares.Deviation(best)
	evenness.Bound = min(evenness.Value, hundredths(least))
	if own <= least+1e-9 {
		spread.Bound = max(spread.Bound, min(spread.Value, high-low)) // as fair as can be: then this is the least of all
	}
	return evenness, spread
}

func hundredths(x float64) int { return int(math.Round(100 * x)) }
