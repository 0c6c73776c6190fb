package session

import "sync"

// placed is the table of one state, so that it is worked out once for all who show it.
type placed struct {
	sync.Mutex
	club   *Club
	last   uint64
	places []Place
}

// Places is [Places] of the newest night, worked out once; nil where there was none. It is for reading only.
func (l *Ledger) Places() []Place {
	n := l.club.Night()
	if n == nil {
		return nil
	}
	l.placed.Lock()
	defer l.placed.Unlock()
	if l.placed.club != l.club || l.placed.last != l.last {
		l.placed.club, l.placed.last, l.placed.places = l.club, l.last, Places(l.club, n)
	}
	return l.placed.places
}
