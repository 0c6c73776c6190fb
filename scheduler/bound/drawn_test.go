package bound

import (
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
)

// drawn fills the rounds of a night one after the other, so that sit-outs are fair and as few people as can
// be are benched twice running; who plays with whom is by lot.
func drawn(p *night.Problem) []night.Round {
	n, d := night.New(p), dice.New(p.Seed, 1)
	books := lineup.NewRecord(n)
	rounds := make([]night.Round, p.Rounds)
	for r := range rounds {
		l := lineup.Draw(n, r, len(p.Courts), books, d)
		books.Enter(n, r, l.Out)
		var players []night.Player
		for _, units := range l.Units {
			for _, u := range units {
				players = append(players, u.A)
			}
		}
		dice.Shuffle(d, players)
		for k, c := range l.Courts {
			four := players[4*k:]
			rounds[r].Games = append(rounds[r].Games, night.Game{Court: c, A: night.Team{four[0], four[1]}, B: night.Team{four[2], four[3]}})
		}
		rounds[r].Out = l.Out
	}
	return rounds
}
