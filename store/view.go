package store

import (
	"errors"
	"iter"

	"club/quadrille/session"
)

// View is what was in a file at one moment. It is a [session.Log] that takes no records, for
// commands that only tell: they need not wait until the desk lets go of the file.
type View struct {
	report Report
	frames []frame
}

var _ session.Log = (*View)(nil)

// ErrReadOnly tells that a view takes no records.
var ErrReadOnly = errors.New("the club file was opened for reading only")

// Look reads the file at path, whether another process has it open or not. It never makes a file, and
// shows one of an older format as it would be in the format of this program.
// The error is that of [Open], except that a file in use is none.
func Look(path string) (*View, error) {
	v := &View{}
	var err error
	v.report, err = inspectShared(path, func() func(frame) {
		v.frames = nil
		return func(f frame) { v.frames = append(v.frames, f) }
	})
	if err == nil && !v.report.Sound() {
		err = &DamagedError{path, v.report.Faults}
	}
	if err != nil {
		return nil, err
	}
	change, err := pathFrom(v.report.Head.Schema)
	if err != nil {
		return nil, err
	}
	for i := range v.frames {
		v.frames[i].Record = change(v.frames[i].Record)
	}
	return v, nil
}

// Report is what reading the file has shown.
func (v *View) Report() Report { return v.report }

// Append refuses with [ErrReadOnly].
func (v *View) Append([]session.Record) error { return ErrReadOnly }

// Records yields the records from Seq on, in order.
func (v *View) Records(from uint64) iter.Seq2[session.Record, error] {
	return func(yield func(session.Record, error) bool) {
		for i := max(from, 1) - 1; i < uint64(len(v.frames)); i++ {
			if !yield(v.frames[i].Record, nil) {
				return
			}
		}
	}
}

// Last is the Seq of the newest record, 0 for an empty log.
func (v *View) Last() uint64 { return v.report.Last }
