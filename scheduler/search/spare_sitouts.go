package search

import (
	"slices"

	"club/quadrille/scheduler/dice"
)

// spareMoves is how many changes are tried for each complete table of the night.
const spareMoves = 120

// Temperatures of the search for fair sit-outs, in the units of Score.Weight.
const hotSpare, coldSpare = 1 << 13, 1 << 8

// share chooses the tables that play, the rounds and their order such that sit-outs are fair and
// nobody is benched twice running, as far as a search of some thousand changes, and so many at most, finds. It returns the
// changes tried.
func (t *spareTables) share(d *dice.Dice, most int) (tried int) {
	tables := 0
	for _, whole := range t.whole {
		tables += whole
	}
	tries := min(tables*spareMoves, most)
	for ; tried < tries && t.b.rest > 0; tried++ {
		nerve := d.Nerve(hotSpare + (coldSpare-hotSpare)*float64(tried)/float64(tries))
		r := d.Roll(len(t.whole))
		switch {
		case tried%8 == 0:
			q := d.Roll(len(t.whole))
			t.try(nerve, func() int { return t.reorder(r, q) })
		case tried%8 == 1 && len(t.pool) > 0:
			x := d.Roll(len(t.pool))
			t.try(nerve, func() int { return t.replace(r, x) })
		case tried%2 == 1:
			t.relieve(r, d, nerve)
		default:
			games := len(t.b.shapes[r].Courts)
			if spare := t.whole[r] - games; spare > 0 {
				t.exchange(r, d.Roll(games), games+d.Roll(spare), nerve)
			}
		}
	}
	return tried
}

// relieve picks somebody whose sit-outs are unfair, if there is anybody, and exchanges the table at
// which that person plays or sits out round r for one of the other kind.
func (t *spareTables) relieve(r int, d *dice.Dice, nerve int) {
	b := t.b
	i, found := int32(d.Roll(b.n.People)), false
	for range b.n.People {
		if found = b.fair.Excess(i, int(b.outs[i])) > 0; found {
			break
		}
		i = (i + 1) % int32(b.n.People)
	}
	games := len(b.shapes[r].Courts)
	spare := t.whole[r] - games
	table := slices.Index(b.row(r), i) / 4
	switch {
	case !found || spare == 0 || table >= t.whole[r]:
	case table < games && int(b.outs[i]) < b.fair.Low[i]:
		t.exchange(r, table, games+d.Roll(spare), nerve)
	case table >= games && int(b.outs[i]) > b.fair.High[i]:
		t.exchange(r, d.Roll(games), table, nerve)
	}
}

// exchange lets table j of round r play in place of table i, unless that worsens the sit-outs by more
// than the nerve.
func (t *spareTables) exchange(r, i, j, nerve int) {
	b := t.b
	plays, rests := b.row(r)[4*i:4*i+4], b.row(r)[4*j:4*j+4]
	change := 0
	for s := range plays {
		change += b.benchDelta(plays[s], r) + b.benchDelta(rests[s], r)
	}
	if change > nerve {
		return
	}
	for s := range plays {
		b.flip(plays[s], r)
		b.flip(rests[s], r)
		plays[s], rests[s] = rests[s], plays[s]
	}
	b.rest += change
}

// try makes a swap, which done twice changes nothing, unless that worsens the sit-outs by more than the nerve.
func (t *spareTables) try(nerve int, swap func() (change int)) {
	change := swap()
	if change > nerve {
		swap()
		return
	}
	t.b.rest += change
}

// reorder lets two rounds change places and returns what that changes by who sits out.
func (t *spareTables) reorder(q, r int) (change int) {
	b := t.b
	seats := b.shapes[q].Seats()
	for _, x := range [2][2]int{{q, r}, {r, q}} {
		for _, i := range b.row(x[0])[seats:] {
			if !b.benchedIn(i, x[1]) {
				change += b.toggle(i, x[0]) + b.toggle(i, x[1])
			}
		}
	}
	for s, i := range b.row(q) {
		b.row(q)[s], b.row(r)[s] = b.row(r)[s], i
	}
	t.whole[q], t.whole[r] = t.whole[r], t.whole[q]
	return change
}

// replace plays round x of the pool in place of round r, and keeps that in the pool, and returns what
// it changes by who sits out.
func (t *spareTables) replace(r, x int) (change int) {
	b := t.b
	seats := b.shapes[r].Seats()
	for s, i := range t.pool[x].seats {
		if (s >= seats) != b.benchedIn(i, r) {
			change += b.toggle(i, r)
		}
	}
	for s, i := range b.row(r) {
		b.row(r)[s], t.pool[x].seats[s] = t.pool[x].seats[s], i
	}
	t.whole[r], t.pool[x].whole = t.pool[x].whole, t.whole[r]
	return change
}

// toggle makes somebody who plays in planned round r sit out, or the other way round, and returns the
// change of weight.
func (b *board) toggle(i int32, r int) int {
	change := b.benchDelta(i, r)
	b.flip(i, r)
	return change
}
