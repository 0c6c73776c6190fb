// Package hall says what stands in the hall at a moment: each court and what goes on there, who waits,
// what comes next, and who leads. Everything that shows the hall, on the desk, on a wall or on paper,
// draws this and decides nothing. It is a pure function of the ledger, the rounds to come and the time.
package hall

import (
	"slices"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// State is what a court is in. The states differ in what the organiser does about them.
type State uint8

// The states of a court.
const (
	Closed  State = iota // out of play, and nobody on it
	Free                 // open, and nobody on it
	Planned              // open, and the next round has a game for it
	Over                 // the game of this round is over
	Called               // people are on their way: the newest action called them
	Playing              // a game goes on
)

// Court is one court.
type Court struct {
	ID    session.CourtID
	State State
	Game  session.GameID // that goes on or is over, 0 for none
	A, B  session.Team   // who plays, played or will play; empty on a court without anybody

	Score   scoring.Score
	Scored  bool         // Score is known: the game is scored rally by rally, or over
	How     scoring.How  // of a game that is over
	Winner  scoring.Team // of a game that is over, if Decided
	Decided bool
	Point   scoring.Team // who has game point, if AtPoint
	AtPoint bool

	// Of a game that is scored rally by rally:
	Server, Receiver session.PersonID
	Boxes            [2][2]session.PersonID // who stands where: by team, then by scoring.Box; empty in singles where nobody does
	Call             string                 // as the server says it
	Switched         bool                   // the teams have changed ends: A is where B began
	PausedFor        scoring.Kind           // the time-out that goes on, 0 for none

	Played   time.Duration // how long the game has been played, without holds
	Expected time.Duration // how long such a game takes, in the median of what tonight has taught
	TimeUp   bool          // the time limit of the game is over

	Sent []session.Proposal // scores that came from the court and wait for the desk, at most one of each team

	Closing bool // closed after this game
	Held    bool
	Late    bool               // Played is longer than nine of ten games take
	Leaving []session.PersonID // players who are not called again after this game
}

// Waiting is somebody on the bench.
type Waiting struct {
	Person session.PersonID
	Waited time.Duration
	SatOut int
	Games  int
	Turn   session.Wait // when the person may play next
}

// Hall is everything that stands there.
type Hall struct {
	Courts  []Court
	Bench   []Waiting // who plays next comes first
	Idle    session.Idle
	IsIdle  bool               // Idle says why a free court is not called; only in the rolling flow
	Round   int                // that comes next, 0 in the rolling flow or when none is known
	Clock   session.RoundClock // of the round on court, if Clocked
	Clocked bool
	Next    []session.PlannedGame
	Out     []session.PersonID // of the round that comes next
	Leaders []session.Place
}

// Of is the hall of the night that goes on. Ahead are the rounds to come, nil where they are not known.
// Ok is false when no night is open.
func Of(l *session.Ledger, ahead []session.PlannedRound, now time.Time) (h Hall, ok bool) {
	n := l.Night()
	if n == nil {
		return Hall{}, false
	}
	clock := n.Clock()
	expected := time.Duration(clock.Median() * float64(time.Minute))
	late := time.Duration(clock.Quantile(0.9) * float64(time.Minute))
	called := newlyCalled(l)
	var next session.PlannedRound
	if len(ahead) > 0 && n.Settings.Flow == session.Rounds {
		next, h.Round = ahead[0], len(n.Rounds)+1
		h.Next, h.Out = next.Games, next.Out
	}
	for _, c := range n.Courts {
		court := courtOf(n, c, next, now)
		if court.State == Playing {
			court.Expected, court.Late = expected, court.Played > late
			if called[court.Game] {
				court.State = Called
			}
		}
		h.Courts = append(h.Courts, court)
	}
	h.Clock, h.Clocked = n.RoundClock(now)
	h.Bench = bench(n, now)
	if n.Settings.Flow == session.Rolling {
		h.Idle = l.NextStep(now).Idle
		h.IsIdle = h.Idle.Cause != session.Callable
	}
	if g, ok := h.nextFour(l, n, now); ok {
		h.Next = []session.PlannedGame{g}
	}
	h.Leaders = l.Places()
	return h, true
}

// nextFour is who would be called to the next free court of the rolling flow.
func (h *Hall) nextFour(l *session.Ledger, n *session.Night, now time.Time) (session.PlannedGame, bool) {
	open := n.OpenCourts()
	if n.Settings.Flow != session.Rolling || n.LastCall || len(open) == 0 {
		return session.PlannedGame{}, false
	}
	g, err := session.NextGame(l.Club(), n, open[0], now)
	return g, err == nil
}

// newlyCalled lists the games that the newest action of somebody called.
func newlyCalled(l *session.Ledger) map[session.GameID]bool {
	out := map[session.GameID]bool{}
	actions := slices.DeleteFunc(l.Actions(), func(a session.Action) bool { return a.IsClock() || a.IsSent() })
	if len(actions) == 0 {
		return out
	}
	for _, e := range actions[len(actions)-1].Events {
		switch e := e.(type) {
		case session.GameCalled:
			out[e.Game] = true
		case session.RoundCalled:
			n := l.Night()
			for _, g := range n.Rounds[len(n.Rounds)-1].Games {
				out[g] = true
			}
		}
	}
	return out
}

// bench lists who waits, who plays next first.
func bench(n *session.Night, now time.Time) []Waiting {
	var out []Waiting
	turns, people := n.TurnsOfAll(), n.Bench()
	waits := n.NextTurns((len(people)+3)/4, now)
	for i, a := range people {
		out = append(out, Waiting{
			Person: a.Person, Waited: a.Waited(now),
			SatOut: turns[a.Person].SatOut, Games: turns[a.Person].Games, Turn: waits[i/4],
		})
	}
	return out
}

// FreesNext lists the courts that are played on, the one that is likely to be free first in front.
func (h Hall) FreesNext() []Court {
	var out []Court
	for _, c := range h.Courts {
		if c.State == Playing || c.State == Called {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Court) int { return int(b.Played - a.Played) })
	return out
}
