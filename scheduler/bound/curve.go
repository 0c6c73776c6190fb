package bound

import (
	"slices"
)

// curve is the least that one person's meetings can cost for each number of games, as the cost of the
// fewest games and what each further game adds. It is convex, so that a number of games
// shared out among people one by one, always where it adds least, costs the least in total.
type curve struct {
	base  int
	steps []int
}

// demand is a kind of meeting of which each game brings the same number, with the people whom
// it can be with and how often they met before.
type demand struct {
	each    int
	heights []int
	limits  []int
	first   [][2]int // heights of people with whom so many meetings must be; these come first
}

// curve pours the demand of low to high games over the people.
func (q demand) curve(low, high int, cost func(*pours, int) int) curve {
	var c curve
	units := q.each * low
	for _, f := range q.first {
		must := min(units, f[1])
		units -= must
		c.base += cost(newPours([]int{f[0]}, []int{must}), must)
	}
	p := newPours(q.heights, q.limits)
	c.base += cost(p, units)
	for g := low; g < high; g++ {
		c.steps = append(c.steps, cost(p, q.each))
	}
	return c
}

// plus adds two curves of the same person.
func (c curve) plus(d curve) curve {
	sum := curve{base: c.base + d.base, steps: slices.Clone(c.steps)}
	for k := range sum.steps {
		sum.steps[k] += d.steps[k]
	}
	return sum
}

// least is the least sum over the people's curves when so many games beyond everybody's fewest are
// shared out among them.
func least(curves []curve, beyond int) int {
	sum := 0
	var steps []int
	for _, c := range curves {
		sum += c.base
		steps = append(steps, c.steps...)
	}
	slices.Sort(steps)
	for _, s := range steps[:max(0, min(beyond, len(steps)))] {
		sum += s
	}
	return sum
}

// halved rounds half of a sum over people up: each pair of people is counted from both sides.
func halved(sum int) int { return (sum + 1) / 2 }
