package store

import (
	"os"
	"path/filepath"

	"club/quadrille/session"
)

// Compact writes the file anew without the room that old pages leave, and without anything that
// they still show.
func (s *Store) Compact() error {
	return s.Rewrite(func(r session.Record) session.Record { return r })
}

// Rewrite replaces every record by what change makes of it, in a new file that then takes the
// place of the old. Seq stays as it is whatever change does to it. What a record said before is
// nowhere in the new file, which has no snapshot either: this is how a person is forgotten.
//
// The new file is complete, flushed and read back before it takes the old one's name, so that a
// crash leaves one or the other. Other processes find the file locked throughout. Windows refuses
// to replace a file in use; the old one stays then.
func (s *Store) Rewrite(change func(session.Record) session.Record) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := s.settle(); err != nil {
		return err
	}
	return s.rewrite(change)
}

// rewrite is Rewrite for an open file. It is called with s.mu held, or before anybody else knows s.
func (s *Store) rewrite(change func(session.Record) session.Record) error {
	frames, err := s.changed(change)
	if err != nil {
		return err
	}
	fresh, err := makeFilled(s.path, s.head, frames)
	if err != nil {
		return err
	}
	defer os.Remove(fresh)
	return s.replace(fresh)
}

func (s *Store) changed(change func(session.Record) session.Record) ([]frame, error) {
	var out []frame
	for last := s.Last(); uint64(len(out)) < last; {
		part, err := s.readSome(uint64(len(out))+1, last)
		if err != nil {
			return nil, err
		}
		out = append(out, part...)
	}
	for i := range out {
		seq := out[i].Seq
		out[i].Record = change(out[i].Record)
		out[i].Seq = seq
	}
	return out, nil
}

// replace puts a finished file in the place of the one that is open. The new one is locked before
// it has the name and the old one let go after, so that nobody gets in between. It is called with
// s.mu held.
func (s *Store) replace(fresh string) error {
	f, err := lockFile(fresh, 0)
	if err != nil {
		return err
	}
	if err := os.Rename(fresh, s.path); err != nil {
		f.Close()
		return &FileError{"replacing", s.path, err}
	}
	if err := syncDir(filepath.Dir(s.path)); err != nil {
		s.unsure = true
		f.Close()
		return &FileError{"replacing", s.path, err}
	}
	s.closeFile()
	return s.take(f)
}
