package session

import (
	"fmt"
	"time"

	"club/quadrille/scoring"
)

// MaxNote is the longest note of an entry on a sheet, in terminal cells.
const MaxNote = 100

// NoteGame adds an entry to the sheet of a running game: a time-out, a correction, a change of ends, a
// side that gives up. An entry that ends the game also frees its court.
type NoteGame struct {
	Game  GameID
	Entry scoring.Entry
}

func (c NoteGame) decide(l *Ledger, env Env) ([]Event, error) {
	_, g, err := runningGame(l, c.Game)
	if err != nil {
		return nil, err
	}
	e := c.Entry
	e.Note = CleanText(e.Note, MaxNote)
	switch {
	case e.Kind == scoring.RallyWon:
		return ScoreRally{c.Game, e.Rally}.decide(l, env)
	case e.Kind == scoring.NoShow:
		return nil, fmt.Errorf("court %s: say which player did not come, for that player is not to be called again", g.Court)
	case e.Kind == scoring.EndsSwitched && !g.EndsDue():
		return nil, fmt.Errorf("court %s: it is not time to switch ends; that is when a team has %d points", g.Court, g.Rules.EndsAt())
	case e.Kind == scoring.RallyChanged && e.At > 0 && e.At <= len(g.Rallies) && g.Rallies[e.At-1] == e.Rally:
		return nil, fmt.Errorf("court %s: rally %d is noted so already", g.Court, e.At)
	case e.Kind == scoring.Remark && e.Note == "":
		return nil, fmt.Errorf("court %s: a remark needs words", g.Court)
	}
	return notedEvents(g, e)
}

// notedEvents are what an entry becomes: itself, and the end of the game where it ends it.
func notedEvents(g *Game, e scoring.Entry) ([]Event, error) {
	sheet, err := g.Sheet().Add(e)
	if err != nil {
		return nil, fmt.Errorf("court %s: %w", g.Court, err)
	}
	final, over, err := sheet.Final()
	if err != nil {
		return nil, err
	}
	noted := GameNoted{Game: g.ID, Entry: e}
	if e.At > 0 {
		noted.Rallies = len(g.Rallies)
	}
	events := []Event{noted}
	if over {
		events = append(events, GameFinished{g.ID, final})
	}
	return events, nil
}

// NoShow notes that somebody who was called is nowhere to be seen. With somebody to put in, the game is
// played; without, and once the grace is over, the other team gets a walkover. Who did not come rests
// from then on, so that nobody else is called to wait for them.
type NoShow struct {
	Game   GameID
	Person PersonID
	In     PersonID // who plays instead; empty for a walkover
}

func (c NoShow) decide(l *Ledger, env Env) ([]Event, error) {
	n, g, err := runningGame(l, c.Game)
	switch {
	case err != nil:
		return nil, err
	case c.Person == "" || !g.Has(c.Person):
		return nil, fmt.Errorf("%s does not play on court %s", l.club.Name(c.Person), g.Court)
	case len(g.Rallies) > 0:
		return nil, fmt.Errorf("%s has begun to play: send on a sub, or note that the team retired", l.club.Name(c.Person))
	}
	var events []Event
	if c.In != "" {
		events, err = Substitute{c.Game, c.Person, c.In}.decide(l, env)
	} else {
		e := scoring.Entry{Kind: scoring.NoShow, Waited: n.waited(g, env.Now), Grace: n.Grace()}
		if g.B.Has(c.Person) {
			e.Team = scoring.B
		}
		events, err = notedEvents(g, e)
	}
	if err != nil {
		return nil, err
	}
	if n.contains(c.Person, Here) {
		events = append(events, PersonRested{c.Person})
	}
	return events, nil
}

// Grace is how many minutes somebody who was called may be late: ten, as tournaments have it, but never
// more than a third of a round, since a club night cannot wait that long.
func (n *Night) Grace() int { return min(10, max(1, n.Settings.Slot/3)) }

// GraceLeft is how many minutes are left for somebody of a game to come, 0 when the grace is over.
func (n *Night) GraceLeft(g *Game, now time.Time) int { return max(0, n.Grace()-n.waited(g, now)) }

// waited is how many whole minutes have passed since a game was called, without holds.
func (n *Night) waited(g *Game, now time.Time) int { return int(n.GameTime(g, now).Minutes()) }
