package session

import (
	"errors"
	"fmt"
)

// Undo takes back the last thing that was done and still stands.
type Undo struct{}

func (Undo) decide(l *Ledger, _ Env) ([]Event, error) {
	actions := l.Actions()
	for i := len(actions) - 1; i >= 0; i-- {
		if a := actions[i]; !a.IsUndo() && !a.Undone {
			return UndoAction{a.ID}.decide(l, Env{})
		}
	}
	return nil, ErrNothingToUndo
}

// UndoAction takes back any action of the night, as long as nothing that came later rests on it.
type UndoAction struct{ Action uint64 }

func (c UndoAction) decide(l *Ledger, _ Env) ([]Event, error) {
	a, ok := l.Action(c.Action)
	switch {
	case !ok:
		return nil, fmt.Errorf("this night has no action %d", c.Action)
	case a.IsUndo():
		return nil, fmt.Errorf("an undo is taken back by a redo")
	case a.Undone:
		return nil, fmt.Errorf("that is undone already")
	}
	if _, ok := a.Events[0].(NightOpened); ok {
		return nil, ErrNothingToUndo
	}
	if err := l.sealed(a); err != nil {
		return nil, err
	}
	without := map[uint64]bool{c.Action: true}
	for k := range l.undone {
		without[k] = true
	}
	if _, err := l.refold(without, apply); err != nil {
		return nil, l.depends(a, err)
	}
	return []Event{Undone(c)}, nil
}

// sealed refuses to take an entry out of the sheet of a game that is over: its final score would stay,
// and the sheet would no longer come to it.
func (l *Ledger) sealed(a Action) error {
	n := l.Night()
	id, noted := notedOf(a.Events[0])
	if n == nil || !noted || len(a.Events) > 1 {
		return nil // nothing of a sheet, or the entry that ended its game, which goes with it
	}
	if g := n.Game(id); g != nil && !g.Running() {
		return fmt.Errorf("cannot undo %q: that game is over; correct its score, or undo its end first", Describe(l.club, a))
	}
	return nil
}

// depends says in words that a later action rests on one that was to be undone.
func (l *Ledger) depends(a Action, err error) error {
	var d *dependsError
	if errors.As(err, &d) {
		if later, ok := l.Action(d.action); ok {
			return fmt.Errorf("cannot undo %q: %q came after it and rests on it; undo that first",
				Describe(l.club, a), Describe(l.club, later))
		}
	}
	return fmt.Errorf("cannot undo %q: %w", Describe(l.club, a), err)
}

// Redo brings back what the last undo took, as long as nothing else was done since.
type Redo struct{}

func (Redo) decide(l *Ledger, _ Env) ([]Event, error) {
	if len(l.redo) == 0 {
		return nil, ErrNothingToRedo
	}
	action := l.redo[len(l.redo)-1]
	with := map[uint64]bool{}
	for k := range l.undone {
		with[k] = k != action
	}
	if _, err := l.refold(with, apply); err != nil {
		return nil, fmt.Errorf("cannot redo that any more: %w", err)
	}
	return []Event{Redone{Action: action}}, nil
}
