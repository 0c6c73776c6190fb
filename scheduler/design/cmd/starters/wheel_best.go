package main

import (
	"fmt"
	"math"
	"strings"

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

// wheelEntry writes a starter as wheel_starters.go has it.
func wheelEntry(s design.WheelStarter) string {
	var out strings.Builder
	sizes := strings.Trim(strings.ReplaceAll(fmt.Sprint(s.Circles), " ", ", "), "[]")
	fmt.Fprintf(&out, "\t{\n\t\tpeople: %d, tables: %d, rounds: %d, meetings: %d, order: %d, circles: []int{%s},\n\t\tbases: []string{\n",
		s.People, s.Tables, s.Rounds, s.Meetings, s.Order, sizes)
	for _, base := range s.Bases {
		var fours []string
		for _, t := range base {
			var four []byte
			for _, p := range t {
				four = append(four, design.WheelLetters[p])
			}
			fours = append(fours, string(four))
		}
		fmt.Fprintf(&out, "\t\t\t%q,\n", strings.Join(fours, " "))
	}
	out.WriteString("\t\t},\n\t},\n")
	return out.String()
}
