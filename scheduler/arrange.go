package scheduler

// arrange seats a lineup: fixed partners beside each other, one of each group in a team on mixed
// nights, everybody else by lot.
func (n *night) arrange(l lineup, d *dice) []int32 {
	var row []int32
	units := l.units
	if n.walls == nil {
		units = n.deal(l.units, d)
	}
	for _, court := range units {
		row = append(row, n.seatCourt(court, d)...)
	}
	for _, i := range l.out {
		row = append(row, int32(i))
	}
	return row
}

// deal mixes the units of all courts where everybody may play everywhere.
func (n *night) deal(courts [][]unit, d *dice) [][]unit {
	var couples, singles [][]unit
	var loose [2][]unit
	for _, court := range courts {
		for _, u := range court {
			switch {
			case u.size() == 2:
				couples = append(couples, []unit{u})
			case n.side != nil:
				loose[n.side[u.a]] = append(loose[n.side[u.a]], u)
			default:
				loose[0] = append(loose[0], u)
			}
		}
	}
	shuffle(d, loose[0])
	shuffle(d, loose[1])
	if n.side != nil {
		for k := range loose[0] {
			singles = append(singles, []unit{loose[0][k], loose[1][k]})
		}
	} else {
		for k := 0; k+1 < len(loose[0]); k += 2 {
			singles = append(singles, loose[0][k:k+2])
		}
	}
	teams := append(couples, singles...)
	shuffle(d, teams)
	dealt := make([][]unit, len(courts))
	for c := range dealt {
		dealt[c] = append(append(dealt[c], teams[2*c]...), teams[2*c+1]...)
	}
	return dealt
}

// seatCourt seats the units of one court.
func (n *night) seatCourt(units []unit, d *dice) []int32 {
	shuffle(d, units)
	var row []int32
	var loose [2][]int32
	for _, u := range units {
		switch {
		case u.size() == 2:
			first, second := u.a, u.b
			if n.side != nil && n.side[first] == 1 {
				first, second = second, first
			}
			row = append(row, int32(first), int32(second))
		case n.side != nil:
			loose[n.side[u.a]] = append(loose[n.side[u.a]], int32(u.a))
		default:
			loose[0] = append(loose[0], int32(u.a))
		}
	}
	if n.side == nil {
		return append(row, loose[0]...)
	}
	for k := range loose[0] {
		row = append(row, loose[0][k], loose[1][k])
	}
	return row
}
