package store

import (
	"encoding/binary"
	"fmt"
	"hash/crc32"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

// A snapshot is kept under the key newest of the bucket snapshots, which files without one do not
// have. Its value is, numbers big-endian: the layout, 1 (1 byte); the number of the record that it
// ends with (8); the checksum of that record (4); the state; and CRC-32C of all before it (4). The
// checksum of a record stands for all records up to it, since each is chained to the one before: a
// log that was rewritten does not fit its snapshot any more.
var (
	snapshotBucket = []byte("snapshots")
	snapshotKey    = []byte("newest")
)

const (
	snapshotLayout = 1
	snapshotFixed  = 1 + 8 + 4
)

// MaxSnapshot is the largest state that is kept, in bytes. It takes many years of nights to get
// there; such a log opens without a snapshot.
const MaxSnapshot = 32 << 20

// A snapshot is a state and the record that it ends with.
type snapshot struct {
	session.Snapshot
	sum uint32 // checksum of record Seq
}

func (s snapshot) encode() []byte {
	b := make([]byte, 0, snapshotFixed+len(s.State)+sumSize)
	b = append(b, snapshotLayout)
	b = binary.BigEndian.AppendUint64(b, s.Seq)
	b = binary.BigEndian.AppendUint32(b, s.sum)
	b = append(b, s.State...)
	return binary.BigEndian.AppendUint32(b, crc32.Checksum(b, castagnoli))
}

// decodeSnapshot reads what encode wrote. The result shares no memory with value.
func decodeSnapshot(value []byte) (snapshot, error) {
	if len(value) < snapshotFixed+sumSize {
		return snapshot{}, errAltered
	}
	body := value[:len(value)-sumSize]
	if binary.BigEndian.Uint32(value[len(body):]) != crc32.Checksum(body, castagnoli) {
		return snapshot{}, errAltered
	}
	if body[0] != snapshotLayout {
		return snapshot{}, errLayout
	}
	return snapshot{
		Snapshot: session.Snapshot{Seq: binary.BigEndian.Uint64(body[1:]), State: append([]byte(nil), body[snapshotFixed:]...)},
		sum:      binary.BigEndian.Uint32(body[9:]),
	}, nil
}

// errSnapshotStale tells that a snapshot is of records that are not there, or not any more.
var errSnapshotStale = fmt.Errorf("it is of other events than the file has")

var _ session.Snapshots = (*Store)(nil)

// Snapshot implements [session.Snapshots]. Whatever keeps it from giving one, the records are there.
func (s *Store) Snapshot() (kept session.Snapshot, ok bool) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if s.db == nil || s.adrift.Load() {
		return session.Snapshot{}, false
	}
	var value []byte
	err := guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			if b := tx.Bucket(snapshotBucket); b != nil {
				value = append([]byte(nil), b.Get(snapshotKey)...)
			}
			return nil
		})
	})
	s.noteFault(err)
	found, broken := decodeSnapshot(value)
	if err != nil || broken != nil {
		return session.Snapshot{}, false
	}
	sum, err := s.sumOf(found.Seq)
	return found.Snapshot, err == nil && sum == found.sum
}

// KeepSnapshot implements [session.Snapshots], in one transaction with one flush to disk. After an
// error the store reads its file anew, as after one of Append.
func (s *Store) KeepSnapshot(made session.Snapshot) error {
	if len(made.State) > MaxSnapshot {
		return nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := s.settle(); err != nil {
		return err
	}
	sum, err := s.sumOf(made.Seq)
	if err != nil {
		return err
	}
	value := snapshot{made, sum}.encode()
	err = guard(func() error {
		return s.db.Update(func(tx *bolt.Tx) error {
			b, err := tx.CreateBucketIfNotExists(snapshotBucket)
			if err != nil {
				return err
			}
			return b.Put(snapshotKey, value)
		})
	})
	s.noteFault(err)
	if err != nil {
		s.unsure = true
		return &FileError{"writing", s.path, err}
	}
	return nil
}

// sumOf is the checksum of a record. It is called with s.mu held.
func (s *Store) sumOf(seq uint64) (uint32, error) {
	if seq == 0 || seq > s.Last() {
		return 0, fmt.Errorf("%w: there is no event %d", session.ErrOutOfStep, seq)
	}
	found, err := s.readSome(seq, seq)
	if err != nil {
		return 0, err
	}
	return found[0].sum, nil
}

var _ session.Snapshots = (*View)(nil)

// Snapshot implements [session.Snapshots].
func (v *View) Snapshot() (session.Snapshot, bool) {
	found, err := v.snapshot()
	return found.Snapshot, err == nil && found.Seq > 0
}

// CheckSnapshot tells what is wrong with the bytes of the file's snapshot; a file without one has
// nothing wrong with it. It gives the snapshot for a check of what it means; ok is false if there is
// none to be checked.
func (v *View) CheckSnapshot() (s session.Snapshot, ok bool, err error) {
	found, err := v.snapshot()
	if err != nil {
		return session.Snapshot{}, false, fmt.Errorf("the snapshot is damaged: %w", err)
	}
	return found.Snapshot, found.Seq > 0, nil
}

// KeepSnapshot refuses with [ErrReadOnly].
func (v *View) KeepSnapshot(session.Snapshot) error { return ErrReadOnly }

// snapshot reads the snapshot that the file had, zero if it had none.
func (v *View) snapshot() (snapshot, error) {
	if v.report.snapshot == nil {
		return snapshot{}, nil
	}
	found, err := decodeSnapshot(v.report.snapshot)
	switch {
	case err != nil:
		return snapshot{}, err
	case found.Seq == 0 || found.Seq > uint64(len(v.frames)) || v.frames[found.Seq-1].sum != found.sum:
		return snapshot{}, errSnapshotStale
	}
	return found, nil
}
