package scoring

import (
	"fmt"
	"slices"
)

// line is a sheet while it is folded.
type line struct {
	rules    Rules
	first    Team
	moves    []Entry // what changes the state: rallies, settings and technical fouls, corrections made
	state    State   // after moves
	final    Final
	timeOuts [2]int
	medical  [2]int

	endsReached bool // a team has come to the score at which ends change
	endsMade    bool // and they were changed
}

// add takes one more entry in.
func (l *line) add(e Entry) error {
	if l.stopped() && e.Kind != Remark {
		return fmt.Errorf("%w by %v: only a remark can follow", ErrOver, l.final.How())
	}
	if l.state.Done && !e.corrects() {
		return fmt.Errorf("%w, %v: correct a rally first if it is not", ErrOver, l.state.Score)
	}
	switch e.Kind {
	case RallyWon, TechnicalFoul, SetRight:
		return l.move(e)
	case RallyInserted, RallyRemoved, RallyChanged:
		moves, err := l.edited(e)
		if err != nil {
			return err
		}
		return l.replay(moves)
	case TimeOut, MedicalTimeOut:
		return l.timeOut(e)
	case EndsSwitched:
		l.endsMade = true
		return nil
	case TeamRetired, NoShow, TimeUp:
		return l.stop(e)
	case RallyReplayed, RefereeTimeOut, Remark:
		return nil
	}
	return fmt.Errorf("an entry needs a kind: %v is none", e.Kind)
}

// corrects reports whether an entry may follow the last rally of a game.
func (e Entry) corrects() bool {
	return slices.Contains([]Kind{RallyInserted, RallyRemoved, RallyChanged, SetRight, Remark}, e.Kind)
}

// stopped reports whether the game ended other than by play.
func (l *line) stopped() bool { return !l.final.IsZero() && l.final.How() != Played }

// edited is the moves with one rally inserted, removed or changed.
func (l *line) edited(e Entry) ([]Entry, error) {
	place, rallies := -1, 0
	for i, m := range l.moves {
		if m.Kind == RallyWon {
			if rallies++; rallies == e.At {
				place = i
			}
		}
	}
	moves := slices.Clone(l.moves)
	won := Entry{Kind: RallyWon, Rally: e.Rally}
	switch {
	case e.Kind == RallyInserted && e.At == rallies+1:
		return append(moves, won), nil
	case place < 0:
		return nil, fmt.Errorf("the sheet has %s, and so no rally %d to %v", counted(rallies, "rally", "rallies"), e.At, e.Kind)
	case e.Kind == RallyInserted:
		return slices.Insert(moves, place, won), nil
	case e.Kind == RallyRemoved:
		return slices.Delete(moves, place, place+1), nil
	}
	moves[place] = won
	return moves, nil
}

// replay folds moves from the start of the game.
func (l *line) replay(moves []Entry) error {
	again := *l
	again.moves, again.state, again.final, again.endsReached = nil, Start(l.rules, l.first), Final{}, false
	for _, m := range moves {
		if again.state.Done && m.Kind != SetRight {
			return fmt.Errorf("%w with rally %d, at %v: remove what comes after it first", ErrOver, again.state.Rally, again.state.Score)
		}
		if err := again.move(m); err != nil {
			return err
		}
	}
	*l = again
	return nil
}

// move takes one move from where the game stands.
func (l *line) move(m Entry) (err error) {
	state, final := l.state, Final{}
	switch m.Kind {
	case RallyWon:
		state = state.After(m.Rally)
	case TechnicalFoul:
		state = state.Penalise(m.Team)
	case SetRight:
		state, err = state.Set(m.Setting)
	}
	if err == nil && state.Done {
		final, err = l.rules.Final(state.Score.A, state.Score.B, Played)
	}
	if err != nil {
		return err
	}
	l.moves, l.state, l.final = append(l.moves, m), state, final
	l.endsReached = l.endsReached || state.EndsChange()
	return nil
}

// stop ends the game other than by play.
func (l *line) stop(e Entry) (err error) {
	a, b := l.state.Score.A, l.state.Score.B
	switch {
	case e.Kind == TimeUp:
		l.final, err = l.rules.Final(a, b, Timed)
	case e.Kind == TeamRetired:
		l.final, err = l.rules.Retire(a, b, e.Team)
	case len(l.moves) > 0:
		return fmt.Errorf("team %v has begun to play, so it is no no-show: note that it retired", e.Team)
	case e.Waited < e.Grace:
		return fmt.Errorf("team %v may still come: %s of grace are left", e.Team, counted(e.Grace-e.Waited, "minute", "minutes"))
	default:
		l.final = l.rules.Walkover(e.Team.Other())
	}
	return err
}
