package scoring

import (
	"fmt"
	"time"
)

// How long the stops of a game may last: a time-out (10.A), a medical time-out, from the arrival of help
// (10.B), a change of ends (2026: 21.B), and the pause between two games of a match (2019: 5.B.2).
const (
	TimeOutLength     = time.Minute
	MedicalLength     = 15 * time.Minute
	EndChangeLength   = time.Minute
	BetweenGames      = 2 * time.Minute
	medicalTimeOuts   = 1
	shortGameTimeOuts = 2
	longGameTimeOuts  = 3
	longGame          = 16 // the target from which a game counts as long
)

// TimeOuts is how many time-outs a team has in a game: 2 in games to 11 or 15, 3 in games to 21 (10.A).
func (r Rules) TimeOuts() int {
	if r.To >= longGame {
		return longGameTimeOuts
	}
	return shortGameTimeOuts
}

// timeOut charges a time-out to a team.
func (l *line) timeOut(e Entry) error {
	used, limit, what := &l.timeOuts[e.Team&1], l.rules.TimeOuts(), "time-out"
	if e.Kind == MedicalTimeOut {
		used, limit, what = &l.medical[e.Team&1], medicalTimeOuts, "medical time-out"
	}
	if *used == limit {
		return fmt.Errorf("team %v has had its %s: a stop for safety is a referee time-out and charged to nobody",
			e.Team, counted(limit, what, what+"s"))
	}
	*used++
	return nil
}

// TimeOutsLeft is how many time-outs a team may still take.
func (s Sheet) TimeOutsLeft(side Team) (int, error) {
	l, err := s.line()
	if err != nil {
		return 0, err
	}
	return s.Rules.TimeOuts() - l.timeOuts[side], nil
}

// EndsDue reports whether the teams still have to change ends. A change that was missed is made when it
// is noticed, and the score stands (2026: 21.B).
func (s Sheet) EndsDue() (bool, error) {
	l, err := s.line()
	return err == nil && l.endsReached && !l.endsMade && !l.state.Done, err
}
