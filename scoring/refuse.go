package scoring

import (
	"fmt"
	"slices"
	"strings"
)

// near is how many possible final scores a refusal names.
const near = 3

// maxPoints is far beyond any game that was ever played, and keeps a slip of the finger from being searched
// for its neighbours.
const maxPoints = 999

func possible(a, b int) bool { return min(a, b) >= 0 && max(a, b) <= maxPoints }

// refuse says why no game under r ends at a-b, and which scores it may have been.
func (r *Rules) refuse(a, b int) error {
	score := Score{a, b}
	if !possible(a, b) {
		return fmt.Errorf("%v is no score: points are 0 to %d", score, maxPoints)
	}
	why := "cannot come up in"
	if r.passes(a, b) {
		why = "does not end"
	}
	msg := fmt.Sprintf("%v %s a game %s", score, why, r.limits())
	var names []string
	for _, s := range r.Nearest(a, b) {
		names = append(names, s.String())
	}
	msg += ": " + strings.Join(names, " or ") + " would"
	if why == "does not end" {
		msg += "; if play was stopped there, add timed or retired"
	}
	return fmt.Errorf("%s", msg)
}

// refusePlayed says why play does not end at a-b, and is nil when it does.
func (r *Rules) refusePlayed(a, b int) error {
	if r.ends(a, b) {
		return nil
	}
	return r.refuse(a, b)
}

// refuseAny says why a game never stands at a-b, and is nil when it can.
func (r *Rules) refuseAny(a, b int) error {
	if r.passes(a, b) {
		return nil
	}
	return r.refusePlayed(a, b)
}

// refuseStopped says why play cannot have been stopped at a-b, and is nil when it can.
func (r *Rules) refuseStopped(a, b int, how How) error {
	switch {
	case r.passes(a, b):
		return nil
	case r.ends(a, b):
		return fmt.Errorf("%d-%d is a finished game, so it was not %v: enter the score alone", a, b, how)
	}
	return r.refuse(a, b)
}

// Nearest lists the final scores nearest to a-b that a game under r can be played to: those that differ
// from it by the fewest points, at most three, first those that leave the winner as typed and of these
// the ones with more points.
func (r Rules) Nearest(a, b int) []Score {
	a, b = min(max(a, 0), maxPoints), min(max(b, 0), maxPoints)
	var best []Score
	distance := 2 * maxPoints
	for _, s := range r.finalsTo(max(a, b, r.To) + r.WinBy) {
		d := abs(s.A-a) + abs(s.B-b)
		if d < distance {
			best, distance = best[:0], d
		}
		if d == distance {
			best = append(best, s)
		}
	}
	slices.SortStableFunc(best, func(x, y Score) int {
		if asTyped := (x.A > x.B) == (a > b); asTyped != ((y.A > y.B) == (a > b)) {
			if asTyped {
				return -1
			}
			return 1
		}
		return (y.A + y.B) - (x.A + x.B)
	})
	return best[:min(near, len(best))]
}

// finalsTo lists the final scores in which nobody has more than limit points: those at the target, and
// beyond it those one lead apart.
func (r Rules) finalsTo(limit int) []Score {
	var out []Score
	for win := r.To; win <= limit && (r.Cap == 0 || win <= r.Cap); win++ {
		from := 0
		if win > r.To {
			from = win - r.WinBy
		}
		for lose := max(from, 0); lose < win; lose++ {
			for _, s := range []Score{{win, lose}, {lose, win}} {
				if r.ends(s.A, s.B) {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

func abs(n int) int { return max(n, -n) }
