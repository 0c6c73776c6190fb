package design

// Best returns the r rounds of this catalogue that suit a night of r rounds for so many people best:
// all tables of four filled, nobody partners anybody twice, nobody sits out twice running, numbers
// of sit-outs differ by one at most, and few meetings repeat; in the order of play that [Prefix]
// gives. It chooses among rounds in which nobody meets twice ([Quads] and [QuadsWithRest]), such
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

// Unmet returns at least r rounds of this catalogue in which nobody meets twice: of [Quads] or
// [QuadsWithRest]. ok is false if there are not so many.
func Unmet(people, r int) (rounds [][]Table, ok bool) {
	if people%4 != 0 {
		return quadsWithRest(people, r)
	}
	rounds, ok = Quads(people)
	return rounds, ok && r <= len(rounds)
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

// quadsWithRest returns at least r rounds as [QuadsWithRest] describes them. That is easier than to
// make as many as possible, because guests need places in r rounds only.
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
