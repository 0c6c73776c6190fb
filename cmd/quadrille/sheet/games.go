// Package sheet reads tables that spreadsheets save.
package sheet

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"club/quadrille/session"
	"club/quadrille/session/spreadsheet"
	"club/quadrille/session/standings"
)

// MaxGames is the most games that a spreadsheet may have.
const MaxGames = 500_000

// Game is one finished game of a spreadsheet.
type Game struct {
	Line  int    // in the file
	Night string // what the column night says, "" without one
	standings.Result
}

// layout is what a spreadsheet of games looks like.
var layout = spreadsheet.Layout{
	The: "the games", Is: "are", Has: "have",
	Columns:  []string{"a1", "b1", "score_a", "score_b", "a2", "b2", "night", "how"},
	Required: []string{"a1", "b1", "score_a", "score_b"},
	Header:   "a1,a2,b1,b2,score_a,score_b",
}

// Games reads a spreadsheet of games: CSV with the header a1,a2,b1,b2,score_a,score_b in any order,
// a2 and b2 empty for singles. A column night is kept. Where a column how says void, walkover or
// retired, the game counts for no table and is left out, as a night's own standings do. Other
// columns do not matter. Commas or semicolons part the columns, as the header has
// them. Two spellings of a name that differ in case only are one person, called as first written.
//
// Every error names the line and says what to do; no game is dropped silently.
func Games(r io.Reader) ([]Game, error) {
	names := names{}
	var out []Game
	for row, err := range layout.Rows(r) {
		if err != nil {
			return nil, err
		}
		game, counts, err := names.game(row.Cell)
		if err != nil {
			return nil, fmt.Errorf("games line %d: %w", row.Line, err)
		}
		if game.Line = row.Line; counts {
			out = append(out, game)
		}
		if len(out) > MaxGames {
			return nil, fmt.Errorf("more than %d games are too many: take fewer seasons at a time", MaxGames)
		}
	}
	return out, nil
}

// names keeps the first spelling of each name.
type names map[string]string

// game reads one row; counts is false for a game that was not played out.
func (n names) game(cell func(string) string) (g Game, counts bool, err error) {
	switch strings.ToLower(cell("how")) {
	case "void", "walkover", "retired":
		return g, false, nil
	}
	g.Night = session.CleanText(cell("night"), session.MaxName)
	if g.A, err = n.team(cell("a1"), cell("a2")); err != nil {
		return g, false, fmt.Errorf("team a: %w", err)
	}
	if g.B, err = n.team(cell("b1"), cell("b2")); err != nil {
		return g, false, fmt.Errorf("team b: %w", err)
	}
	if len(g.A) != len(g.B) {
		return g, false, fmt.Errorf("%d play against %d: leave both a2 and b2 empty for singles", len(g.A), len(g.B))
	}
	seen := map[string]bool{}
	for _, name := range append(append([]string(nil), g.A...), g.B...) {
		if seen[name] {
			return g, false, fmt.Errorf("%s stands twice in one game", name)
		}
		seen[name] = true
	}
	if g.ScoreA, err = score(cell("score_a")); err != nil {
		return g, false, fmt.Errorf("score_a: %w", err)
	}
	if g.ScoreB, err = score(cell("score_b")); err != nil {
		return g, false, fmt.Errorf("score_b: %w", err)
	}
	switch {
	case g.ScoreA > g.ScoreB:
		g.Winner = -1
	case g.ScoreA < g.ScoreB:
		g.Winner = 1
	}
	return g, true, nil
}

// team reads the one or two names of a side.
func (n names) team(first, second string) ([]string, error) {
	if first == "" {
		return nil, fmt.Errorf("the first name is missing")
	}
	var out []string
	for _, text := range []string{first, second} {
		if text == "" {
			continue
		}
		name, err := session.CleanName(spreadsheet.Plain(text))
		if err != nil {
			return nil, err
		}
		key := strings.ToLower(name)
		if _, known := n[key]; !known {
			n[key] = name
		}
		out = append(out, n[key])
	}
	return out, nil
}

func score(text string) (int, error) {
	points, err := strconv.ParseUint(text, 10, 16)
	if err != nil || points > 999 {
		return 0, fmt.Errorf("%q is no number of points: write a whole number such as 11", text)
	}
	return int(points), nil
}
