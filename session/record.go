package session

import (
	"encoding/json"
	"errors"
	"iter"
	"time"
)

// NightID numbers the nights of one club file from 1. The club's own records, which belong to no
// night, carry 0.
type NightID uint32

// Record is one event as a log keeps it: the session knows what it means, the store only keeps it.
type Record struct {
	Seq     uint64          `json:"seq"`     // place in the log, from 1, without gaps
	Action  uint64          `json:"action"`  // Seq of the first record of the same user action
	Time    time.Time       `json:"time"`    // what the clock said, right or wrong: UTC, to the millisecond
	Night   NightID         `json:"night"`   // 0 for the club itself
	Kind    string          `json:"kind"`    // name of the event, "RallyWon"
	Version uint16          `json:"version"` // version of the payload's layout, from 1
	Payload json.RawMessage `json:"payload"` // one JSON object
}

// Log is where a club's records live. Records of one call to Append become durable together or
// not at all, and stay in the order in which they were appended.
type Log interface {
	// Append makes recs durable in one transaction before it returns. Seq of the first must be
	// Last()+1, or the error wraps ErrOutOfStep and nothing is written. After any other error the
	// caller must not assume that nothing was written: it reads the log again.
	Append(recs []Record) error

	// Records yields the records from Seq on, in order. It ends after the first error.
	Records(from uint64) iter.Seq2[Record, error]

	// Last is the Seq of the newest record, 0 for an empty log.
	Last() uint64
}

// ErrOutOfStep tells that somebody else appended to the log since the caller last looked.
var ErrOutOfStep = errors.New("the log has moved on")
