package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Answers without a plan.
var (
	errNoAnswer   = errors.New("the solver printed no plan")
	errImpossible = errors.New("the model has no answer: choose a night on which nobody need meet twice, or a whole whist tournament")
)

// maxNumber bounds what is read, so that a damaged answer cannot ask for much memory.
const maxNumber = 1 << 12

// A solver's statistics are lines that begin with statistic, then name=seconds.
const statistic = "%%%mzn-stat: "

// writeAnswer writes one line for each game, with numbers from 1, and then the time that the search
// took as solvers write it:
//
//	game ROUND COURT A1 A2 B1 B2
//	%%%mzn-stat: solveTime=SECONDS
func writeAnswer(w io.Writer, rounds []scheduler.Round, search time.Duration) error {
	var b strings.Builder
	for r, round := range rounds {
		for _, g := range round.Games {
			fmt.Fprintf(&b, "game %d %d %d %d %d %d\n", r+1, g.Court+1, g.A[0]+1, g.A[1]+1, g.B[0]+1, g.B[1]+1)
		}
	}
	fmt.Fprintf(&b, "%ssolveTime=%f\n", statistic, search.Seconds())
	_, err := io.WriteString(w, b.String())
	return err
}

// readAnswer reads the game lines of an answer and takes no notice of others, as solvers add
// statistics. It returns [errImpossible] if the solver proved that there is no plan, [errNoAnswer] if
// there is none, and an error with the line if one cannot be a game. Whether the games are a valid
// plan is for the audit.
func readAnswer(r io.Reader) ([]scheduler.Round, error) {
	var rounds []scheduler.Round
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		line := lines.Text()
		if line == "=====UNSATISFIABLE=====" {
			return nil, errImpossible
		}
		if !strings.HasPrefix(line, "game ") {
			continue
		}
		round, g, err := readGame(line)
		if err != nil {
			return nil, err
		}
		for len(rounds) < round {
			rounds = append(rounds, scheduler.Round{})
		}
		rounds[round-1].Games = append(rounds[round-1].Games, g)
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("reading the answer: %w", err)
	}
	if len(rounds) == 0 {
		return nil, errNoAnswer
	}
	return rounds, nil
}

// readGame reads one line. The round counts from 1.
func readGame(line string) (round int, g scheduler.Game, err error) {
	var n [6]int
	var rest string
	got, _ := fmt.Sscanf(line, "game %d %d %d %d %d %d%s", &n[0], &n[1], &n[2], &n[3], &n[4], &n[5], &rest)
	if got != len(n) {
		return 0, g, fmt.Errorf("%q is no game: it needs a round, a court and four people", line)
	}
	for _, x := range n {
		if x < 1 || x > maxNumber {
			return 0, g, fmt.Errorf("%q is no game: %d is not between 1 and %d", line, x, maxNumber)
		}
	}
	player := func(x int) scheduler.Player { return scheduler.Player(x - 1) }
	return n[0], scheduler.Game{
		Court: scheduler.Court(n[1] - 1),
		A:     scheduler.Team{player(n[2]), player(n[3])},
		B:     scheduler.Team{player(n[4]), player(n[5])},
	}, nil
}

// searchTime adds up what an answer's statistics say of the search: posting the constraints, then
// solving. The translation of a model is not in it.
func searchTime(output string) time.Duration {
	var sum time.Duration
	for line := range strings.Lines(output) {
		for _, name := range []string{"initTime", "solveTime"} {
			if number, ok := strings.CutPrefix(strings.TrimSpace(line), statistic+name+"="); ok {
				seconds, _ := strconv.ParseFloat(number, 64)
				sum += time.Duration(seconds * float64(time.Second))
			}
		}
	}
	return sum
}
