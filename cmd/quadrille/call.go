package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"club/quadrille/scoring"
)

// newCall builds the command that keeps the call of one game.
func newCall() *cobra.Command {
	var c caller
	var teamA, teamB string
	var json bool
	first := scoring.A
	cmd := &cobra.Command{
		Use:   "call",
		Short: "Read who won each rally, say the call after it",
		Long: `Reads the winners of rallies from the standard input, a letter each: a or b. White space
does not count. After each rally it says the call, who serves from which box, and why, and
when the teams switch ends: at 6 in a game to 11, at 8 to 15, at 11 to 21.`,
		Example: `  printf 'a b b b a' | quadrille call
  printf abba | quadrille call --scoring rally --team-a Ann,Art --team-b Bea,Bob`,
		Args: nothing,
	}
	rules := rulesFlags(cmd)
	singlesFlag(cmd, rules)
	const names = "the names of a team with a comma between, such as Ann,Art"
	addText(cmd, &teamA, "team-a", names, "`names` of team A, the one who starts right first: Ann,Art")
	addText(cmd, &teamB, "team-b", names, "`names` of team B")
	addChoice(cmd, &first, "first", "who serves first", parseSide, "a", "b")
	cmd.Flags().BoolVar(&json, "json", false, "print one JSON object a line")
	cmd.RunE = func(cmd *cobra.Command, _ []string) (err error) {
		if err := rules.Validate(); err != nil {
			return usage{err}
		}
		if c.names[scoring.A], err = teamNames(teamA, rules.Singles); err != nil {
			return usagef("--team-a: %w", err)
		}
		if c.names[scoring.B], err = teamNames(teamB, rules.Singles); err != nil {
			return usagef("--team-b: %w", err)
		}
		if err := distinct(c.names); err != nil {
			return err
		}
		c.print = c.printLine
		if json {
			c.print = c.printObject
		}
		c.out = cmd.OutOrStdout()
		return c.follow(scoring.Start(*rules, first), cmd.InOrStdin())
	}
	return cmd
}

// parseSide reads a or b.
func parseSide(text string) (side scoring.Team, err error) {
	err = side.UnmarshalText([]byte(text))
	return side, err
}

// teamNames reads the players of a team, separated by a comma.
func teamNames(text string, singles bool) (names [2]string, err error) {
	if text == "" {
		return names, nil
	}
	parts := strings.Split(printable(text), ",")
	want := 2
	if singles {
		want = 1
	}
	if len(parts) != want {
		return names, fmt.Errorf("%d names instead of %d: separate two names with one comma", len(parts), want)
	}
	for i, part := range parts {
		if names[i] = strings.TrimSpace(part); names[i] == "" {
			return names, fmt.Errorf("a name is empty")
		}
	}
	return names, nil
}

// distinct refuses two players of one name, whose calls nobody could tell apart.
func distinct(teams scoring.Names) error {
	var seen []string
	for _, team := range teams {
		for _, name := range team {
			if name != "" && slices.ContainsFunc(seen, func(s string) bool { return strings.EqualFold(s, name) }) {
				return usagef("two players are called %s: give each another name, as in %s H and %s M", name, name, name)
			}
			seen = append(seen, name)
		}
	}
	return nil
}

// caller says the call after each rally.
type caller struct {
	names scoring.Names
	out   io.Writer
	print func(scoring.State) error
}

// follow reads rallies as they come, so that a person or a pipe may type them during the game.
func (c *caller) follow(s scoring.State, in io.Reader) error {
	if err := c.print(s); err != nil {
		return err
	}
	letters := bufio.NewReader(in)
	for place := 1; ; place++ {
		letter, _, err := letters.ReadRune()
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return fmt.Errorf("the rallies cannot be read: %s", because(err))
		case unicode.IsSpace(letter):
			continue
		}
		won, err := parseSide(string(letter))
		if err != nil {
			return fmt.Errorf("character %d, after rally %d, is %q: write a or b for the team that won the rally", place, s.Rally, letter)
		}
		if s.Done {
			return fmt.Errorf("the game was over after rally %d: what comes after it counts for nothing", s.Rally)
		}
		s = s.After(scoring.Rally{Won: won})
		if err := c.print(s); err != nil {
			return err
		}
	}
}

// printLine says a state in words.
func (c *caller) printLine(s scoring.State) error {
	call, text := s.Call(), c.names.Player(s.Server)+" serves from the "+s.Box.String()+" box to "+c.names.Player(s.Receiver)
	if s.Done {
		call, text = "game", c.names.Team(s, s.Winner)+" won, "+s.Score.String()
	}
	const indent = 14
	_, err := fmt.Fprintf(c.out, "%3d  %-7s  %s\n%14s%s\n", s.Rally, call, wrap(text, indent), "", wrap(s.WhyFor(c.names), indent))
	if ends := s.EndsWhy(c.names); err == nil && ends != "" {
		_, err = fmt.Fprintf(c.out, "%14s%s\n", "", wrap(ends, indent))
	}
	return err
}

// called is a state as `call --json` prints it. Its form is fixed.
type called struct {
	Rally    int           `json:"rally"`
	Won      *scoring.Team `json:"won"`  // null before the first rally
	Call     string        `json:"call"` // "" once the game is over
	Serving  scoring.Team  `json:"serving"`
	Server   string        `json:"server"`
	Number   int           `json:"number"` // 0 where the call has two numbers
	Box      scoring.Box   `json:"box"`
	Receiver string        `json:"receiver"`
	What     string        `json:"what"`
	Done     bool          `json:"done"`
	Why      string        `json:"why"`
}

// printObject writes a state as one JSON object on a line.
func (c *caller) printObject(s scoring.State) error {
	v := called{
		Rally: s.Rally, Call: s.Call(), Serving: s.Serving, Server: c.names.Player(s.Server), Number: s.Number, Box: s.Box,
		Receiver: c.names.Player(s.Receiver), What: s.What.String(), Done: s.Done, Why: strings.TrimSpace(s.WhyFor(c.names) + " " + s.EndsWhy(c.names)),
	}
	if s.Rally > 0 {
		v.Won = &s.Won
	}
	return printJSON(c.out, v)
}
