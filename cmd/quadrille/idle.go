package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"club/quadrille/scheduler"
)

// judged is an audit as JSON: the certificate, and the open courts without a game where there are any.
type judged struct {
	scheduler.Certificate
	Empty []emptyRound `json:"empty_courts,omitempty"`
}

type emptyRound struct {
	Round  int      `json:"round"` // from 1
	Courts []string `json:"courts"`
	More   int      `json:"more_games"` // that the people there could have played
}

func emptyCourts(p scheduler.Problem, idle []scheduler.Idle) []emptyRound {
	var out []emptyRound
	for _, i := range idle {
		out = append(out, emptyRound{i.Round + 1, courtNames(p, i.Courts), i.More})
	}
	return out
}

func courtNames(p scheduler.Problem, courts []scheduler.Court) []string {
	names := make([]string, len(courts))
	for i, c := range courts {
		names[i] = p.Courts[c].Name
	}
	return names
}

// printIdle says which courts stood empty and whether they needed to, equal rounds that follow each other
// on one line, and returns how many more games were possible.
func printIdle(w io.Writer, p scheduler.Problem, idle []scheduler.Idle) (more int, err error) {
	var out strings.Builder
	for len(idle) > 0 {
		n := 1
		for n < len(idle) && idle[n].Round == idle[n-1].Round+1 && idle[n].More == idle[0].More && slices.Equal(idle[n].Courts, idle[0].Courts) {
			n++
		}
		out.WriteString(wrap(idleText(p, idle[:n]), 2) + "\n")
		more += n * idle[0].More
		idle = idle[n:]
	}
	if out.Len() > 0 {
		out.WriteByte('\n')
	}
	_, err = io.WriteString(w, out.String())
	return more, err
}

// idleText tells of rounds in which the same courts stood empty.
func idleText(p scheduler.Problem, same []scheduler.Idle) string {
	rounds, each := fmt.Sprintf("Round %d", same[0].Round+1), ""
	if last := same[len(same)-1].Round + 1; len(same) > 1 {
		rounds, each = fmt.Sprintf("Rounds %d to %d", same[0].Round+1, last), " in each"
	}
	names := courtNames(p, same[0].Courts)
	courts := "court "
	if len(names) > 1 {
		courts = "courts "
	}
	text := rounds + ": " + courts + list(names) + " stood empty; "
	if same[0].More == 0 {
		return text + "no further game was possible."
	}
	return text + moreGames(same[0].More) + " possible" + each + "."
}

// list joins words as a sentence does.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
