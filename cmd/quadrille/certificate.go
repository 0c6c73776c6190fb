package main

import (
	"fmt"
	"io"
	"strings"

	"club/quadrille/scheduler"
)

// measure is one line of a certificate.
type measure struct {
	name string
	scheduler.Value
}

// sitOuts is how many of the measures are about sitting out, which the rolling flow does not know.
const sitOuts = 2

// measures lists a certificate in the order of importance, those about sitting out first.
func measures(c scheduler.Certificate) []measure {
	return []measure{
		{"sit-out spread", c.SitoutSpread},
		{"benched twice running", c.BenchedTwice},
		{"partner repeats", c.PartnerRepeats},
		{"partner evenness", c.PartnerEvenness},
		{"meeting evenness", c.MeetingEvenness},
		{"opponent evenness", c.OpponentEvenness},
		{"court spread", c.CourtSpread},
	}
}

// printCertificate writes the fairness certificate as a table for people.
func printCertificate(w io.Writer, c scheduler.Certificate) error {
	var out strings.Builder
	fmt.Fprintf(&out, "%-24s %8s %10s %5s\n", "certificate", "value", "at least", "gap")
	gaps := 0
	for _, m := range measures(c) {
		fmt.Fprintf(&out, "%-24s %8d %10d %5d\n", m.name, m.Value.Value, m.Bound, m.Gap())
		if m.Gap() != 0 {
			gaps++
		}
	}
	if gaps == 0 {
		out.WriteString("Every gap is 0: no rotation can be fairer.\n")
	} else {
		out.WriteString("A gap is how far the rotation may be from the fairest possible; the true best\nmay lie between.\n")
	}
	_, err := io.WriteString(w, out.String())
	return err
}
