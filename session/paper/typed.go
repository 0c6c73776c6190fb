package paper

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Typed is what somebody typed from paper.
type Typed struct {
	Results []TypedResult
	Marks   []TypedMark
}

// TypedResult is a line with the result of one game. Words are its court, which may have several words, and its score:
// which is which can be told by who knows the courts.
type TypedResult struct {
	Line  int
	Round int
	Words []string
}

// TypedMark is a line with the mark of a round, as it stands on the paper.
type TypedMark struct {
	Line  int
	Round int
	Mark  string
}

// The most that is read.
const (
	maxTypedLines = 20_000
	maxTypedLine  = 400 // bytes
)

// ReadTyped reads results of games, a line each: round, court and score, as in "1 3 11 7" or "1 3 11-7". In place of
// a score may stand what the desk takes too: "9-6 timed", "9-6 retired b", "walkover a" or "void". A line "round 3 KQFA"
// has the letters that stand behind a round on the paper. Empty lines and what follows a # are left out. Every error
// names the line.
func ReadTyped(r io.Reader) (Typed, error) {
	var out Typed
	in := bufio.NewScanner(r)
	in.Buffer(nil, maxTypedLine)
	line := 0
	for in.Scan() {
		if line++; line > maxTypedLines {
			return Typed{}, fmt.Errorf("more than %d lines are too many for one night", maxTypedLines)
		}
		text, _, _ := strings.Cut(strings.TrimPrefix(in.Text(), "\ufeff"), "#")
		words := strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" \t,;\r\u00a0", c) })
		if len(words) == 0 {
			continue
		}
		if err := out.add(line, words); err != nil {
			return Typed{}, fmt.Errorf("line %d: %w", line, err)
		}
	}
	if err := in.Err(); errors.Is(err, bufio.ErrTooLong) {
		return Typed{}, fmt.Errorf("line %d is longer than %d letters: write one game a line, such as 1 3 11 7", line+1, maxTypedLine)
	} else if err != nil {
		return Typed{}, err
	}
	if len(out.Results) == 0 {
		return Typed{}, fmt.Errorf("no result was typed: write round, court and score of a game a line, such as 1 3 11 7")
	}
	return out, nil
}

// add reads the words of one line.
func (t *Typed) add(line int, words []string) error {
	const how = "write round, court and score, such as 1 3 11 7"
	if strings.EqualFold(words[0], "round") {
		if len(words) != 3 {
			return fmt.Errorf("the letters of a round stand behind its number: round 3 KQFA")
		}
		round, err := roundNumber(words[1])
		t.Marks = append(t.Marks, TypedMark{line, round, strings.ToUpper(strings.Trim(words[2], "[]"))})
		return err
	}
	round, err := roundNumber(words[0])
	switch {
	case err != nil:
		return fmt.Errorf("%w: %s", err, how)
	case len(words) < 3:
		return fmt.Errorf("the score is missing: %s", how)
	}
	t.Results = append(t.Results, TypedResult{line, round, words[1:]})
	return nil
}

// maxRound is the highest number of a round.
const maxRound = 500

func roundNumber(text string) (int, error) {
	n, err := strconv.ParseUint(text, 10, 16)
	if err != nil || n < 1 || n > maxRound {
		return 0, fmt.Errorf("%q is no round: rounds are numbered from 1", text)
	}
	return int(n), nil
}

// at takes a line apart for the courts that there are: the longest name of one that its words begin with, and the score.
func (r TypedResult) at(courts []string) (court, score string, err error) {
	for n := len(r.Words) - 1; n > 0; n-- {
		for _, c := range courts {
			if strings.EqualFold(strings.Join(strings.Fields(c), " "), strings.Join(r.Words[:n], " ")) {
				return c, strings.Join(r.Words[n:], " "), nil
			}
		}
	}
	return "", "", fmt.Errorf("line %d: round %d has no game on court %s: its courts are %s", r.Line, r.Round, r.Words[0], strings.Join(courts, ", "))
}
