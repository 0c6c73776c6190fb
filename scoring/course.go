package scoring

// Step is one move of a game in its course: whose it was, and what it gave that team: a point, none, or -1
// where a technical foul took one.
type Step struct {
	Team   Team
	Points int
}

// Course is the game move by move, with all corrections made: its rallies, each of the team that won it, and
// what technical fouls gave or took. Where somebody set the score right, what this changed stands in no step.
func (s Sheet) Course() ([]Step, error) {
	l, err := s.line()
	if err != nil {
		return nil, err
	}
	var out []Step
	state := Start(s.Rules, s.First)
	for _, m := range l.moves {
		next, team := state, m.Rally.Won
		switch m.Kind {
		case RallyWon:
			next = state.After(m.Rally)
		case TechnicalFoul:
			if next = state.Penalise(m.Team); next.Score.Of(m.Team) < state.Score.Of(m.Team) {
				team = m.Team
			} else {
				team = m.Team.Other()
			}
		case SetRight:
			state, _ = state.Set(m.Setting) // the line took it
			continue
		}
		out = append(out, Step{team, next.Score.Of(team) - state.Score.Of(team)})
		state = next
	}
	return out, nil
}

// SwitchedEnds reports whether the teams have changed ends.
func (s Sheet) SwitchedEnds() bool {
	for _, e := range s.Entries {
		if e.Kind == EndsSwitched {
			return true
		}
	}
	return false
}
