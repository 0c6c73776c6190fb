package store

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"club/quadrille/session"
)

// An entry is a record as the file keeps it.
type entry struct{ key, frame []byte }

// follow chains recs to the record of number last and checksum sum in the file of a seed, and gives
// their entries and the checksum of the last of them.
func follow(seed uint32, last uint64, sum uint32, recs []session.Record) ([]entry, uint32, error) {
	entries := make([]entry, len(recs))
	for i, r := range recs {
		if r.Seq != last+1 {
			return nil, 0, fmt.Errorf("%w: event %d cannot follow event %d", session.ErrOutOfStep, r.Seq, last)
		}
		f := frame{Record: r, seed: seed, before: sum, more: uint32(len(recs) - 1 - i)}
		var err error
		if entries[i].key, entries[i].frame, err = f.encode(); err != nil {
			return nil, 0, fmt.Errorf("event %d: %w", r.Seq, err)
		}
		last, sum = r.Seq, f.sum
	}
	return entries, sum, nil
}

// A chain checks records in the order of their keys.
type chain struct {
	first  uint32 // what record 1 has for the checksum of the one before
	last   uint64 // Seq of the newest record met
	sum    uint32 // its checksum
	more   uint32 // records of its Append that should follow
	broken bool   // the newest record met is damaged, so that none can be shown to follow it
	sound  uint64 // records met that are as they were written
	faults []string
	newer  int // the layout of a record that is laid out in a newer way, 0 if none is

	hasFirst bool // record 1 was met

	seeds map[uint32]uint64 // of the files that records were written for, with the first such record
}

// add checks the next record and gives it if its own bytes are sound.
func (c *chain) add(key, value []byte) (frame, bool) {
	f, err := decodeFrame(key, value)
	switch {
	case errors.Is(err, errLayout):
		c.newer = int(value[0])
		return frame{}, false
	case err != nil:
		c.fault("event %d is damaged: its bytes are not what was written", c.last+1)
		c.last++
		c.broken, c.more = true, 0
		return frame{}, false
	}
	c.link(f)
	c.last, c.sum, c.more, c.broken = f.Seq, f.sum, f.more, false
	if _, known := c.seeds[f.seed]; !known && f.layout != seedless {
		if c.seeds == nil {
			c.seeds = map[uint32]uint64{}
		}
		c.seeds[f.seed] = f.Seq
	}
	c.sound++
	return f, true
}

// link checks that f follows what came before.
func (c *chain) link(f frame) {
	switch {
	case f.Seq > c.last+1:
		c.missing(c.last+1, f.Seq-1)
	case f.Seq <= c.last:
		c.fault("event %d stands where event %d should", f.Seq, c.last+1)
	case f.Seq == 1:
		c.first, c.hasFirst = f.before, true
	case c.broken:
	case f.before != c.sum:
		c.fault("event %d does not follow the event %d that is there", f.Seq, c.last)
	case c.more > 0 && f.more != c.more-1:
		c.fault("the action that event %d belongs to is cut short", c.last)
	}
}

// end checks what only the end can show: that the last action is whole, and that the records reach to
// the number that the file has noted for the newest, 0 if it has not.
func (c *chain) end(noted uint64) {
	if until := max(c.last+uint64(c.more), noted); until > c.last {
		c.missing(c.last+1, until)
	}
}

// belong checks that all records were written for the file of a seed.
func (c *chain) belong(seed uint32) {
	told := false
	for _, other := range slices.Sorted(maps.Keys(c.seeds)) {
		if other != seed {
			c.fault("event %d belongs to another file", c.seeds[other])
			told = told || c.seeds[other] == 1
		}
	}
	if c.hasFirst && c.first != seed && !told {
		c.fault("event 1 belongs to another file")
	}
}

func (c *chain) missing(from, to uint64) {
	if from == to {
		c.fault("event %d is missing", from)
		return
	}
	c.fault("events %d to %d are missing", from, to)
}

func (c *chain) fault(format string, args ...any) {
	if len(c.faults) < maxFaults {
		c.faults = append(c.faults, fmt.Sprintf(format, args...))
	}
}
