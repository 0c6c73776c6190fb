package design

import (
	_ "embed" // the stored wheels are part of the program
	"fmt"
	"strings"
	"sync"
)

// wheelText has base rounds of plans that turn into themselves, for nights on which a plain search of a
// tenth of a second finds nothing as good. They were found by simulated annealing of the base rounds
// (cmd/starters -wheel), some within moments and some after minutes. Each is a paragraph: a line of numbers,
// then each base round as a line of tables, each table four of the [WheelLetters].
//
//go:embed wheels.txt
var wheelText string

// WheelLetters name the people of stored base rounds, one letter each, from person 0 on.
const WheelLetters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"

// wheelHead is the first line of a stored wheel, up to the sizes of its circles.
const wheelHead = "%d people %d tables %d rounds %d meetings %d order circles"

// stored reads the stored wheels once. A text that is not as it should be is a fault of the program, which
// the tests would have found.
var stored = sync.OnceValue(func() []WheelStarter {
	var all []WheelStarter
	for _, paragraph := range strings.Split(strings.TrimSpace(wheelText), "\n\n") {
		w, err := ParseWheel(paragraph)
		if err != nil {
			panic(err)
		}
		all = append(all, w)
	}
	return all
})

// ParseWheel reads a starter that [WheelStarter.Text] wrote.
func ParseWheel(text string) (w WheelStarter, err error) {
	head, rounds, _ := strings.Cut(strings.TrimSpace(text), "\n")
	if _, err := fmt.Sscanf(head, wheelHead, &w.People, &w.Tables, &w.Rounds, &w.Meetings, &w.Order); err != nil {
		return w, fmt.Errorf("%q begins no wheel: %w", head, err)
	}
	_, circles, _ := strings.Cut(head, "circles")
	for _, word := range strings.Fields(circles) {
		size := 0
		if _, err := fmt.Sscan(word, &size); err != nil {
			return w, fmt.Errorf("%q is no size of a circle: %w", word, err)
		}
		w.Circles = append(w.Circles, size)
	}
	for line := range strings.Lines(rounds) {
		var base []Table
		for _, four := range strings.Fields(line) {
			if len(four) != 4 {
				return w, fmt.Errorf("%q is no table of four", four)
			}
			var t Table
			for seat := range t {
				if t[seat] = strings.IndexByte(WheelLetters, four[seat]); t[seat] < 0 || t[seat] >= w.People {
					return w, fmt.Errorf("%q seats somebody who is not there", four)
				}
			}
			base = append(base, t)
		}
		w.Bases = append(w.Bases, base)
	}
	return w, nil
}

// Text writes the starter as wheels.txt has it.
func (s WheelStarter) Text() string {
	var out strings.Builder
	fmt.Fprintf(&out, wheelHead, s.People, s.Tables, s.Rounds, s.Meetings, s.Order)
	for _, size := range s.Circles {
		fmt.Fprintf(&out, " %d", size)
	}
	out.WriteByte('\n')
	for _, base := range s.Bases {
		for k, t := range base {
			if k > 0 {
				out.WriteByte(' ')
			}
			for _, p := range t {
				out.WriteByte(WheelLetters[p])
			}
		}
		out.WriteByte('\n')
	}
	return out.String()
}
