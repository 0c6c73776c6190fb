package scoring

import "strconv"

// Call is what the server says before serving: the own score, the score of the receivers and, in
// side-out doubles, the number of the server (4.A.1). Once the game is done there is no call, and it
// is empty.
func (s State) Call() string {
	var buf [12]byte
	return string(s.AppendCall(buf[:0]))
}

// AppendCall appends [State.Call] to b.
func (s State) AppendCall(b []byte) []byte {
	if s.Done {
		return b
	}
	b = strconv.AppendInt(b, int64(s.Score.Of(s.Serving)), 10)
	b = append(b, '-')
	b = strconv.AppendInt(b, int64(s.Score.Of(s.Serving.Other())), 10)
	if s.Number > 0 {
		b = append(b, '-')
		b = strconv.AppendInt(b, int64(s.Number), 10)
	}
	return b
}

// GamePoint is the side that wins the game if it wins the next rally, and false when neither does.
// Where both would, as at 10-10 in rally scoring won by 1, it is the serving team.
func (s State) GamePoint() (Team, bool) {
	if s.Done {
		return A, false
	}
	if s.wins(s.Serving) {
		return s.Serving, true
	}
	receiving := s.Serving.Other()
	if s.rules.Scoring == RallyScoring && !s.rules.WinOnServe && s.wins(receiving) {
		return receiving, true
	}
	return A, false
}

// PointsToGame is how many points side still needs if the other team scores none; 0 once the game is
// done.
func (s State) PointsToGame(side Team) int {
	if s.Done {
		return 0
	}
	own, other := s.Score.Of(side), s.Score.Of(side.Other())
	need := max(s.rules.To, other+s.rules.WinBy)
	if s.rules.Cap > 0 {
		need = min(need, s.rules.Cap)
	}
	return need - own
}
