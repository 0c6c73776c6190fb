package standings

import "math"

// z95 is the normal quantile of a two-sided range of 95 %.
const z95 = 1.959963984540054

// Interval is the 95 % range of the true win share behind k wins (a draw counts half) in n
// games: E. B. Wilson, Probable inference, the law of succession, and statistical inference, JASA
// 22 (1927) 209-212. Without games it is 0 to 1.
func Interval(k float64, n int) (low, high float64) {
	if n == 0 {
		return 0, 1
	}
	m, z2 := float64(n), z95*z95
	centre := (k + z2/2) / (m + z2)
	half := z95 * math.Sqrt(k*(m-k)/m+z2/4) / (m + z2)
	return max(0, centre-half), min(1, centre+half)
}

// Interval is the 95 % range of the row's true win share.
func (r Row) Interval() (low, high float64) {
	return Interval(float64(r.points())/2, r.Games)
}
