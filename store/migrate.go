package store

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"club/quadrille/session"
)

// A step turns a record as one file format keeps it into the record that the next format keeps. It
// must not change Seq, and must give the same for the same record.
type step func(session.Record) session.Record

// steps lead from each older file format to the one after it. There is none yet: format 1 is the
// first. Whoever raises [Schema] adds the step from the format before, and a file of that format to
// the test data, which the tests then open. (New kinds and versions of payloads need no new format:
// the session tells those apart by itself.)
var steps = map[uint16]step{}

// pathFrom is what turns a record of an older format into one of this program's; an error tells that
// no steps lead here, as no program ever wrote such a format.
func pathFrom(schema uint16) (step, error) {
	var path []step
	for at := schema; at < Schema; at++ {
		next, ok := steps[at]
		if !ok {
			return nil, fmt.Errorf("the file format %d is none that there ever was", schema)
		}
		path = append(path, next)
	}
	return func(r session.Record) session.Record {
		seq := r.Seq
		for _, next := range path {
			r = next(r)
		}
		r.Seq = seq
		return r
	}, nil
}

// migrate brings the file to the format of this program, if it is of an older one, and leaves a
// checked copy of it as it was beside it. A crash leaves the file in the old format or in the new
// one. It is called with s.mu held, or before anybody else knows s.
func (s *Store) migrate() error {
	old := s.head.Schema
	if old == Schema {
		return nil
	}
	change, err := pathFrom(old)
	if err != nil {
		return err
	}
	kept := s.formatBackup(old)
	if _, err := Backup(s.path, kept); err != nil {
		return fmt.Errorf("the file is of an older format and was not touched, since no copy of it could be made: %w", err)
	}
	if err := s.rewrite(change); err != nil {
		return fmt.Errorf("the file is of an older format and could not be brought up to date: %w", err)
	}
	s.notes = append(s.notes, fmt.Sprintf("the file was of format %d and is now of format %d; as it was it is kept as %s", old, Schema, kept))
	return nil
}

// formatBackup is where a file goes before it is brought to a newer format.
func (s *Store) formatBackup(schema uint16) string {
	ext := filepath.Ext(s.path)
	return fmt.Sprintf("%s-format%d-%s%s", strings.TrimSuffix(s.path, ext), schema, time.Now().UTC().Format(keptStamp), ext)
}
