package main

import (
	"fmt"
	"io"
	"strings"

	"club/quadrille/scheduler"
)

// measures lists a certificate in the order of importance, with its words.
func measures(c scheduler.Certificate) []struct {
	Name string
	scheduler.Value
} {
	return []struct {
		Name string
		scheduler.Value
	}{
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
		fmt.Fprintf(&out, "%-24s %8d %10d %5d\n", m.Name, m.Value.Value, m.Bound, m.Gap())
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
