package main

import (
	"math/rand/v2"

	"club/quadrille/scheduler/design"
)

// seatRound seats one person of each orbit of a base round. At tables that the turn keeps sit
// either four people whom it leaves alone or, if it moves the layers, one of these and a whole
// orbit.
func (p *puzzle) seatRound(s design.Starter, round int, rng *rand.Rand) {
	var moving, still []int
	done := make([]bool, p.people)
	for _, a := range s.Seated() {
		if done[a] {
			continue
		}
		orbit := p.moves[round].orbit(a)
		for _, b := range orbit {
			done[b] = true
		}
		if len(orbit) == p.moves[round].order {
			moving = append(moving, a)
		} else {
			still = append(still, a)
		}
	}
	rng.Shuffle(len(moving), func(i, j int) { moving[i], moving[j] = moving[j], moving[i] })
	var movers []seat
	if s.Group.Step > 0 {
		for _, f := range still {
			orbit := p.moves[round].orbit(moving[0])
			moving = moving[1:]
			movers = append(movers, seat{len(p.tables), 1, true})
			p.tables = append(p.tables, table{design.Table{f, orbit[0], orbit[1], orbit[2]}, 1, round})
		}
		still = nil
	}
	p.addPool(append(movers, p.seatFours(moving, p.moves[round].repeat, round)...))
	p.addPool(p.seatFours(still, 1, round))
}

// seatCouples seats men and women alternately at as many tables as they fill. Those beyond the games
// of the round sit at tables that count for nothing.
func (p *puzzle) seatCouples(s design.Starter, round int, rng *rand.Rand) {
	var pools [2][]seat
	var filled [2]int
	first, seated := len(p.tables), s.Seated()
	rng.Shuffle(len(seated), func(i, j int) { seated[i], seated[j] = seated[j], seated[i] })
	for range (len(seated) + 3) / 4 {
		repeat := 1
		if len(p.tables)-first >= len(s.Bases[round]) {
			repeat = 0
		}
		p.tables = append(p.tables, table{design.Table{}, repeat, round})
	}
	for _, a := range seated {
		sex := s.Sex(a)
		at := seat{first + filled[sex]/2, filled[sex]%2*2 + sex, false}
		filled[sex]++
		p.put(at, a)
		pools[sex] = append(pools[sex], at)
	}
	p.addPool(pools[0])
	p.addPool(pools[1])
}

// addPool lets the occupants of these seats change places.
func (p *puzzle) addPool(seats []seat) {
	if len(seats) == 0 {
		return
	}
	for range seats {
		p.pool = append(p.pool, len(p.pools))
	}
	p.pools = append(p.pools, seats)
}

// seatFours fills tables of four and returns their seats.
func (p *puzzle) seatFours(people []int, repeat, round int) (seats []seat) {
	for ; len(people) > 0; people = people[4:] {
		for place := range 4 {
			seats = append(seats, seat{len(p.tables), place, false})
		}
		p.tables = append(p.tables, table{design.Table(people[:4]), repeat, round})
	}
	return seats
}
