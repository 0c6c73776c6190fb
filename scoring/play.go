package scoring

// play changes s by one rally. It works in place because a copy a rally would be half of the cost of
// folding a game.
func (s *State) play(won Team) {
	if s.Done {
		return
	}
	opening := s.last.opening && (s.What == Begin || s.What == Point || s.What == Penalty)
	s.last = turn{server: s.Server, number: s.Number, opening: opening}
	s.Rally++
	s.Won = won
	s.ends.now = false
	switch {
	case won == s.Serving:
		s.score(won, Point)
	case s.rules.Scoring == RallyScoring:
		s.goOver(won)
		if s.rules.WinOnServe && s.wins(won) {
			s.last.withheld = true
			break
		}
		s.score(won, ServeOver)
	case s.Number == 1:
		s.Number = 2
		s.Server.Index ^= 1
		s.What = SecondServer
	default:
		s.goOver(won)
	}
	s.place()
}

// score gives side a point, which is what or the end of the game.
func (s *State) score(side Team, what What) {
	s.Score.add(side, 1)
	s.What = what
	if s.rules.over(s.Score, side) {
		s.What, s.Done, s.Winner = Game, true, side
		return
	}
	s.ends.reached(s.Score.Of(side))
}

// goOver gives side the serve. Who serves is settled by place, after any point that comes with it.
func (s *State) goOver(side Team) {
	s.Serving = side
	s.What = ServeOver
	if s.rules.threeNumbers() {
		s.Number = 1
	}
}

// wins reports whether one more point would win the game for side.
func (s *State) wins(side Team) bool {
	next := s.Score
	next.add(side, 1)
	return s.rules.over(next, side)
}

// over reports whether score ends a game that team just scored in.
func (r *Rules) over(score Score, side Team) bool {
	if side == A {
		return r.final(score.A, score.B)
	}
	return r.final(score.B, score.A)
}
