package session

import (
	"errors"
	"fmt"
	"time"

	"club/quadrille/scoring"
)

// ChooseCourtScores lets the courts send scores tonight, or ends that. The secret is taken the first time; codes that
// were given out hold until the night ends.
type ChooseCourtScores struct {
	On     bool
	Pass   Passing
	Secret string // 128 random bits in hexadecimal
}

func (c ChooseCourtScores) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	choice := CourtScores(c)
	if had := n.CourtScores; had != nil {
		choice.Secret = had.Secret
	}
	if err := choice.validate(); err != nil {
		return nil, err
	}
	switch had := n.CourtScores; {
	case had == nil && !c.On, had != nil && !had.On && !c.On:
		return nil, errors.New("scores from the courts are off already")
	case had != nil && *had == choice:
		return nil, fmt.Errorf("scores from the courts %s already", c.Pass)
	}
	return []Event{CourtScoresChosen{choice}}, nil
}

// MaxProposals is how many scores may be sent for one game: whoever has a court's code can make the club file no
// longer than that.
const MaxProposals = 8

// ProposeScore is a score that comes from a court. What it may do the code of the court says, and not whoever sends
// it: it is about the game that goes on there, and counts only where the organiser chose that. The errors are for
// whoever sent it.
type ProposeScore struct {
	Code string // of the court
	Game GameID // that the sender saw there
	By   scoring.Team
	A, B int // the score of each team
}

// ErrNoCourt is returned for a code that is that of no court tonight.
var ErrNoCourt = errors.New("this is no court's page of tonight: scan the code on the court's slip, or ask at the desk")

// ErrSentAlready is returned for a score that was sent before and waits for the desk.
var ErrSentAlready = errors.New("that score was sent already, and waits for the desk")

func (c ProposeScore) decide(l *Ledger, env Env) ([]Event, error) {
	n := l.Night()
	if n == nil {
		return nil, ErrNoCourt
	}
	court := n.courtOf(c.Code)
	if court == "" {
		return nil, ErrNoCourt
	}
	g := n.Game(c.Game)
	switch {
	case g == nil || g.Court != court:
		return nil, fmt.Errorf("court %s has another game now: open its page again", court)
	case !g.Running():
		return nil, fmt.Errorf("this game is over at the desk, %s: tell the desk if that is wrong", g.Final)
	case g.Proposed >= MaxProposals:
		return nil, fmt.Errorf("%d scores were sent for this game: tell yours at the desk", MaxProposals)
	case c.By > scoring.B:
		return nil, errors.New("say which team you are")
	}
	final, err := n.FinalNow(g, c.A, c.B, env.Now)
	if err != nil {
		return nil, err
	}
	open := n.ProposalsOf(g.ID)
	for _, p := range open {
		if p.By == c.By && p.Final == final {
			return nil, ErrSentAlready
		}
	}
	events := []Event{ScoreProposed{g.ID, c.By, final}}
	passes := n.CourtScores.Pass == AllPass
	for _, p := range open {
		passes = passes || n.CourtScores.Pass == BothSent && p.By != c.By && p.Final == final
	}
	if passes {
		events = append(events, GameFinished{g.ID, final}, ProposalTaken{g.ID, c.By})
	}
	return events, nil
}

// FinalNow is the final score of a game of tonight that ends now: played to its end, or by the clock where that may
// have ended it. The error says why it is none.
func (n *Night) FinalNow(g *Game, a, b int, now time.Time) (scoring.Final, error) {
	final, err := g.Rules.Final(a, b, scoring.Played)
	if err != nil && n.OutOfTime(g, now) {
		return g.Rules.Final(a, b, scoring.Timed)
	}
	return final, err
}

// TakeProposal makes the score that a team sent that of its game.
type TakeProposal struct {
	Game GameID
	By   scoring.Team
}

func (c TakeProposal) decide(l *Ledger, _ Env) ([]Event, error) {
	n, _, err := runningGame(l, c.Game)
	if err != nil {
		return nil, err
	}
	for _, p := range n.ProposalsOf(c.Game) {
		if p.By == c.By {
			return []Event{GameFinished{c.Game, p.Final}, ProposalTaken(c)}, nil
		}
	}
	return nil, errNoProposal
}

var errNoProposal = errors.New("no score waits for that game any more")

// RefuseProposals drops the scores that were sent for a game. Others can be sent.
type RefuseProposals struct{ Game GameID }

func (c RefuseProposals) decide(l *Ledger, _ Env) ([]Event, error) {
	n, _, err := runningGame(l, c.Game)
	if err != nil {
		return nil, err
	}
	if len(n.ProposalsOf(c.Game)) == 0 {
		return nil, errNoProposal
	}
	return []Event{ProposalsRefused(c)}, nil
}
