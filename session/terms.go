package session

import (
	"fmt"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// Terms are what a game is played under: whatever is needed to read its score, for as long as there is
// a club file. A call fixes them. Settings are for what comes next and say nothing about games that were
// called.
type Terms struct {
	Flow    Flow             `json:"flow"`
	Format  scheduler.Format `json:"format"`
	Rules   scoring.Rules    `json:"rules"`
	Stopped bool             `json:"stopped,omitempty"` // see Settings.Stopped
}

// Terms are what games are called under from now on.
func (s Settings) Terms() Terms {
	return Terms{Flow: s.Flow, Format: s.Format, Rules: s.Scoring, Stopped: s.Stopped}
}

// calledUnder gives the terms of a call. Calls of files from before calls had terms of their own have
// none, and are read by the settings at their place in the log, as they were then.
func (n *Night) calledUnder(t Terms) (Terms, error) {
	if t == (Terms{}) {
		return n.Settings.Terms(), nil
	}
	if err := n.goesBy(t.Flow); err != nil {
		return t, err
	}
	return t, t.Rules.Validate()
}

// goesBy refuses what was done in one flow where the night goes by the other: a round cannot stand in a
// rolling night, nor a free court's call in one of rounds. Events of older files do not say their flow.
func (n *Night) goesBy(f Flow) error {
	if f != "" && f != n.Settings.Flow {
		return &flowError{of: f, night: n.Settings.Flow}
	}
	return nil
}

// flowError tells that something belongs to another flow than the night's.
type flowError struct{ of, night Flow }

func (e *flowError) Error() string {
	return fmt.Sprintf("it belongs to the flow %s, and the night goes by %s", e.of, e.night)
}

// Played is what a called game means: what no change of the settings, and no undo but that of its own
// call, move or score, may alter.
type Played struct {
	Round   int // 0 in the rolling flow
	Court   CourtID
	Format  scheduler.Format
	Rules   scoring.Rules
	Stopped bool
	Final   scoring.Final // the zero value while the game goes on
}

// Played lists what the games of the night mean, in the order of their calls.
func (n *Night) Played() []Played {
	out := make([]Played, len(n.Games))
	for i := range n.Games {
		g := &n.Games[i]
		out[i] = Played{Round: g.Round, Court: g.Court, Format: g.Format, Rules: g.Rules, Stopped: g.Stopped}
		if g.Final != nil {
			out[i].Final = *g.Final
		}
	}
	return out
}

func (e RoundCalled) older() uint16 { return layoutWithout(e.Terms == Terms{}) }
func (e GameCalled) older() uint16  { return layoutWithout(e.Terms == Terms{}) }
func (e PlayBegun) older() uint16   { return layoutWithout(e.Flow == "") }

// layoutWithout is the layout of events that have nothing of what came with version 2.
func layoutWithout(none bool) uint16 {
	if none {
		return 1
	}
	return 0
}
