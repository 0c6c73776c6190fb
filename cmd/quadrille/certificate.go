package main

import (
	"fmt"
	"io"
	"strings"

	"club/quadrille/scheduler"
)

// printCertificate writes the fairness certificate as a table for people. Its bounds are those of rotations
// with as many games; more is how many further ones were possible.
func printCertificate(w io.Writer, c scheduler.Certificate, more int) error {
	var out strings.Builder
	fmt.Fprintf(&out, "%-24s %8s %10s %5s\n", "certificate", "value", "bound", "gap")
	for _, m := range c.Measures() {
		if m.Open {
			fmt.Fprintf(&out, "%-24s %8d %10s %5s\n", m.Name, m.Value.Value, "not known", "?")
			continue
		}
		fmt.Fprintf(&out, "%-24s %8d %10d %5d\n", m.Name, m.Value.Value, m.Bound, m.Gap())
	}
	if l := c.Levels; l.Games > 0 {
		fmt.Fprintf(&out, "Levels: %s with a sure winner; teams differ by %.1f, people on a court by %.1f.\n",
			ofGames(l.Onesided, l.Games), mean(l.TeamGap, l.Games), mean(l.Spread, l.Games))
	}
	words := c.Words(true)
	if more > 0 && c.Perfect() {
		words = []string{"Every gap is 0: no rotation with as few games that shares the sit-outs like this one can be fairer. But " + moreGames(more) + " possible."}
	}
	for _, text := range words {
		out.WriteString(wrap(text, 2) + "\n")
	}
	_, err := io.WriteString(w, out.String())
	return err
}

func ofGames(some, all int) string {
	return fmt.Sprintf("%d of %s", some, counted(all, "game", "games"))
}

// mean is a mean over games of what was added up in tenths.
func mean(tenths, games int) float64 { return float64(tenths) / 10 / float64(games) }

func moreGames(n int) string { return counted(n, "more game was", "more games were") }
