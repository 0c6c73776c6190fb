package session

import (
	"fmt"
	"time"
)

// MaxCourtNote is the longest note about a court, in terminal cells: it is read out with the call.
const MaxCourtNote = 40

// CourtNoted says what is particular about a court.
type CourtNoted struct {
	Court CourtID `json:"court"`
	Note  string  `json:"note,omitempty"` // empty for nothing
}

func (e CourtNoted) apply(f *fold, _ time.Time) error {
	_, c, err := f.court(e.Court)
	if err != nil {
		return err
	}
	c.Note = CleanText(e.Note, MaxCourtNote)
	return nil
}

// NoteCourt says from now on what is particular about a court, nothing if the note is empty.
type NoteCourt CourtNoted

func (c NoteCourt) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	note := CleanText(c.Note, MaxCourtNote)
	switch k := n.Court(c.Court); {
	case k == nil:
		return nil, fmt.Errorf("tonight has no court %s", c.Court)
	case note != CleanText(c.Note, MaxCourtNote+1):
		return nil, fmt.Errorf("a note about a court has at most %d characters: it is read out with the call", MaxCourtNote)
	case k.Note == note:
		return nil, fmt.Errorf("court %s is %s already", c.Court, noteWords(note))
	}
	return []Event{CourtNoted{c.Court, note}}, nil
}

// noteWords is a note in words, also where there is none.
func noteWords(note string) string {
	if note == "" {
		return "with nothing noted"
	}
	return "noted: " + note
}
