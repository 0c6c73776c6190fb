package scoring

// Which scores a game can come to. Both sides can score one point at a time in any order, under side-out
// scoring as under rally scoring, and with the last point on serve or not: the receivers only have to win
// the serve first. So the set depends on target, lead, cap and start alone, and a score can be reached
// when the one before the last point can, and is not itself an end. The tests compare these closed
// forms with every state the engine comes to.

// ends reports whether a game can be played to an end at a-b.
func (r *Rules) ends(a, b int) bool {
	switch {
	case a > b:
		return r.final(a, b) && r.passes(a-1, b)
	case b > a:
		return r.final(b, a) && r.passes(a, b-1)
	}
	return false
}

// final reports whether a team with own points has won against one with other points.
func (r *Rules) final(own, other int) bool {
	return own >= r.To && own-other >= r.WinBy || r.Cap > 0 && own >= r.Cap
}

// passes reports whether a game can stand at a-b and go on. From the target on that takes a lead of 2 to
// win and the teams to be closer than that: a team further ahead would have won before.
func (r *Rules) passes(a, b int) bool {
	if !possible(a, b) || a < r.StartA || b < r.StartB {
		return false
	}
	high, low := max(a, b), min(a, b)
	return !r.final(high, low) && (high < r.To || r.WinBy > 1 && high-low < r.WinBy)
}
