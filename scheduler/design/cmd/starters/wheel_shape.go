package main

import "slices"

// wheelShape is how a wheel is built.
type wheelShape struct {
	order   int   // turns until everybody is back
	bases   int   // base rounds, so that order·bases rounds come round
	circles []int // how many people sit on each circle, all of them, largest circles first; divisors of order
}

// mostLeftOver is how many rounds a wheel may have more than will be played. Rounds left over cost nothing
// where no meeting need repeat, and open orders that do not divide the rounds.
const mostLeftOver = 2

// shapes lists the wheels that fit the night with up to so many rounds left over: fewest rounds first, and
// of these the highest order, which leaves least to search.
func (n wheelNight) shapes(leftOver int) (shapes []wheelShape) {
	for total := n.rounds; total <= n.rounds+leftOver; total++ {
		for order := total; order > 1; order-- {
			if total%order != 0 {
				continue
			}
			for _, circles := range circleSizes(n.people, order) {
				if s := (wheelShape{order, total / order, circles}); s.fair(n) {
					shapes = append(shapes, s)
				}
			}
		}
	}
	return shapes
}

// circleSizes lists ways to put people on circles whose sizes divide the order: as many full circles as
// there can be or one less, then circles of one smaller size, then people who stay where they are.
func circleSizes(people, order int) (all [][]int) {
	for _, full := range []int{people / order, people/order - 1} {
		for size := order - 1; full >= 0 && size > 0; size-- {
			if order%size != 0 {
				continue
			}
			left := people - full*order
			circles := slices.Repeat([]int{order}, full)
			circles = append(circles, slices.Repeat([]int{size}, left/size)...)
			circles = append(circles, slices.Repeat([]int{1}, left%size)...)
			if !slices.ContainsFunc(all, func(c []int) bool { return slices.Equal(c, circles) }) {
				all = append(all, circles)
			}
		}
	}
	return all
}

// fair tells whether people can sit out equally often although all of a circle sit out in turn. In
// rounds left over anybody may sit out.
func (s wheelShape) fair(n wheelNight) bool {
	total := s.order * s.bases
	low, high := n.leastOut(), n.mostOut()+total-n.rounds
	least, most := 0, 0
	for _, size := range s.circles {
		times := s.order / size // sit-outs of each person for one of the circle in a base round
		few, many := (low+times-1)/times, high/times
		if few > many {
			return false
		}
		least += few * size * times
		most += many * size * times
	}
	out := total * (n.people - n.seats())
	return least <= out && out <= most
}
