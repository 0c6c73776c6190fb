package main

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
)

// newDrill builds the command that teaches the call.
func newDrill() *cobra.Command {
	var seed uint64
	var questions int
	var card bool
	cmd := &cobra.Command{
		Use:   "drill",
		Short: "Learn the call and the order of serve by question and answer",
		Long: `Shows a court, says who won the rally, and asks for the next call, the server and the box.
It checks each answer, explains it in a sentence, and asks harder things as the answers get
better. An empty line or q leaves at any time. Answers are read from the standard input, a
line each, as "1-0-2 A1 left", with "ends" and "point" where they are asked for, or "game".
--card shows the court to scale, with the kitchen (non-volley zone), and the rules in brief.`,
		Example: `  quadrille drill
  quadrille drill --seed 1 --questions 10
  quadrille drill --card`,
		Args: nothing,
	}
	flags := cmd.Flags()
	addSeed(cmd, &seed, "equal seeds ask equal questions (default: another drill each time)")
	addWhole(cmd, &questions, "questions", 1, 10_000, "stop after so many (default: go on until left)")
	flags.BoolVar(&card, "card", false, "show what a newcomer has to know, on one screen, and ask nothing")
	excludes(cmd, "card", "questions")
	excludes(cmd, "card", "seed")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		if card {
			_, err := fmt.Fprintln(cmd.OutOrStdout(), strings.Join(drill.Card(), "\n"))
			return err
		}
		if !cmd.Flags().Changed("seed") {
			seed = newSeed()
		}
		lesson, err := drill.New(seed, scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2})
		if err != nil {
			return err
		}
		return teach(cmd.InOrStdin(), cmd.OutOrStdout(), lesson, questions)
	}
	return cmd
}

// teach asks until the learner leaves or has answered so many questions, 0 for any number.
func teach(in io.Reader, out io.Writer, lesson drill.Lesson, questions int) error {
	lines := bufio.NewScanner(in)
	for lesson.Asked < questions || questions == 0 {
		q := lesson.Question()
		fmt.Fprintf(out, "%s\n\n%s\n", strings.Join(drill.Picture(q.Before), "\n"), wrap(q.Text(), 0))
		answer, left := listen(lines, out)
		if left {
			break
		}
		var v drill.Verdict
		lesson, v = lesson.Answer(answer)
		fmt.Fprintf(out, "%s\n\n", wrap(v.String(), 0))
	}
	if err := lines.Err(); err != nil {
		return fmt.Errorf("the answers cannot be read: %s", because(err))
	}
	_, err := fmt.Fprintf(out, "%s\n", lesson)
	return err
}

// listen reads an answer; one that cannot be understood is asked for again and does not count.
func listen(lines *bufio.Scanner, out io.Writer) (answer drill.Answer, left bool) {
	for {
		fmt.Fprint(out, "> ")
		more := lines.Scan()
		text := strings.TrimSpace(lines.Text())
		if !more || text == "" || strings.EqualFold(text, "q") {
			fmt.Fprintln(out)
			return answer, true
		}
		answer, err := drill.ParseAnswer(text)
		if err == nil {
			return answer, false
		}
		fmt.Fprintln(out, wrap(printable(err.Error()), 0))
	}
}
