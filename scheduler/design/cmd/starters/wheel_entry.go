package main

import (
	"fmt"
	"strings"

	"club/quadrille/scheduler/design"
)

// wheelEntry writes a starter as wheel_starters.go has it.
func wheelEntry(s design.WheelStarter) string {
	var out strings.Builder
	sizes := strings.Trim(strings.ReplaceAll(fmt.Sprint(s.Circles), " ", ", "), "[]")
	fmt.Fprintf(&out, "\t{\n\t\tpeople: %d, tables: %d, rounds: %d, meetings: %d, order: %d, circles: []int{%s},\n",
		s.People, s.Tables, s.Rounds, s.Meetings, s.Order, sizes)
	out.WriteString("\t\tbases: []string{\n")
	for _, base := range s.Bases {
		var fours []string
		for _, t := range base {
			fours = append(fours, wheelFour(t))
		}
		fmt.Fprintf(&out, "\t\t\t%q,\n", strings.Join(fours, " "))
	}
	out.WriteString("\t\t},\n\t},\n")
	return out.String()
}

// wheelFour is a table in letters.
func wheelFour(t design.Table) string {
	var four strings.Builder
	for _, p := range t {
		four.WriteByte(design.WheelLetters[p])
	}
	return four.String()
}
