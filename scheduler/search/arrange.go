package search

import (
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
)

// arrange seats a lineup: fixed partners beside each other, one of each group in a team on mixed
// nights, everybody else by lot.
func arrange(n *night.Night, l lineup.Lineup, d *dice.Dice) []int32 {
	var row []int32
	units := l.Units
	if n.Walls == nil {
		units = deal(n, l.Units, d)
	}
	for _, court := range units {
		row = append(row, seatCourt(n, court, d)...)
	}
	for _, i := range l.Out {
		row = append(row, int32(i))
	}
	return row
}

// deal mixes the units of all courts where everybody may play everywhere.
func deal(n *night.Night, courts [][]lineup.Unit, d *dice.Dice) [][]lineup.Unit {
	var couples, singles [][]lineup.Unit
	var loose [2][]lineup.Unit
	for _, court := range courts {
		for _, u := range court {
			switch {
			case u.Size() == 2:
				couples = append(couples, []lineup.Unit{u})
			case n.Side != nil:
				loose[n.Side[u.A]] = append(loose[n.Side[u.A]], u)
			default:
				loose[0] = append(loose[0], u)
			}
		}
	}
	dice.Shuffle(d, loose[0])
	dice.Shuffle(d, loose[1])
	if n.Side != nil {
		for k := range loose[0] {
			singles = append(singles, []lineup.Unit{loose[0][k], loose[1][k]})
		}
	} else {
		for k := 0; k+1 < len(loose[0]); k += 2 {
			singles = append(singles, loose[0][k:k+2])
		}
	}
	teams := append(couples, singles...)
	dice.Shuffle(d, teams)
	dealt := make([][]lineup.Unit, len(courts))
	for c := range dealt {
		dealt[c] = append(append(dealt[c], teams[2*c]...), teams[2*c+1]...)
	}
	return dealt
}

// seatCourt seats the units of one court.
func seatCourt(n *night.Night, units []lineup.Unit, d *dice.Dice) []int32 {
	dice.Shuffle(d, units)
	var row []int32
	var loose [2][]int32
	for _, u := range units {
		switch {
		case u.Size() == 2:
			first, second := u.A, u.B
			if n.Side != nil && n.Side[first] == 1 {
				first, second = second, first
			}
			row = append(row, int32(first), int32(second))
		case n.Side != nil:
			loose[n.Side[u.A]] = append(loose[n.Side[u.A]], int32(u.A))
		default:
			loose[0] = append(loose[0], int32(u.A))
		}
	}
	if n.Side == nil {
		return append(row, loose[0]...)
	}
	for k := range loose[0] {
		row = append(row, loose[0][k], loose[1][k])
	}
	return row
}
