// Package paper says what stands on the sheets that a night can go on by when the laptop dies: the rotation for
// the wall, a sheet for each person, slips for the courts, lists for the desk. A [Sheet] is words and tables without
// any layout; [Text] writes one as plain text, and whoever draws pages draws the same Sheet.
//
// It also reads what was played from paper and typed afterwards ([ReadTyped]), and enters it into a night by the
// commands of the session ([Enter]).
package paper

import (
	"crypto/sha256"
	"slices"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/standings"
)

// Night is what sheets are made of: a night of the club, or a rotation that was planned ahead. People are called by
// names that tell them apart.
type Night struct {
	Title  string
	Rules  scoring.Rules // of games to come; the zero value where a rotation does not say
	People []Person      // in the order of the check-in list
	Rounds []Round       // those that were called first
	Table  []standings.Row
	Why    map[string]string // why the row of a name stands before the next
	Note   string            // which games the table counts otherwise
	Card   session.EmergencyCard
	Phones string            // address of the page for phones, "" where none is open
	Pages  map[string]string // address of the page of a court that sends its score, by the court; empty where none does
}

// Person is somebody on the check-in list.
type Person struct {
	Name   string // as all sheets but those of the desk have it
	Full   string // as the club knows the person
	Group  string
	Here   bool
	Left   bool   // has gone home
	Note   string // when the person comes or goes, "" for all night
	Hidden bool   // the hall does not see the name: only the desk and the person's own sheet have it
}

// Round is a round that was called or is planned. In the rolling flow all games stand in one round without a number.
type Round struct {
	Number int
	Games  []Game
	Out    []string // who sits out
	Mark   string   // see [Mark]
}

// Game is a game on a court.
type Game struct {
	Court  string
	A, B   []string // one or two names each
	Played bool     // it is over; all that follows is empty before
	Points [2]int   // of A and of B
	How    string   // how it ended where it was not played to its end: "timed"
	Void   bool     // it counts for nothing
}

// Team is the names of a team in one text.
func Team(names []string) string { return strings.Join(names, " & ") }

// has tells whether somebody plays in the game, and on which team and against whom.
func (g Game) has(name string) (own, other []string, ok bool) {
	switch {
	case slices.Contains(g.A, name):
		return g.A, g.B, true
	case slices.Contains(g.B, name):
		return g.B, g.A, true
	}
	return nil, nil, false
}

// markLetters are letters that nobody takes for another, or for a digit.
const markLetters = "ACDEFHJKLMNPQRTUVWXY"

// Mark is a few letters that stand for who plays whom on which court in a round. Full names go into it. They stand on
// the paper and can be typed with the results, so that results of an older print are not taken for those of a
// newer one.
func Mark(games []Game) string {
	sum := sha256.New()
	for _, g := range games {
		sum.Write([]byte(g.Court + "\x00" + strings.Join(g.A, "\x01") + "\x00" + strings.Join(g.B, "\x01") + "\x02"))
	}
	var out strings.Builder
	for _, b := range sum.Sum(nil)[:4] {
		out.WriteByte(markLetters[int(b)%len(markLetters)])
	}
	return out.String()
}

// Names lists all texts of a night that the club or its people chose.
func (n Night) Names() []string {
	out := []string{n.Title}
	add := func(text string) {
		if text != "" && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	for _, p := range n.People {
		add(p.Name)
		add(p.Full)
		add(p.Group)
	}
	for _, r := range n.Rounds {
		for _, g := range r.Games {
			for _, text := range append(append([]string{g.Court}, g.A...), g.B...) {
				add(text)
			}
		}
	}
	return out
}
