package main

import (
	"fmt"
	"io"
	"strings"

	"club/quadrille/scheduler"
)

// printAlternatives writes what each way to share the bench gains and pays, where there is a choice. The one that
// was made is marked.
func printAlternatives(w io.Writer, all []scheduler.Alternative, p scheduler.Problem) error {
	if len(all) < 2 {
		return nil
	}
	var out strings.Builder
	out.WriteString("Ways to share the bench (--benching strict: the first; mixed: the last, where a\n" +
		"sit-out twice running weighs as much as one and a half repeated meetings):\n")
	for k, a := range all {
		mark := " "
		if k == 0 && p.Benching == scheduler.StrictBench || k == len(all)-1 && p.Benching == scheduler.MixedBench {
			mark = "*"
		}
		c := a.Certificate
		fmt.Fprintf(&out, "%s %s: %s, %s never meet\n", mark, twiceWords(c.BenchedTwice.Value, scheduler.TwicePeople(p, a.Rounds)),
			counted(c.MeetingEvenness.Value, "repeated meeting", "repeated meetings"), counted(c.Strangers.Value, "pair", "pairs"))
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// printLevelAlternatives writes what each step of leveling gains and pays, where there is a choice. The one that was
// made is marked; where a step gains nothing beside the one before, that one stands for both.
func printLevelAlternatives(w io.Writer, all []scheduler.Alternative, made scheduler.Leveling) error {
	if len(all) < 2 {
		return nil
	}
	var out strings.Builder
	out.WriteString("Steps of even games (--levels), with a sure winner where one team wins three times\nin four or more:\n")
	marked := 0
	for k, a := range all {
		if a.Leveling <= made {
			marked = k
		}
	}
	for k, a := range all {
		mark := " "
		if k == marked {
			mark = "*"
		}
		c := a.Certificate
		fmt.Fprintf(&out, "%s %s: %s with a sure winner, %s\n", mark, a.Leveling,
			ofGames(c.Levels.Onesided, c.Levels.Games), counted(c.MeetingEvenness.Value, "repeated meeting", "repeated meetings"))
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// twiceWords says how often people sit out twice running, and how many.
func twiceWords(times, people int) string {
	switch {
	case times == 0:
		return "nobody sits out twice running"
	case times == people:
		return counted(people, "person sits", "people sit") + " out twice running once"
	}
	return fmt.Sprintf("%s out twice running, %d times in all", counted(people, "person sits", "people sit"), times)
}
