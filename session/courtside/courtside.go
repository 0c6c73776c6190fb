// Package courtside says what the page of one court shows to whoever has its code: the game that goes on there, what
// was sent for it, and a board on which its rallies are tapped. It decides nothing: a score is sent as a
// session.ProposeScore. It is a pure function of the ledger and the time.
package courtside

import (
	"crypto/subtle"
	"strings"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/public"
)

// Hall is what the pages of all courts show at a moment. Its zero value has no page.
type Hall struct{ courts []Court }

// Court is what stands on the page of one court.
type Court struct {
	Code  string // that opens the page
	Night string
	Name  session.CourtID
	Pass  session.Passing // how scores pass
	Held  bool            // play is held

	Game   session.GameID // that goes on, 0 for none
	A, B   string         // the teams of that game, or else of the last one, by the names that the hall sees
	Rules  scoring.Rules
	Timed  bool // the clock may have ended the game
	Sent   []session.Proposal
	Result string // of the last game where none goes on, "" for no such game
}

// Of is the hall of the night that goes on.
func Of(l *session.Ledger, now time.Time) Hall {
	n := l.Night()
	if n == nil || n.CourtScores == nil || !n.CourtScores.On {
		return Hall{}
	}
	called, _ := public.Names(l.Club(), n)
	var h Hall
	for _, c := range n.Courts {
		court := Court{Code: n.CourtCode(c.ID), Night: n.Name, Name: c.ID, Pass: n.CourtScores.Pass, Held: n.Hold != nil}
		switch g, last := n.Game(c.Game), n.LastOn(c.ID); {
		case g != nil:
			court.Game, court.Rules, court.Timed, court.Sent = g.ID, g.Rules, n.OutOfTime(g, now), n.ProposalsOf(g.ID)
			court.A, court.B = team(g.A, called), team(g.B, called)
		case last != nil:
			court.A, court.B, court.Result = team(last.A, called), team(last.B, called), last.Final.String()
		}
		h.courts = append(h.courts, court)
	}
	return h
}

func team(t session.Team, called func(session.PersonID) string) string {
	var names []string
	for _, id := range t {
		if id != "" {
			names = append(names, called(id))
		}
	}
	return strings.Join(names, " & ")
}

// Court is the court of a code. Ok is false for a code of none, which takes as long to find out as one of a court.
func (h Hall) Court(code string) (c Court, ok bool) {
	for i := range h.courts {
		if subtle.ConstantTimeCompare([]byte(h.courts[i].Code), []byte(code)) == 1 {
			c, ok = h.courts[i], true
		}
	}
	return c, ok
}

// Codes are the codes of all courts, by their names.
func (h Hall) Codes() map[session.CourtID]string {
	out := map[session.CourtID]string{}
	for _, c := range h.courts {
		out[c.Name] = c.Code
	}
	return out
}

// Team is a team of the court's game.
func (c Court) Team(t scoring.Team) string {
	if t == scoring.B {
		return c.B
	}
	return c.A
}
