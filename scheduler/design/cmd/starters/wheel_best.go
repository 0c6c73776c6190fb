package main

import (
	"math"

	"club/quadrille/scheduler/design"
)

// bestWheel is the best plan of a search.
type bestWheel struct {
	target  int // so few repeated meetings are enough
	found   bool
	starter design.WheelStarter
}

// meetings is how many repeat in the best plan, Σ C(m,2) over the pairs, who meet m times.
func (b *bestWheel) meetings() int {
	if !b.found {
		return math.MaxInt32
	}
	return b.starter.Meetings
}

// enough tells whether the search may end.
func (b *bestWheel) enough() bool { return b.found && b.starter.Meetings <= b.target }

// offer takes a plan if it keeps what the catalogue promises and fewer meetings repeat.
func (b *bestWheel) offer(s design.WheelStarter) {
	meetings, err := design.CheckWheel(s.People, s.Tables, s.Plan())
	if err != nil || meetings >= b.meetings() {
		return
	}
	s.Meetings = meetings
	b.found, b.starter = true, s
}
