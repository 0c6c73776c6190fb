package lineup

import (
	"slices"

	"club/quadrille/scheduler/night"
)

// Relieve makes other people sit out: those who now may play take the places of those who may not any more, on
// mixed nights of their own group. Nobody may be bound to a partner.
func (l *Lineup) Relieve(n *night.Night, out []night.Player) {
	side := func(i night.Player) int {
		if n.Side == nil {
			return 0
		}
		return n.Side[i]
	}
	var free [2][]night.Player
	for _, i := range l.Out {
		if !slices.Contains(out, i) {
			free[side(i)] = append(free[side(i)], i)
		}
	}
	for _, units := range l.Units {
		for k := range units {
			if i := units[k].A; slices.Contains(out, i) {
				s := side(i)
				units[k] = Unit{A: free[s][0], B: night.Nobody}
				free[s] = free[s][1:]
			}
		}
	}
	l.Out = slices.Clone(out)
}
