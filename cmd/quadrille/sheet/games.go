// Package sheet reads tables that spreadsheets save.
package sheet

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"club/quadrille/scoring"
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
	How   scoring.How
	standings.Result
}

// Sheet is a spreadsheet of games that was read.
type Sheet struct {
	Games []Game
	Notes []string // what whoever reads it must be told, a sentence each
}

// layout is what a spreadsheet of games looks like.
var layout = spreadsheet.Layout{
	The: "the games", Is: "are", Has: "have",
	Columns: []spreadsheet.Column{
		{Name: "a1", Required: true},
		{Name: "b1", Required: true},
		{Name: "score_a", Required: true},
		{Name: "score_b", Required: true},
		{Name: "a2"},
		{Name: "b2"},
		{Name: "night", Words: []string{"date"}},
		{Name: "how"},
	},
	Quiet:  []string{"round", "court", "called", "finished", "format", "rules"}, // of an export of games
	Header: "a1,a2,b1,b2,score_a,score_b",
	MaxMiB: 64,
}

// Games reads a spreadsheet of games: a table with the header a1,a2,b1,b2,score_a,score_b in any order,
// a2 and b2 empty for singles. A column night is kept. The column how says how a game ended, as an export of
// games does: see [ending]; empty is played. Two spellings of a name that differ in case only are one person,
// called as first written.
//
// Every error names the line and says what to do; no game is dropped.
func Games(r io.Reader) (Sheet, error) {
	table, err := layout.Read(r)
	if err != nil {
		return Sheet{}, err
	}
	names := names{}
	out := Sheet{Notes: table.Notes}
	for row, err := range table.Rows() {
		if err != nil {
			return Sheet{}, err
		}
		game, err := names.game(row.Cell)
		if err != nil {
			return Sheet{}, fmt.Errorf("games line %d: %w", row.Line, err)
		}
		game.Line = row.Line
		if out.Games = append(out.Games, game); len(out.Games) > MaxGames {
			return Sheet{}, fmt.Errorf("more than %d games are too many: take fewer seasons at a time", MaxGames)
		}
	}
	return out, nil
}

// Night are the games of one night, as the column night has it.
func (s Sheet) Night(night string) ([]Game, error) {
	var of []Game
	for _, g := range s.Games {
		if g.Night == night {
			of = append(of, g)
		}
	}
	if of == nil {
		return nil, fmt.Errorf("no game has %s in its column night", night)
	}
	return of, nil
}

// Without splits off the games that ended in one of some ways, and says how many there are; the text is empty
// when there is none.
func Without(games []Game, ways ...scoring.How) (kept []Game, left string) {
	count := map[scoring.How]int{}
	for _, g := range games {
		if slices.Contains(ways, g.How) {
			count[g.How]++
			continue
		}
		kept = append(kept, g)
	}
	all := len(games) - len(kept)
	if all == 0 {
		return kept, ""
	}
	var parts []string
	for _, how := range ways {
		if count[how] > 0 {
			parts = append(parts, fmt.Sprintf("%d %v", count[how], how))
		}
	}
	noun := "games"
	if all == 1 {
		noun = "game"
	}
	return kept, fmt.Sprintf("%d %s left out: %s", all, noun, strings.Join(parts, ", "))
}

// names keeps the first spelling of each name.
type names map[string]string

// game reads one row.
func (n names) game(cell func(string) string) (g Game, err error) {
	g.Night = session.CleanText(cell("night"), session.MaxName)
	if g.A, err = n.team(cell("a1"), cell("a2")); err != nil {
		return g, fmt.Errorf("team a: %w", err)
	}
	if g.B, err = n.team(cell("b1"), cell("b2")); err != nil {
		return g, fmt.Errorf("team b: %w", err)
	}
	if len(g.A) != len(g.B) {
		return g, fmt.Errorf("%d play against %d: leave both a2 and b2 empty for singles", len(g.A), len(g.B))
	}
	seen := map[string]bool{}
	for _, name := range slices.Concat(g.A, g.B) {
		if seen[name] {
			return g, fmt.Errorf("%s stands twice in one game", name)
		}
		seen[name] = true
	}
	return g, g.end(cell)
}

// end reads the score of a game, and who won.
func (g *Game) end(cell func(string) string) (err error) {
	var team scoring.Team
	var named bool
	if g.How, team, named, err = ending(cell("how")); err != nil || g.How == scoring.Void {
		return err
	}
	if g.ScoreA, err = score(cell("score_a")); err != nil {
		return fmt.Errorf("score_a: %w", err)
	}
	if g.ScoreB, err = score(cell("score_b")); err != nil {
		return fmt.Errorf("score_b: %w", err)
	}
	switch {
	case named:
		g.Winner = -1
		if team == scoring.B {
			g.Winner = 1
		}
	case g.ScoreA > g.ScoreB:
		g.Winner = -1
	case g.ScoreA < g.ScoreB:
		g.Winner = 1
	case g.How == scoring.Retired || g.How == scoring.Walkover:
		return fmt.Errorf("%d-%d does not tell who won: write \"retired a\" under how when team a retired, \"walkover a\" when team a came alone", g.ScoreA, g.ScoreB)
	}
	return nil
}

// ending reads how a game ended: played, timed, retired, walkover or void. Behind retired may stand the team
// that gave up and so lost, behind walkover the one that came and so won; without it the score tells.
func ending(text string) (how scoring.How, winner scoring.Team, named bool, err error) {
	word, team, named := strings.Cut(strings.Join(strings.Fields(strings.ToLower(text)), " "), " ")
	if word == "" {
		return scoring.Played, winner, false, nil
	}
	err = how.UnmarshalText([]byte(word))
	if err == nil && named {
		err = winner.UnmarshalText([]byte(team))
		if how == scoring.Retired {
			winner = winner.Other()
		}
	}
	if err != nil || named && how != scoring.Retired && how != scoring.Walkover {
		return 0, 0, false, fmt.Errorf("how %q is not known: write played, timed, retired b (team b retired), walkover a (only team a came) or void", text)
	}
	return how, winner, named, nil
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
