package night

import "slices"

// Player is a person's index in [Problem].People or [Rolling].People.
type Player int

// Nobody stands for no person: the second seat of a singles team, or a [Violation] without a
// culprit.
const Nobody Player = -1

// Court is a court's index in [Problem].Courts or [Rolling].Courts.
type Court int

// NoCourt stands for no court, in a [Violation] that is about none.
const NoCourt Court = -1

// Team is one side of a game: two partners, or one person and [Nobody].
type Team [2]Player

// Game is one game of a round: two teams on a court.
type Game struct {
	Court Court
	A, B  Team
}

// Players returns the people of the game, team A first, without empty seats.
func (g Game) Players() []Player {
	out := make([]Player, 0, 4)
	for _, p := range g.Seats() {
		if p != Nobody {
			out = append(out, p)
		}
	}
	return out
}

// Singles tells whether one against one is played.
func (g Game) Singles() bool { return g.A[1] == Nobody && g.B[1] == Nobody }

// Partners tells whether the two are a team of the game.
func (g Game) Partners(i, j Player) bool {
	return g.A == Team{i, j} || g.A == Team{j, i} || g.B == Team{i, j} || g.B == Team{j, i}
}

// Seats are the four seats of the game, team A first, empty ones included.
func (g Game) Seats() [4]Player { return [4]Player{g.A[0], g.A[1], g.B[0], g.B[1]} }

// Round is what happens between two calls: the games, and the people who are there and do not
// play. Whoever is in neither was not there.
type Round struct {
	Games []Game
	Out   []Player
}

// Same tells whether two games are the same but for the order of teams and partners.
func (g Game) Same(h Game) bool {
	same := func(a, b Team) bool { return a == b || a[0] == b[1] && a[1] == b[0] }
	return g.Court == h.Court && (same(g.A, h.A) && same(g.B, h.B) || same(g.A, h.B) && same(g.B, h.A))
}

// Has tells whether the round has such a game.
func (r Round) Has(g Game) bool { return slices.ContainsFunc(r.Games, g.Same) }

// Uses tells whether a game of the round is on the court.
func (r Round) Uses(c Court) bool {
	return slices.ContainsFunc(r.Games, func(g Game) bool { return g.Court == c })
}
