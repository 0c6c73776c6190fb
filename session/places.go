package session

import (
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session/standings"
)

// Place is a line of the table with how it came about.
type Place struct {
	standings.Row
	People []PersonID        // whom the line is about: one person, or a set pair
	Parted standings.Parting // why it stands above the next line
	Was    int               // the place before the newest round, 0 for who had none
	Form   []Outcome         // of the games that count, in the order of their calls
}

// Moved is how many places up somebody went since the newest round, negative for down. Ok is false for
// who had no place before.
func (p Place) Moved() (up int, ok bool) { return p.Was - p.Rank, p.Was > 0 }

// Outcome is what became of a game for one of its teams.
type Outcome uint8

// The outcomes.
const (
	Lost Outcome = iota
	Level
	Won
)

// Places is the table of a night with the places before the newest round in which a game is over. In the rolling flow, which has
// no rounds, a round is as many games as there are courts.
func Places(club *Club, n *Night) []Place {
	rows, parted := standings.Parted(n.Results(club.Name), n.lots(club.Name))
	was := map[string]int{}
	for _, r := range Standings(club, n.beforeNewest()) {
		was[r.Name] = r.Rank
	}
	people, form := map[string][]PersonID{}, map[string][]Outcome{}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || !g.counts() {
			continue
		}
		winner, decided := g.Final.Winner()
		for side, s := range []Team{g.A, g.B} {
			o := Level
			if decided {
				o = Lost
				if winner == scoring.Team(side) {
					o = Won
				}
			}
			for _, row := range g.rows(s) {
				name := g.competitors(row, club.Name)[0]
				people[name], form[name] = slices.DeleteFunc(members(row), func(id PersonID) bool { return id == "" }), append(form[name], o)
			}
		}
	}
	out := make([]Place, 0, len(rows))
	for i, r := range rows {
		out = append(out, Place{Row: r, Parted: parted[i], People: people[r.Name], Was: was[r.Name], Form: form[r.Name]})
	}
	return out
}

// rows are the lines of the table that a team's game counts for: one for a set pair, else one a player.
func (g *Game) rows(s Team) []Team {
	if s[1] == "" || len(g.competitors(s, func(id PersonID) string { return string(id) })) == 1 {
		return []Team{s}
	}
	return []Team{{s[0]}, {s[1]}}
}

// scored lists the rounds in which a game is over.
func (n *Night) scored() []int {
	var out []int
	for i := range n.Games {
		if g := &n.Games[i]; g.Final != nil && g.Round > 0 && !slices.Contains(out, g.Round) {
			out = append(out, g.Round)
		}
	}
	return out
}

// beforeNewest is the night without the results of the newest round that has some.
func (n *Night) beforeNewest() *Night {
	if len(n.Rounds) > 0 {
		rounds := n.scored()
		if len(rounds) == 0 {
			return n
		}
		return n.without(func(g *Game) bool { return g.Round >= rounds[len(rounds)-1] })
	}
	finished := n.finished()
	return n.after(max(0, len(finished)-max(1, len(n.OpenCourts()))))
}

// without is the night without the results of some games.
func (n *Night) without(are func(*Game) bool) *Night {
	c := n.clone()
	for i := range c.Games {
		if are(&c.Games[i]) {
			c.Games[i].Final = nil
		}
	}
	return c
}

// finished lists the games that are over, in the order of their calls.
func (n *Night) finished() []GameID {
	var out []GameID
	for i := range n.Games {
		if n.Games[i].Final != nil {
			out = append(out, n.Games[i].ID)
		}
	}
	return out
}

// after is the night with the results of the first k games that are over.
func (n *Night) after(k int) *Night {
	finished := n.finished()
	if k >= len(finished) {
		return n
	}
	return n.without(func(g *Game) bool { return g.ID >= finished[k] })
}

// Course is the place of each line of the table after each round in which a game is over: 0 for who had none yet. In the rolling flow,
// which has no rounds, a round is as many games as there are courts. Lines go by their names.
func Course(club *Club, n *Night) (stages int, places map[string][]int) {
	places = map[string][]int{}
	note := func(at *Night) {
		for _, r := range Standings(club, at) {
			line := places[r.Name]
			for len(line) < stages {
				line = append(line, 0)
			}
			places[r.Name] = append(line, r.Rank)
		}
		stages++
	}
	if len(n.Rounds) > 0 {
		for _, k := range n.scored() {
			note(n.without(func(g *Game) bool { return g.Round > k }))
		}
		return stages, places
	}
	step := max(1, len(n.OpenCourts()))
	for k, all := step, len(n.finished()); ; k += step {
		if k >= all {
			if all > 0 {
				note(n)
			}
			return stages, places
		}
		note(n.after(k))
	}
}

// LeastGames is how many games a line should have for its win share to say much: half of the most that anybody
// has, rounded up. The table marks who has fewer, and leaves everybody in place.
func LeastGames(places []Place) int {
	most := 0
	for _, p := range places {
		most = max(most, p.Games)
	}
	return (most + 1) / 2
}
