package session

import (
	"fmt"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// Flow is how games follow each other on the courts.
type Flow string

// The two flows of a night.
const (
	Rounds  Flow = "rounds"  // all courts start together; the plan covers the night
	Rolling Flow = "rolling" // a free court calls the next four from the bench at once
)

// ParseFlow reads the name of a flow.
func ParseFlow(text string) (Flow, error) {
	switch f := Flow(text); f {
	case Rounds, Rolling:
		return f, nil
	}
	return "", fmt.Errorf("no flow is called %q: use rounds or rolling", text)
}

// Settings is what the organiser chose for a night. All of it may change while the night goes on;
// what was played stays.
type Settings struct {
	Flow     Flow               `json:"flow"`
	Format   scheduler.Format   `json:"format"`
	Scoring  scoring.Rules      `json:"scoring"`
	Rounds   int                `json:"rounds"`             // rounds to plan for the night
	Slot     int                `json:"slot"`               // minutes from one call of a round to the next
	Closing  time.Time          `json:"closing,omitzero"`   // when the hall must be left, zero if open
	Balance  float64            `json:"balance,omitempty"`  // no game whose likelier winner has more than this chance, where avoidable; 0 for any
	Gentle   bool               `json:"gentle,omitempty"`   // such a game is avoided only where that costs few meetings
	Singles  bool               `json:"singles,omitempty"`  // two people left over play singles if a court is free
	Rated    bool               `json:"rated,omitempty"`    // levels are what the games of the nights before say
	Forget   bool               `json:"forget,omitempty"`   // who met on the nights before does not matter
	MaxRun   int                `json:"max_run,omitempty"`  // games running without a rest, 0 for no limit
	ByWait   bool               `json:"by_wait,omitempty"`  // a free court calls strictly by waiting time, and does not mix more
	Benching scheduler.Benching `json:"benching,omitempty"` // what sitting out twice running may cost
	Chosen   bool               `json:"chosen,omitempty"`   // ByWait and Benching hold as they stand, see Settings.known
	Stopped  bool               `json:"stopped,omitempty"`  // walkovers and games given up count for the table
	Seed     uint64             `json:"seed"`               // makes every draw of the night repeatable
}

// Leveling is how much even games are worth tonight.
func (s Settings) Leveling() scheduler.Leveling {
	switch {
	case s.Balance == 0:
		return scheduler.AnyLevels
	case s.Gentle:
		return scheduler.GentleLevels
	}
	return scheduler.EvenLevels
}

// DefaultSettings is a night as most clubs play it: rotating partners in rounds, side-out to 11,
// win by 2, eight rounds of 15 minutes.
func DefaultSettings(seed uint64) Settings {
	return Settings{
		Flow:    Rounds,
		Format:  scheduler.Rotating,
		Scoring: scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2},
		Rounds:  8,
		Slot:    15,
		Chosen:  true,
		Seed:    seed,
	}
}

// known are the settings of an event as they were meant. Before there was a choice, and Chosen, nobody sat out
// twice running who need not, and free courts called strictly by waiting time: a night that was opened so goes on so.
func (s Settings) known() Settings {
	if !s.Chosen {
		s.Chosen, s.ByWait, s.Benching = true, true, scheduler.StrictBench
	}
	return s
}

// Validate says what is wrong with s, and nil when nothing is.
func (s Settings) Validate() error {
	if _, err := ParseFlow(string(s.Flow)); err != nil {
		return err
	}
	if err := s.Scoring.Validate(); err != nil {
		return err
	}
	switch {
	case s.Rounds < 1 || s.Rounds > 60:
		return fmt.Errorf("a night has 1 to 60 rounds, not %d", s.Rounds)
	case s.Slot < 3 || s.Slot > 120:
		return fmt.Errorf("a round takes 3 to 120 minutes, not %d", s.Slot)
	case s.Balance != 0 && (s.Balance <= 0.5 || s.Balance >= 1):
		return fmt.Errorf("the likelier winner's chance is above 0.5 and below 1, not %g: use 0 for any game", s.Balance)
	case int(s.Benching) >= len(scheduler.Benchings()):
		return fmt.Errorf("%s is no way to share the bench: use mixed or strict", s.Benching)
	case s.MaxRun < 0:
		return fmt.Errorf("the most games running cannot be %d: use 0 for no limit", s.MaxRun)
	}
	return nil
}
