package session

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"github.com/charmbracelet/x/ansi"
)

// Undo takes back the last thing that was done and still stands.
type Undo struct{}

func (Undo) decide(l *Ledger, _ Env) ([]Event, error) {
	if err := l.NothingToUndo(); err != nil {
		return nil, err
	}
	a, _ := l.NextUndo()
	return UndoAction{a.ID}.decide(l, Env{})
}

// NothingToUndo is why there is nothing to take back, nil where there is.
func (l *Ledger) NothingToUndo() error {
	switch _, ok := l.NextUndo(); {
	case ok:
		return nil
	case l.Night() == nil:
		return errors.New("nothing to undo: no night is open")
	}
	return ErrNothingToUndo
}

// UndoAction takes back any action of the night, as long as nothing that came later rests on it.
type UndoAction struct{ Action uint64 }

func (c UndoAction) decide(l *Ledger, _ Env) ([]Event, error) {
	_, after, with, err := l.takingBack(c.Action)
	if err != nil {
		return nil, err
	}
	return l.replanned(Undone{c.Action, with}, after), nil
}

// overtaken refuses to undo a change of settings after which they were changed again, and a pick after which there was
// another: each holds all there is to settle, so nothing would come of it.
func (l *Ledger) overtaken(a Action) error {
	for _, later := range l.Actions() {
		switch {
		case later.ID <= a.ID || later.Undone:
		case a.has(isSettings) && later.has(isSettings):
			return fmt.Errorf("settings were changed again later: undo that first, or change them (o)")
		case a.has(isPick) && later.has(isPick):
			return fmt.Errorf("another way was picked later: undo that first")
		}
	}
	return nil
}

// reinterprets refuses what would give a game other terms or another score than it has, unless the
// action is about that very game, its score or its court. Calls keep their terms, so it can only happen to those of older files.
func (l *Ledger) reinterprets(a Action, after *Club) error {
	was, is := l.club.Night().Played(), after.Night().Played()
	for i := range min(len(was), len(is)) {
		if id := GameID(i + 1); was[i] != is[i] && !a.scores(id) && !a.moves(id) {
			return fmt.Errorf("a game on court %s would be read otherwise: change the settings instead (o)", was[i].Court)
		}
	}
	return nil
}

// replanned is an undo, and the end of the rounds planned so far where they were planned for what it takes back:
// other courts, people, wishes or settings.
func (l *Ledger) replanned(e Undone, after *Club) []Event {
	was, is := l.Night(), after.OpenNight()
	if was == nil || is == nil || len(is.Plan) == 0 {
		return []Event{e}
	}
	if was.Settings != is.Settings || l.replannedSince(e.Action) && !sameDraw(l.club, was, after, is) {
		return []Event{e, RotationPlanned{}}
	}
	return []Event{e}
}

// sameDraw tells whether a rotation rests on the same in two states of a night, whatever is planned in each.
func sameDraw(a *Club, n *Night, b *Club, m *Night) bool {
	was, err := a.drawKey(n, nil)
	is, err2 := b.drawKey(m, nil)
	return err == nil && err2 == nil && was == is
}

// has tells whether an action has an event of some kind.
func (a Action) has(kind func(Event) bool) bool { return slices.ContainsFunc(a.Events, kind) }

func isSettings(e Event) bool { _, ok := e.(SettingsChanged); return ok }

// scores tells whether an action gives a game its score, or another one.
func (a Action) scores(id GameID) bool {
	return a.has(func(e Event) bool {
		switch e := e.(type) {
		case GameFinished:
			return e.Game == id
		case ScoreCorrected:
			return e.Game == id
		}
		return false
	})
}

// stand folds the night without some actions. Calls that courts made after an undo or a redo nobody asked
// for: where they cannot stand, they are given up too, and named. The error is about what somebody did.
func (l *Ledger) stand(without map[uint64]bool) (after *Club, with []uint64, err error) {
	for {
		after, err := l.refold(without, apply)
		var d *dependsError
		if !errors.As(err, &d) {
			return after, with, err
		}
		if a, ok := l.Action(d.action); !ok || !a.IsUndo() {
			return nil, nil, err
		}
		without[d.action] = true
		with = append(with, d.action)
	}
}

// sealed refuses to take an entry out of the sheet of a game that is over: its final score would stay,
// and the sheet would no longer come to it.
func (l *Ledger) sealed(a Action) error {
	n := l.Night()
	id, noted := notedOf(a.Events[0])
	ended := a.has(func(e Event) bool { _, ok := e.(GameFinished); return ok })
	if n == nil || !noted || ended {
		return nil // nothing of a sheet, or the entry that ended its game, which goes with it
	}
	if g := n.Game(id); g != nil && !g.Running() {
		return fmt.Errorf("that game is over: correct its score, or undo its end first")
	}
	return nil
}

// longestBrief is how many cells a refusal may quote of an action, so that all of the refusal can be read
// on a line of 80 with the mark before it, the key behind it and how many others are unread.
const longestBrief = 30

// brief is what an action was, in a few words.
func (l *Ledger) brief(a Action) string {
	for _, e := range a.Events {
		if text := describe(l.club, e); text != "" {
			return ansi.Truncate(text, longestBrief, "…")
		}
	}
	return ansi.Truncate(Describe(l.club, a), longestBrief, "…")
}

// restsText says that a later action rests on what was to be undone, and the way out. What rests on a
// flow need not be undone: changing the flow back leaves what was played.
func restsText(later string, err error) string {
	var f *flowError
	if errors.As(err, &f) {
		return fmt.Sprintf("%q rests on it: change the flow back (o)", later)
	}
	return fmt.Sprintf("%q rests on it; undo that first", later)
}

// depends says in words that a later action rests on one that was to be undone.
func (l *Ledger) depends(a Action, err error) error {
	var d *dependsError
	if errors.As(err, &d) {
		if later, ok := l.Action(d.action); ok {
			return errors.New(restsText(l.brief(later), err))
		}
	}
	return fmt.Errorf("cannot undo that: %w", err)
}

// Redo brings back what the last undo took, as long as nothing else was done since.
type Redo struct{}

func (Redo) decide(l *Ledger, _ Env) ([]Event, error) {
	if len(l.redo) == 0 {
		return nil, ErrNothingToRedo
	}
	last := l.redo[len(l.redo)-1]
	e := Redone{Action: last.Action, Back: last.With}
	without := maps.Clone(l.undone)
	delete(without, e.Action)
	for _, a := range e.Back {
		delete(without, a)
	}
	_, with, err := l.stand(without)
	if err != nil {
		return nil, fmt.Errorf("cannot redo that any more: %w", err)
	}
	e.With = with
	return []Event{e}, nil
}
