package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// held is what no move of a board may change.
type held struct {
	seats []bool // at round·width + seat: its occupant stays
	plays []bool // at round·people + person: the person is not benched
	rests []bool // at round·people + person: the person has no game
}

// holds tells whether a move leaves what is held as it is.
func (b *board) holds(steps []step) bool {
	for _, x := range steps {
		at := x.r * b.width
		if b.held.seats[at+x.s] || b.held.seats[at+x.t] {
			return false
		}
		seats := b.shapes[x.r].Seats()
		for _, way := range [2][2]int{{x.s, x.t}, {x.t, x.s}} {
			if way[0] >= seats || way[1] < seats {
				continue
			}
			off, on := x.r*b.n.People+int(b.seat[at+way[0]]), x.r*b.n.People+int(b.seat[at+way[1]])
			if b.held.plays[off] || b.held.rests[on] {
				return false
			}
		}
	}
	return true
}

// pinned changes rounds so that what was pinned is in them, and then makes the rest as good as it can be with
// that. It sets out from a plan made without pins: what is decided by hand is little, and the more of a good
// plan stays around it the better. Rounds that cannot be changed so stay as they are.
func (s *search) pinned(ctx context.Context, rounds, shown []night.Round) []night.Round {
	pins := s.n.Problem.Pins
	if !slices.ContainsFunc(pins, func(p night.Pin) bool { return !p.KeptIn(rounds[p.Round-s.n.First]) }) {
		return rounds
	}
	b := s.boardOf(rounds).holding()
	order := slices.Clone(pins) // whole games first: they leave least choice
	slices.SortStableFunc(order, func(p, q night.Pin) int { return len(q.People()) - len(p.People()) })
	for _, p := range order {
		if !b.place(p, s.d) {
			return rounds
		}
	}
	return s.finish(s.aroundPins(ctx, b), shown)
}

// withPinned adds games that are pinned on their courts to those that people have seen: both stay there.
func withPinned(n *night.Night, shown []night.Round) []night.Round {
	out := slices.Clone(shown)
	for _, p := range n.Problem.Pins {
		if p.Court == night.NoCourt {
			continue
		}
		r := p.Round - n.First
		for len(out) <= r {
			out = append(out, night.Round{})
		}
		out[r].Games = append(slices.Clip(out[r].Games), night.Game{Court: p.Court, A: p.A, B: p.B})
	}
	return out
}

// aroundPins searches near a board on which the pins are placed.
func (s *search) aroundPins(ctx context.Context, b *board) *board {
	w, floor := s.weighing(b)
	b = b.under(w)
	best := b
	for _, heat := range append(slices.Clone(nearHeat), hot) {
		near := best.under(w)
		a := newAnnealer(near, s.d, floor, 0)
		if a.best >= brokenWeight {
			a.run(ctx, s.moves/nearShare, hotRepair, heat)
		}
		a.still = heat < hot
		a.run(ctx, s.moves/nearShare, heat, heat/2)
		a.restore()
		if near.cost(w) < best.cost(w) {
			best = near
		}
	}
	return best
}

// holding is the board with nothing held yet but what moves may not change from now on.
func (b *board) holding() *board {
	b.held = &held{make([]bool, len(b.seat)), make([]bool, len(b.where)), make([]bool, len(b.where))}
	return b
}

// hold holds the people of a pin where they are, if it is kept there.
func (b *board) hold(p night.Pin) {
	r := p.Round - b.n.First
	if people := p.People(); p.Out {
		b.held.rests[r*b.n.People+int(people[0])] = true
	} else if len(people) == 1 {
		b.held.plays[r*b.n.People+int(people[0])] = true
	} else {
		for _, i := range people {
			b.held.seats[r*b.width+int(b.where[r*b.n.People+int(i)])] = true
		}
	}
}

// place seats the people of a pin so that it is kept, where that costs least, and holds them there. It tells
// whether there is such a place.
func (b *board) place(p night.Pin, d *dice.Dice) bool {
	r := p.Round - b.n.First
	if p.Out {
		return b.placeOut(p, d)
	}
	if p.A[1] == night.Nobody && b.n.HasMate(p.A[0], p.Round) {
		p.A[1] = b.n.Mate[p.A[0]] // both play or neither does
	}
	people := p.People()
	if len(people) == 1 {
		i := int32(people[0])
		if int(b.where[r*b.n.People+int(i)]) >= b.shapes[r].Seats() && !b.seatAt(r, b.oneSeats(r), people, nil, d) {
			return false
		}
		b.hold(p)
		return true
	}
	if b.n.Side != nil {
		for k := 0; k < len(people); k += 2 {
			if b.n.Side[people[k]] == 1 {
				people[k], people[k+1] = people[k+1], people[k]
			}
		}
	}
	var court *night.Court
	if p.Court != night.NoCourt {
		court = &p.Court
	}
	if !b.seatAt(r, b.seatsTogether(r, len(people)), people, court, d) {
		return false
	}
	b.hold(p)
	return true
}

