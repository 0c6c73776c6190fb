package main

import (
	"fmt"
	"io"
	"time"
)

// writeHead begins the table, in Markdown so that it can be pasted into a document.
func writeHead(w io.Writer) {
	fmt.Fprintln(w, "| people/courts/rounds | best method | solver: wall | processor | search | Quadrille: wall | processor | search | times sooner: wall | processor | search |")
	fmt.Fprintln(w, "|---|---|---|---|---|---|---|---|---|---|---|")
}

// writeRow adds a night. Where the solver found nothing, its figures are what it was given, and the
// ratios are at least so much.
func writeRow(w io.Writer, n night, theirs attempt, ours effort) {
	more := ""
	if !theirs.solved {
		more = "> "
	}
	e := theirs.effort
	fmt.Fprintf(w, "| %s | %s | %s%s | %s%s | %s%s | %s | %s | %s | %s%s | %s%s | %s%s |\n", n, theirs.method,
		more, figure(e.wall), more, figure(e.cpu), more, figure(e.search),
		figure(ours.wall), figure(ours.cpu), figure(ours.search),
		more, ratio(e.wall, ours.wall), more, ratio(e.cpu, ours.cpu), more, ratio(e.search, ours.search))
}

// figure writes a time with three digits or so.
func figure(d time.Duration) string {
	if d < time.Second {
		return fmt.Sprintf("%.3g ms", d.Seconds()*1000)
	}
	return fmt.Sprintf("%.3g s", d.Seconds())
}

// ratio writes how many times as long theirs took as ours.
func ratio(theirs, ours time.Duration) string {
	if ours <= 0 {
		return "?" // too short for the system's clock
	}
	return fmt.Sprintf("%.0f", float64(theirs)/float64(ours))
}
