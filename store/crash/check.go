package crash

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"

	"club/quadrille/session"
	"club/quadrille/store"
)

// Result counts what crashes left.
type Result struct {
	States  int // that were made and opened
	Nothing int // in which there was no club file yet, and nothing acknowledged
	Ahead   int // that hold an action which was not acknowledged
	Backups int // that were whole in them
}

// String tells the counts.
func (r Result) String() string {
	return fmt.Sprintf("%d states: nothing acknowledged was lost; %d had no club file yet, %d hold an action that was not acknowledged; %d backups were whole",
		r.States, r.Nothing, r.Ahead, r.Backups)
}

// Records reads the records of the club file that Work left in dir.
func Records(dir string) ([]session.Record, error) {
	view, err := store.Look(filepath.Join(dir, clubName))
	if err != nil {
		return nil, err
	}
	var out []session.Record
	for r, err := range view.Records(1) {
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// Replay makes states of a trace below dir until there are as many as asked for, and checks each: first
// every moment as a kill leaves it, as far as there are enough of them, then moments drawn by lot with what
// was not flushed dropped or mixed. All is what the club file held in the end. It stops at the first state
// in which something acknowledged is lost or the file does not open.
func (t *Trace) Replay(states int, seed uint64, all []session.Record, dir string) (Result, error) {
	var r Result
	dice := rand.New(rand.NewPCG(seed, 1))
	moments := t.Changes()
	stride := max(1, (2*len(moments)+states-1)/states) // half of the states are kills, at most
	for i := range states {
		at, fate := moments[dice.IntN(len(moments))], Mixed
		switch {
		case i*stride < len(moments):
			at, fate = moments[i*stride], Kept
		case i%5 == 0:
			fate = Dropped
		}
		state := filepath.Join(dir, fmt.Sprint(i))
		if err := os.MkdirAll(state, 0o700); err != nil {
			return r, err
		}
		if err := t.State(at, fate, dice, state); err != nil {
			return r, err
		}
		if err := r.check(state, t.Acked(at), all); err != nil {
			return r, fmt.Errorf("state %d (%s), a crash before operation %d of %d: %w", i, state, at, len(t.Ops), err)
		}
		if err := os.RemoveAll(state); err != nil {
			return r, err
		}
	}
	return r, nil
}

// check opens what a crash left: the club file must hold whole actions, in order, at least up to record
// acked, and every backup that has its name must be whole.
func (r *Result) check(dir string, acked uint64, all []session.Record) error {
	r.States++
	path := filepath.Join(dir, clubName)
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) && acked == 0 {
		r.Nothing++
		return nil
	}
	kept, err := store.Open(path)
	if err != nil {
		return err
	}
	defer kept.Close()
	if kept.Last() < acked {
		return fmt.Errorf("event %d was acknowledged, and the file ends with %d", acked, kept.Last())
	}
	if kept.Last() > acked {
		r.Ahead++
	}
	if _, err := session.Load(kept.Records(1)); err != nil {
		return fmt.Errorf("the events do not make a night: %w", err)
	}
	for rec, err := range kept.Records(1) {
		if err != nil {
			return err
		}
		if !reflect.DeepEqual(rec, all[rec.Seq-1]) {
			return fmt.Errorf("event %d is not what was written", rec.Seq)
		}
	}
	if n := int(kept.Last()); n > 0 && n < len(all) && all[n-1].Action == all[n].Action {
		return fmt.Errorf("the action of event %d is there by halves", n)
	}
	return r.checkBackups(path)
}

func (r *Result) checkBackups(path string) error {
	backups, err := store.Kept(path, filepath.Join(filepath.Dir(path), backupName))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	for _, backup := range backups {
		if _, err := store.Look(backup); err != nil {
			return fmt.Errorf("a backup: %w", err)
		}
		r.Backups++
	}
	return nil
}
