package session

import (
	"fmt"
	"slices"
	"time"

	"club/quadrille/scoring"
)

// Pause is a stop that is noted on a game's sheet and goes on until the next entry.
type Pause struct {
	Kind  scoring.Kind `json:"kind"` // a time-out of a team, of a referee, or a medical one
	Side  scoring.Team `json:"side"` // who took it; A for a referee's
	Since time.Time    `json:"since"`

	Stood time.Duration `json:"stood,omitempty"` // what holds had already cost the game when the pause began
}

// Until is when a pause should be over, zero for a referee's time-out, which lasts as long as it takes.
func (p Pause) Until() time.Time {
	switch p.Kind {
	case scoring.TimeOut:
		return p.Since.Add(scoring.TimeOutLength)
	case scoring.MedicalTimeOut:
		return p.Since.Add(scoring.MedicalLength)
	}
	return time.Time{}
}

// Lineup is who played a game until somebody was put in.
type Lineup struct {
	Until int  `json:"until"` // the last rally that these people played
	A     Team `json:"a"`
	B     Team `json:"b"`
}

// Sheet is the log of a game as it was noted on court: rallies, time-outs, corrections. Team A serves
// first.
func (g *Game) Sheet() scoring.Sheet {
	s := scoring.Sheet{Rules: g.Rules, First: scoring.A, Entries: g.Entries}
	if s.Entries == nil {
		for _, r := range g.Rallies {
			s.Entries = append(s.Entries, scoring.Entry{Kind: scoring.RallyWon, Rally: r})
		}
	}
	return s
}

// note takes one more entry into the sheet of a game.
func (g *Game) note(e scoring.Entry, at time.Time) error {
	if e.Kind == scoring.RallyWon && !g.State.Done && !g.stopped() {
		g.noteRally(e, at)
		return nil
	}
	sheet, err := g.Sheet().Add(e)
	if err != nil {
		return fmt.Errorf("court %s: %w", g.Court, err)
	}
	if g.State, err = sheet.State(); err != nil {
		return err
	}
	if g.Rallies, err = sheet.Rallies(); err != nil {
		return err
	}
	g.Entries = sheet.Entries
	g.pause(e, at)
	return nil
}

// noteRally takes one more rally in without folding the sheet anew, since nearly all entries of a night
// are rallies. The lists are copied, for the state before this one still has them.
func (g *Game) noteRally(e scoring.Entry, at time.Time) {
	g.Rallies = append(slices.Clip(g.Rallies), e.Rally)
	g.State = g.State.After(e.Rally)
	if g.Entries != nil { // rallies alone need no second list
		g.Entries = append(slices.Clip(g.Entries), e)
		g.pause(e, at)
	}
}

// stopped tells whether the sheet says that the game ended other than by play. Only remarks can follow
// such an entry.
func (g *Game) stopped() bool {
	for i := len(g.Entries) - 1; i >= 0; i-- {
		switch g.Entries[i].Kind {
		case scoring.Remark:
			continue
		case scoring.TeamRetired, scoring.NoShow, scoring.TimeUp:
			return true
		}
		return false
	}
	return false
}

// pause begins a pause where the entry is one, and ends the one before. Only what a game stands for the
// sake of somebody's health or of the court is no playing time; the minute of a time-out is part of a
// usual game.
func (g *Game) pause(e scoring.Entry, at time.Time) {
	if p := g.Pause; p != nil && p.Kind != scoring.TimeOut {
		held := g.Stood - p.Stood // during the pause, and counted already
		g.Stood += max(0, at.Sub(p.Since)-held)
	}
	g.Pause = nil
	switch e.Kind {
	case scoring.TimeOut, scoring.MedicalTimeOut, scoring.RefereeTimeOut:
		g.Pause = &Pause{Kind: e.Kind, Side: e.Team, Since: at, Stood: g.Stood}
	}
}

// lineup is who played a rally of g, counted from 1.
func (g *Game) lineup(rally int) (a, b Team) {
	for _, l := range g.Earlier {
		if rally <= l.Until {
			return l.A, l.B
		}
	}
	return g.A, g.B
}

// EndsDue tells whether the teams still have to change ends. Somebody has to note the change on the
// sheet; a game whose last rally was not the one that asked for it goes on all the same.
func (g *Game) EndsDue() bool {
	due, err := g.Sheet().EndsDue()
	return err == nil && due
}

// SwitchedEnds tells whether somebody noted that the teams changed ends.
func (g *Game) SwitchedEnds() bool { return g.Sheet().SwitchedEnds() }

// Course is the game rally by rally, see scoring.Sheet.Course.
func (g *Game) Course() []scoring.Step {
	steps, err := g.Sheet().Course()
	if err != nil {
		return nil
	}
	return steps
}

// TimeOutsLeft is how many time-outs a team of g may still take.
func (g *Game) TimeOutsLeft(side scoring.Team) int {
	left, err := g.Sheet().TimeOutsLeft(side)
	if err != nil {
		return 0
	}
	return left
}
