package scoring

import (
	"errors"
	"fmt"
)

// Sheet is the log of one game, kept in the order in which things were noted. Entries are only ever
// added: a correction is an entry too, so the sheet tells what happened as well as what counts. A sheet
// that [Sheet.Add] did not refuse always folds.
type Sheet struct {
	Rules   Rules   `json:"rules"`
	First   Team    `json:"first"` // who serves first
	Entries []Entry `json:"entries,omitempty"`
}

// ErrOver is in the chain of the error for an entry that comes after the end of a game.
var ErrOver = errors.New("the game is over")

// Add is the sheet with one more entry, or an error that says why the entry cannot be and what can be
// done. The sheet itself stays as it was.
func (s Sheet) Add(e Entry) (Sheet, error) {
	added := Sheet{s.Rules, s.First, append(s.Entries[:len(s.Entries):len(s.Entries)], e)}
	line, err := s.line()
	if err != nil {
		return s, err
	}
	if err := line.add(e); err != nil {
		return s, err
	}
	return added, nil
}

// Check says which entry cannot be, and nil when the sheet folds. A sheet read from a file needs it.
func (s Sheet) Check() error {
	_, err := s.line()
	return err
}

// State is the game as the sheet now has it.
func (s Sheet) State() (State, error) {
	line, err := s.line()
	if err != nil {
		return Start(s.Rules, s.First), err
	}
	return line.state, nil
}

// Rallies are the rallies that count, in order, with all corrections made.
func (s Sheet) Rallies() ([]Rally, error) {
	line, err := s.line()
	if err != nil {
		return nil, err
	}
	var rallies []Rally
	for _, m := range line.moves {
		if m.Kind == RallyWon {
			rallies = append(rallies, m.Rally)
		}
	}
	return rallies, nil
}

// Final is the result, and false while the game goes on.
func (s Sheet) Final() (Final, bool, error) {
	line, err := s.line()
	if err != nil {
		return Final{}, false, err
	}
	return line.final, !line.final.IsZero(), nil
}

// line folds the entries one after the other.
func (s Sheet) line() (*line, error) {
	if err := s.Rules.Validate(); err != nil {
		return nil, err
	}
	l := &line{rules: s.Rules, first: s.First, state: Start(s.Rules, s.First)}
	for i, e := range s.Entries {
		if err := l.add(e); err != nil {
			return nil, fmt.Errorf("entry %d of the sheet: %w", i+1, err)
		}
	}
	return l, nil
}
