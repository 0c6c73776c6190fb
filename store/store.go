package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"iter"
	"os"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

// Store is an open club file. It implements [session.Log]. All methods may be called from any
// goroutine; writes happen one at a time, in the order in which Append was called.
type Store struct {
	named    string // the path that the store was opened with
	path     string // the file that it led to then, which has links resolved
	patience time.Duration
	last     atomic.Uint64 // Seq of the newest durable record

	// commit is how entries reach the disk. Tests put disks in its place that fail halfway.
	commit func(*bolt.DB, []entry) error

	mu     sync.RWMutex // held for writing by Append, Reopen and Close; guards all below
	db     *bolt.DB     // nil while the file is not open
	file   *os.File     // what db has open
	size   int64        // of file, after the last write
	failed error        // why the file could not be opened again, nil while it is open
	head   Head
	sum    uint32 // checksum of the newest durable record
	notes  []string
	adrift atomic.Bool // db was cut off in the middle of something and must not be called
	unsure bool        // a write failed: the file may hold more than last says
	closed bool
}

var _ session.Log = (*Store)(nil)

// Path is the path of the file, with symbolic links resolved as they were when it was opened.
func (s *Store) Path() string { return s.path }

// Head is what the file says about itself.
func (s *Store) Head() Head {
	s.mu.RLock()
	defer s.mu.RUnlock()
	return s.head
}

// Notes are sentences about the file that the user should hear though nothing is lost: what was
// found when it was opened. Most often there are none.
func (s *Store) Notes() []string {
	s.mu.RLock()
	defer s.mu.RUnlock()
	return slices.Clone(s.notes)
}

// UUID is the identity of the club's log.
func (s *Store) UUID() UUID { return s.Head().UUID }

// Last is the Seq of the newest record that is known to be durable, 0 for an empty log. It never
// waits for a write in flight.
func (s *Store) Last() uint64 { return s.last.Load() }

// Append makes recs durable in one transaction with one flush to disk. The first must follow the
// newest record, and each the one before it, or the error wraps [session.ErrOutOfStep] and nothing
// is written.
//
// After any other error it is unknown whether recs are on disk. The store then reads the file anew
// at the next Append, Records or Reopen; until the file can be read, each gives a [*FileError]. While
// the file is not where the store was opened, each gives a [*DisplacedError]: see [Store.PutBack].
func (s *Store) Append(recs []session.Record) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := s.settle(); err != nil {
		return err
	}
	if len(recs) == 0 {
		return nil
	}
	entries, sum, err := follow(s.head.seed(), s.last.Load(), s.sum, recs)
	if err != nil {
		return err
	}
	if err := s.write(entries); err != nil {
		s.unsure = true
		return &FileError{"writing", s.path, err}
	}
	if err := s.inPlace(); err != nil {
		s.unsure = true
		return err
	}
	s.measure()
	s.sum = sum
	s.last.Store(recs[len(recs)-1].Seq)
	return nil
}

// write puts entries into the log in one transaction.
func (s *Store) write(entries []entry) error {
	err := guard(func() error { return s.commit(s.db, entries) })
	s.noteFault(err)
	return err
}

// noteFault remembers that bbolt was cut off.
func (s *Store) noteFault(err error) {
	var fault *faultError
	if errors.As(err, &fault) {
		s.adrift.Store(true)
	}
}

// commit puts entries into a log and flushes them to disk.
func commit(db *bolt.DB, entries []entry) error {
	return db.Update(func(tx *bolt.Tx) error { return putAll(tx, entries) })
}

func putAll(tx *bolt.Tx, entries []entry) error {
	log := tx.Bucket(logBucket)
	log.FillPercent = 1 // keys only grow, so room left in a page would stay empty
	for _, e := range entries {
		if err := log.Put(e.key, e.frame); err != nil {
			return err
		}
	}
	if len(entries) == 0 {
		return nil
	}
	// The number of the newest record is kept beside the tree of records too, so that a lost end shows.
	return log.SetSequence(binary.BigEndian.Uint64(entries[len(entries)-1].key))
}

// Records yields the records from Seq on, in order, up to the newest at the time of the call. It
// ends after the first error. No lock is held while the caller looks at a record, so that it may
// append meanwhile.
func (s *Store) Records(from uint64) iter.Seq2[session.Record, error] {
	return func(yield func(session.Record, error) bool) {
		if err := s.Reopen(); err != nil {
			yield(session.Record{}, err)
			return
		}
		from = max(from, 1)
		for last := s.Last(); from <= last; {
			batch, err := s.batch(from, last)
			for _, f := range batch {
				if !yield(f.Record, nil) {
					return
				}
			}
			if err != nil {
				yield(session.Record{}, err)
				return
			}
			from += uint64(len(batch))
		}
	}
}

func (s *Store) batch(from, last uint64) ([]frame, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if s.db == nil || s.adrift.Load() {
		return nil, ErrClosed
	}
	return s.readSome(from, last)
}

// readSome reads some records from the one numbered from on, at least one unless there is an error.
// It is called with s.mu held.
func (s *Store) readSome(from, last uint64) ([]frame, error) {
	const most = 512
	var out []frame
	err := guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			c := tx.Bucket(logBucket).Cursor()
			for k, v := c.Seek(seqKey(from)); len(out) < most && from <= last; k, v = c.Next() {
				f, err := decodeFrame(k, v)
				if err != nil || f.Seq != from {
					return &DamagedError{s.path, []string{fmt.Sprintf("event %d was there and is no more", from)}}
				}
				out = append(out, f)
				from++
			}
			return nil
		})
	})
	s.noteFault(err)
	if err != nil && !ours(err) {
		err = &FileError{"reading", s.path, err}
	}
	return out, err
}

// Reopen reads the file anew if a write failed before, and does nothing otherwise. After nil, Last
// and Records tell what is durable.
func (s *Store) Reopen() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.settle()
}

// settle makes sure that s knows what its file holds. It is called with s.mu held.
func (s *Store) settle() error {
	if s.closed {
		return ErrClosed
	}
	// A file that lost its place may be nowhere but here: it must stay open.
	if err := s.inPlace(); err != nil {
		return err
	}
	if s.cutShort() {
		s.adrift.Store(true) // bbolt would read what is not there any more
	}
	if s.db != nil && !s.unsure && !s.adrift.Load() {
		return nil
	}
	// What the close complains about is the fault that made it necessary.
	_ = s.letGo()
	s.failed = s.open()
	return s.failed
}

// letGo closes the file and gives up its lock. It is called with s.mu held.
func (s *Store) letGo() error {
	if s.db == nil {
		return nil
	}
	clearNote(s.path)
	return s.closeFile()
}

// closeFile closes the file. One that is adrift loses its lock and stays mapped: its memory is the
// price of not being killed by it.
func (s *Store) closeFile() error {
	defer func() { s.db, s.file = nil, nil }()
	if s.adrift.Swap(false) {
		unlock(s.file)
		return s.file.Close()
	}
	return guard(s.db.Close)
}

// Close waits for the write in flight and lets go of the file. Closing twice is no error.
func (s *Store) Close() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
	if err := s.letGo(); err != nil {
		return &FileError{"closing", s.path, err}
	}
	return nil
}
