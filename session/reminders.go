package session

import (
	"errors"
	"time"
)

// RemindersChosen says whether the club wants to be reminded of usual caution whenever a night is opened.
type RemindersChosen struct {
	Off bool `json:"off,omitempty"`
}

func (e RemindersChosen) apply(f *fold, _ time.Time) error {
	f.club.NoReminders = e.Off
	return nil
}

// ChooseReminders switches the reminders off, or on again.
type ChooseReminders struct{ Off bool }

func (c ChooseReminders) decide(l *Ledger, _ Env) ([]Event, error) {
	if c.Off == l.club.NoReminders {
		return nil, errors.New("the reminders are so already")
	}
	return []Event{RemindersChosen(c)}, nil
}
