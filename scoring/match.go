package scoring

// Match is how a match of several games stands.
type Match struct {
	Games   [2]int // games won, by side
	Done    bool
	Winner  Team // once Done
	Decider bool // the next game decides the match, and so has a change of ends in its middle
	First   Team // who serves first in the next game
	Halves  bool // the teams begin the next game at the ends they did not begin the match at

	rules Rules
}

// Match is how a match stands after games, in which first served first in the first one. Ends and first
// serve change after every game (5.B). A retirement ends the match; a walkover counts as one game, and
// draws and void games as none, though ends change after them too.
func (r Rules) Match(first Team, games []Final) Match {
	m := Match{First: first, rules: r}
	need := max(r.BestOf, 1)/2 + 1
	for _, g := range games {
		if m.Done {
			break
		}
		m.First, m.Halves = m.First.Other(), !m.Halves
		side, won := g.Winner()
		if !won {
			continue
		}
		m.Games[side]++
		if m.Games[side] == need || g.How() == Retired {
			m.Done, m.Winner = true, side
		}
	}
	m.Decider = !m.Done && m.Games[A] == need-1 && m.Games[B] == need-1
	return m
}

// Start is the state before the first serve of the next game.
func (m Match) Start() State {
	r := m.rules
	s := Start(r, m.First)
	if m.Decider {
		r.BestOf = 0
		s.ends = newEndChange(r)
	}
	return s
}