// placeOut benches the person of a pin, with a fixed partner, where that costs least, and tells whether it can be.
func (b *board) placeOut(p night.Pin, d *dice.Dice) bool {
	r, people := p.Round-b.n.First, p.People()
	if b.n.HasMate(people[0], p.Round) {
		people = append(people, b.n.Mate[people[0]])
	}
	var places [][]int
	for s := b.shapes[r].Seats(); s < b.shapes[r].Here; s++ {
		if len(people) == 1 {
			places = append(places, []int{s})
		}
		for t := b.shapes[r].Seats(); t < s && len(people) == 2; t++ {
			places = append(places, []int{s, t})
		}
	}
	if int(b.where[r*b.n.People+int(people[0])]) < b.shapes[r].Seats() && !b.seatAt(r, places, people, nil, d) {
		return false
	}
	b.hold(p) // a fixed partner sits out with the person
	return true
}

// oneSeats lists the seats of a round's games, each by itself.
func (b *board) oneSeats(r int) [][]int { return b.seatsTogether(r, 1) }

// seatsTogether lists the seats of the teams or games of a round in which nobody is held.
func (b *board) seatsTogether(r, size int) (out [][]int) {
	for s := 0; s < b.shapes[r].Seats(); s += size {
		var seats []int
		for t := s; t < s+size; t++ {
			if !b.held.seats[r*b.width+t] {
				seats = append(seats, t)
			}
		}
		if len(seats) == size {
			out = append(out, seats)
		}
	}
	return out
}

// sitting is one way to seat people: who then sits where in the round, and on which courts it is played.
type sitting struct {
	row    []int32
	courts []night.Court
}

// seatAt takes the cheapest way to seat people in some of the seats; whoever sat there takes their places.
func (b *board) seatAt(r int, targets [][]int, people []night.Player, court *night.Court, d *dice.Dice) bool {
	var ways []sitting
	for _, seats := range targets {
		courts := b.shapes[r].Courts
		if court != nil && courts[seats[0]>>2] != *court {
			if slices.Contains(courts, *court) {
				continue
			}
			courts = slices.Clone(courts)
			courts[seats[0]>>2] = *court
		}
		for _, row := range b.exchanged(r, seats, people) {
			if b.valid(r, row, courts) {
				ways = append(ways, sitting{row, courts})
			}
		}
	}
	dice.Shuffle(d, ways)
	best, least := -1, 0
	for k, way := range ways[:min(len(ways), max(8, weighings/(b.n.People*b.n.People+1)))] {
		b.sit(r, way)
		if w := b.play + b.rest; best < 0 || w < least {
			best, least = k, w
		}
	}
	if best >= 0 {
		b.sit(r, ways[best])
	}
	return best >= 0
}

// weighings is how many pairs of people may be counted to choose where pinned people sit.
const weighings = 1_000_000

func (b *board) sit(r int, way sitting) {
	copy(b.row(r), way.row)
	b.shapes[r].Courts = way.courts
	b.recount()
}

// exchanged lists the rows in which people sit in the seats, and whoever sat there in their places in any order.
func (b *board) exchanged(r int, seats []int, people []night.Player) [][]int32 {
	row := b.row(r)
	var displaced []int32
	var left []int
	for _, s := range seats {
		if !slices.Contains(people, night.Player(row[s])) {
			displaced = append(displaced, row[s])
		}
	}
	for _, i := range people {
		if s := int(b.where[r*b.n.People+int(i)]); !slices.Contains(seats, s) {
			left = append(left, s)
		}
	}
	var out [][]int32
	for _, order := range orders(len(displaced)) {
		fresh := slices.Clone(row)
		for k, s := range seats {
			fresh[s] = int32(people[k])
		}
		for k, s := range left {
			fresh[s] = displaced[order[k]]
		}
		out = append(out, fresh)
	}
	return out
}

// orders lists the orders of so many things.
func orders(k int) [][]int {
	if k == 0 {
		return [][]int{nil}
	}
	var out [][]int
	for _, shorter := range orders(k - 1) {
		for at := range k {
			out = append(out, slices.Insert(slices.Clone(shorter), at, k-1))
		}
	}
	return out
}

// valid tells whether a row keeps what moves keep: fixed partners, groups, walls, and what is held. Who shall
// not meet and who must rest weighs instead.
func (b *board) valid(r int, row []int32, courts []night.Court) bool {
	n, seats := b.n, b.shapes[r].Seats()
	for s, i := range row {
		p := night.Player(i)
		at := r*n.People + int(i)
		if b.held.seats[r*b.width+s] && b.row(r)[s] != i || s >= seats && b.held.plays[at] || s < seats && b.held.rests[at] {
			return false
		}
		if s < seats && (n.Side != nil && n.Side[p] != s&1 || !n.MayPlayOn(p, courts[s>>2])) {
			return false
		}
		if n.HasMate(p, n.First+r) {
			at := slices.Index(row, int32(n.Mate[p]))
			if at != s^1 && (s < seats || at < seats) {
				return false
			}
		} else if n.Problem.Format == night.Pairs && s < seats {
			return false
		}
	}
	return true
}
