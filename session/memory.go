package session

import (
	"fmt"
	"iter"
)

// MemoryLog is a log that forgets everything when the program ends: for trying things out and for
// tests. Its zero value is an empty log.
type MemoryLog struct{ records []Record }

// Append implements Log.
func (m *MemoryLog) Append(recs []Record) error {
	if len(recs) > 0 && recs[0].Seq != m.Last()+1 {
		return fmt.Errorf("event %d after event %d: %w", recs[0].Seq, m.Last(), ErrOutOfStep)
	}
	m.records = append(m.records, recs...)
	return nil
}

// Records implements Log.
func (m *MemoryLog) Records(from uint64) iter.Seq2[Record, error] {
	return func(yield func(Record, error) bool) {
		for i := max(1, from); i <= m.Last(); i++ {
			if !yield(m.records[i-1], nil) {
				return
			}
		}
	}
}

// Last implements Log.
func (m *MemoryLog) Last() uint64 { return uint64(len(m.records)) }
