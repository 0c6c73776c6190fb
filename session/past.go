package session

import (
	"fmt"
	"iter"
)

// Past is the state as it was at the end of a night that is over: nothing that was written from the opening of
// the next one on is in it. It reads the log from its beginning.
func Past(records iter.Seq2[Record, error], id NightID) (*Ledger, error) {
	found := false
	until := func(yield func(Record, error) bool) {
		for r, err := range records {
			if err == nil && r.Kind == "NightOpened" {
				if found {
					return
				}
				found = r.Night == id
			}
			if !yield(r, err) {
				return
			}
		}
	}
	l, err := Load(until)
	if err == nil && !found {
		return nil, fmt.Errorf("the club has no night %d", id)
	}
	return l, err
}

// Past is the state as it was at the end of a night, see [Past].
func (d *Desk) Past(id NightID) (*Ledger, error) { return Past(d.log.Records(1), id) }
