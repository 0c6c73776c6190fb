package measure

// Score is what a plan costs, in the order of importance. Smaller is better everywhere.
type Score struct {
	Broken   int // games against what must hold
	Missing  int // partnerships that were asked for and are missing, or are too many
	Unfair   int // sit-outs beyond or below the fair share
	Twice    int // rounds benched right after a benched round
	Partners int // Σ C(p,2) over pairs of people
	Onesided int // games whose winner is predicted above the limit
	Meetings int // Σ C(m,2)
	Opponent int // Σ C(o,2)
}

// Add adds the costs of something else.
func (s *Score) Add(d Score) {
	s.Broken += d.Broken
	s.Missing += d.Missing
	s.Unfair += d.Unfair
	s.Twice += d.Twice
	s.Partners += d.Partners
	s.Onesided += d.Onesided
	s.Meetings += d.Meetings
	s.Opponent += d.Opponent
}

// Weight makes one number of a score, for the search. A step of a more important measure outweighs
// the few steps of the next that one change can bring. What must hold and the sit-outs are far
// beyond any temperature.
func (s Score) Weight() int {
	return BrokenWeight*s.Broken + 1<<18*s.Missing + 1<<15*s.Unfair + 1<<11*s.Twice + 64*s.Partners +
		100*s.Onesided + 16*s.Meetings + 2*s.Opponent
}

// BrokenWeight is what one game against what must hold weighs: more than everything else together.
const BrokenWeight = 1 << 26

// Rest is the weight of what concerns sitting out.
func (s Score) Rest() int { return Score{Unfair: s.Unfair, Twice: s.Twice}.Weight() }
