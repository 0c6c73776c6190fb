package session

import (
	"fmt"
	"time"

	"club/quadrille/scheduler"
)

// Usual is what the club's nights are like as a rule: a new night is proposed so. Whatever a night was
// opened with is usual from then on; what is changed while it goes on is for that night only, unless the
// organiser keeps it as usual.
type Usual struct {
	Settings Settings `json:"settings"` // without closing time and seed, which are of one night
	Courts   int      `json:"courts"`
}

// newUsual proposes what a night of an older file did not choose as a new club's first night has it.
func newUsual(s Settings, courts int) *Usual {
	s.Closing, s.Seed, s.Chosen = time.Time{}, 0, true
	return &Usual{Settings: s, Courts: max(1, courts)}
}

// UsualKept makes settings the usual ones.
type UsualKept struct {
	Usual Usual `json:"usual"`
}

func (e UsualKept) apply(f *fold, _ time.Time) error {
	if err := e.Usual.Settings.Validate(); err != nil {
		return err
	}
	if e.Usual.Courts < 1 || e.Usual.Courts > MaxCourts {
		return fmt.Errorf("a night has 1 to %d courts, not %d", MaxCourts, e.Usual.Courts)
	}
	f.club.Usual = newUsual(e.Usual.Settings, e.Usual.Courts)
	return nil
}

// KeepUsual makes what tonight is played with the club's usual settings, and keeps its courts for their venue.
type KeepUsual struct{}

func (KeepUsual) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	events := l.keepsCourts(n)
	if len(l.club.settingsUnusual(n)) > 0 {
		events = append(events, UsualKept{*newUsual(n.Settings, len(n.OpenCourts()))})
	}
	if len(events) == 0 {
		return nil, fmt.Errorf("tonight's settings are your usual ones already, and its courts as they are kept")
	}
	return events, nil
}

// usualCourts is how many courts a club is taken to have that has not said.
const usualCourts = 4

// Proposal is what a new night is proposed with: the usual settings with a seed of its own, and on how
// many courts.
func (c *Club) Proposal(seed uint64) (s Settings, courts int) {
	if c.Usual == nil {
		return DefaultSettings(seed), usualCourts
	}
	s = c.Usual.Settings
	s.Seed = seed
	return s, c.Usual.Courts
}

// Unusual says in words what is for tonight only, each with what is usual. It is empty when no night is
// open, or when all is as usual. Closing times are of one night and never unusual.
func (c *Club) Unusual() []string {
	n := c.OpenNight()
	if n == nil {
		return nil
	}
	return append(c.settingsUnusual(n), c.courtsUnusual(n)...)
}

// settingsUnusual is what of the settings is for tonight only.
func (c *Club) settingsUnusual(n *Night) []string {
	if c.Usual == nil {
		return nil
	}
	var out []string
	differ := func(now, usual string) {
		if now != usual {
			out = append(out, fmt.Sprintf("%s (usually %s)", now, usual))
		}
	}
	number := func(now, usual int, what, behind string) {
		if now != usual {
			differ(Counted(now, what)+behind, fmt.Sprint(usual))
		}
	}
	s, u := n.Settings, c.Usual.Settings
	differ(string(s.Flow), string(u.Flow))
	differ(s.Format.Words(), u.Format.Words())
	differ(s.Scoring.String(), u.Scoring.String())
	number(s.Rounds, u.Rounds, "round", "")
	number(s.Slot, u.Slot, "minute", " a round")
	differ(levelsText(s), levelsText(u))
	differ(leftoverText(s), leftoverText(u))
	differ(callsText(s), callsText(u))
	differ(s.Benching.String()+" bench", u.Benching.String()+" bench")
	differ(stoppedText(s), stoppedText(u))
	differ(ratedText(s), ratedText(u))
	differ(memoryText(s), memoryText(u))
	number(s.MaxRun, u.MaxRun, "game", " running without a rest")
	number(len(n.OpenCourts()), c.Usual.Courts, "court", "")
	return out
}

func ratedText(s Settings) string {
	if s.Rated {
		return "levels by ratings"
	}
	return "levels as stated"
}

func memoryText(s Settings) string {
	if s.Forget {
		return "the nights before forgotten"
	}
	return "the nights before remembered"
}

func levelsText(s Settings) string {
	switch s.Leveling() {
	case scheduler.GentleLevels:
		return "gently even levels"
	case scheduler.EvenLevels:
		return "even levels"
	}
	return "any levels"
}

func callsText(s Settings) string {
	if s.ByWait {
		return "calls strictly by waiting time"
	}
	return "calls that mix more"
}

func leftoverText(s Settings) string {
	if s.Singles {
		return "left-over two play singles"
	}
	return "left-over two sit out"
}

func stoppedText(s Settings) string {
	if s.Stopped {
		return "walkovers count"
	}
	return "walkovers left out"
}

// Counted is a number of things in words: "1 game", "2 games".
func Counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
