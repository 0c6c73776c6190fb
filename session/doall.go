package session

import (
	"errors"
	"fmt"
)

// DoAll does several commands or none of them. Do is called once, with what does one command after the other; all that
// they lead to becomes durable at once when it has ended without an error. A refusal inside may be passed on, or
// answered by another command.
func (d *Desk) DoAll(do func(one func(Command) (*Ledger, error)) error) (*Ledger, error) {
	d.writing.Lock()
	defer d.writing.Unlock()
	if d.unsure {
		before := d.Ledger().Last()
		if err := d.reload(); err != nil {
			return d.Ledger(), &KeepError{Err: err}
		}
		if d.Ledger().Last() != before {
			return d.Ledger(), ErrSavedAfterAll
		}
	}
	start := d.Ledger()
	l := start
	var all []Record
	one := func(c Command) (*Ledger, error) {
		next, records, err := d.decide(l, c)
		if err != nil {
			return l, err
		}
		all = append(all, records...)
		if len(records) > 0 {
			l = next
		}
		return l, nil
	}
	if err := do(one); err != nil || len(all) == 0 {
		return start, err
	}
	if err := d.log.Append(all); err != nil {
		d.unsure = true
		if errors.Is(err, ErrOutOfStep) {
			err = fmt.Errorf("%w: try again", err)
		}
		return start, &KeepError{err, l.Newest()}
	}
	d.ledger.Store(l)
	return l, nil
}
