package scheduler

// score is what a plan costs, in the order of importance. Smaller is better everywhere.
type score struct {
	broken   int // games against what must hold
	missing  int // partnerships that were asked for and are missing, or are too many
	unfair   int // sit-outs beyond or below the fair share
	twice    int // rounds benched right after a benched round
	partners int // Σ C(p,2) over pairs of people
	onesided int // games whose winner is predicted above the limit
	meetings int // Σ C(m,2)
	opponent int // Σ C(o,2)
}

func (s *score) add(d score) {
	s.broken += d.broken
	s.missing += d.missing
	s.unfair += d.unfair
	s.twice += d.twice
	s.partners += d.partners
	s.onesided += d.onesided
	s.meetings += d.meetings
	s.opponent += d.opponent
}

// weight makes one number of a score, for the search. A step of a more important measure outweighs
// the few steps of the next that one change can bring. What must hold and the sit-outs are far
// beyond any temperature.
func (s score) weight() int {
	return brokenWeight*s.broken + 1<<18*s.missing + 1<<15*s.unfair + 1<<11*s.twice + 64*s.partners +
		100*s.onesided + 16*s.meetings + 2*s.opponent
}

// brokenWeight is what one game against what must hold weighs: more than everything else together.
const brokenWeight = 1 << 26

// rest is the weight of what concerns sitting out.
func (s score) rest() int { return score{unfair: s.unfair, twice: s.twice}.weight() }
