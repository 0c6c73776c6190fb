package design

import (
	"cmp"
	"slices"
)

// Best returns the r rounds of this catalogue that suit a night of r rounds for so many people best:
// all tables of four filled, nobody partners anybody twice, nobody sits out twice running, numbers
// of sit-outs differ by one at most, and few meetings repeat; in the order of play that [Prefix]
// gives. It chooses among rounds in which nobody meets twice ([Quads] and quadsWithRest), such
// rounds played in two or three pairings of the same tables, and whist tournaments. ok is false if
// no design has r rounds for this number of people.
func Best(people, r int) (rounds [][]Table, ok bool) {
	if r < 1 {
		return nil, false
	}
	least := 0
	for _, whole := range candidates(people, r) {
		if len(whole) < r {
			continue
		}
		part := Prefix(whole, r)
		if cost := overlaps(part).total(); !ok || cost < least {
			rounds, least, ok = part, cost, true
		}
		if least == 0 {
			break
		}
	}
	return rounds, ok
}

// Unmet returns the plans of this catalogue in which nobody meets twice, of at least so many rounds of at
// least so many tables, those first that have fewer tables to spare: of [Wheel] and of [Quads] or
// quadsWithRest. Who is at no table of a round sits out.
func Unmet(people, tables, rounds int) (plans [][][]Table) {
	for _, w := range stored() {
		if w.People == people && w.Meetings == 0 && w.Tables >= tables && w.Rounds >= rounds {
			plans = append(plans, w.Plan())
		}
	}
	slices.SortStableFunc(plans, func(p, q [][]Table) int {
		return cmp.Or(cmp.Compare(len(p[0]), len(q[0])), cmp.Compare(len(p), len(q)))
	})
	if people/4 < tables {
		return plans
	}
	if people%4 != 0 {
		if rest, ok := quadsWithRest(people, rounds); ok {
			plans = append(plans, rest)
		}
	} else if quads, ok := Quads(people); ok && rounds <= len(quads) {
		plans = append(plans, quads)
	}
	return plans
}

// candidates returns designs for so many people, those first of which r rounds may be without
// a repeat.
func candidates(people, r int) (designs [][][]Table) {
	if rest, ok := quadsWithRest(people, r); ok {
		return append(designs, rest)
	}
	if quads, ok := Quads(people); ok {
		if r <= len(quads) {
			return append(designs, quads)
		}
		designs = append(designs, threeWays(quads))
	}
	if whist, ok := Whist(people); ok {
		designs = append(designs, whist)
	}
	return designs
}

// quadsWithRest returns at least r rounds for people who are one to three more than tables of four hold: all
// those tables are filled, the others sit out, nobody meets twice and nobody sits out twice. For 29, 33, 41,
// 45 and 53 people it knows ⌊(people-1)/3⌋ rounds, the most that can be, for most others one or two fewer.
// To ask for few is easier, because guests need places in r rounds only. ok is false for fewer than five
// people, for numbers divisible by 4, and for more rounds than it knows.
func quadsWithRest(people, r int) (rounds [][]Table, ok bool) {
	if people < 5 || people%4 == 0 {
		return nil, false
	}
	if s, ok := find(restRecipes, people); ok {
		rounds = s.Rounds()
		return rounds, r <= len(rounds)
	}
	full, _ := Quads(people / 4 * 4)
	if r > len(full) {
		return nil, false
	}
	return withGuests(full[:r], people/4*4, people%4)
}
