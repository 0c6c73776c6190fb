package line

import (
	"fmt"
	"math"
)

// Percent writes a share or a chance, 0 to 1, in whole percent, as "67 %". Only nothing is "0 %" and only all
// is "100 %": what would round to them is "<1 %" and ">99 %".
func Percent(share float64) string {
	switch whole := math.Round(100 * share); {
	case whole < 1 && share > 0:
		return "<1 %"
	case whole > 99 && share < 1:
		return ">99 %"
	default:
		return fmt.Sprintf("%.0f %%", whole)
	}
}

// Range writes a range of shares as [Percent] does, as "44 to 100 %".
func Range(low, high float64) string {
	from := Percent(low)
	return from[:len(from)-len(" %")] + " to " + Percent(high)
}
