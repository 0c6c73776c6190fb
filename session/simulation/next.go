package simulation

import (
	"slices"
	"time"

	"club/quadrille/session"
)

// happening is what happens next, and when.
type happening struct {
	at      time.Time
	command session.Command
}

// script is all that is settled about a night before it begins. What changes is in the ledger.
type script struct {
	night    Night
	settings session.Settings
	visits   map[string]visit // by name
	levels   map[string]float64
}

func newScript(n Night) *script {
	s := &script{night: n, settings: n.settings(), visits: map[string]visit{}, levels: map[string]float64{}}
	for i, v := range n.visits() {
		name := n.People[i].Name
		s.visits[name] = v
		s.levels[name] = n.People[i].Level
		if s.levels[name] == 0 {
			s.levels[name] = unstated
		}
	}
	return s
}

// next is the first thing to happen after the state of l; false once the night is closed.
func (s *script) next(l *session.Ledger) (happening, bool, error) {
	n := l.Night()
	switch {
	case n == nil && l.Club().Night() != nil:
		return happening{}, false, nil
	case n == nil:
		return happening{opening, session.OpenNight{Name: "Simulated night", Settings: s.settings, Courts: s.night.Courts}}, true, nil
	case len(n.Roll) == 0:
		return happening{opening, session.ImportRoster{Entries: s.night.People}}, true, nil
	}
	first := s.organiser(l, l.Clock())
	for _, h := range s.comings(l.Club(), n) {
		if h.at.Before(first.at) {
			first = h
		}
	}
	for _, g := range n.Running() {
		h, err := s.scoring(l.Club(), n, g)
		if err != nil {
			return happening{}, false, err
		}
		if h.at.Before(first.at) {
			first = h
		}
	}
	return first, true, nil
}

// scoring is what is entered next for a game that goes on: its next rally, or its final score.
func (s *script) scoring(club *session.Club, n *session.Night, g *session.Game) (happening, error) {
	lead, takes := s.lead(club, g), s.night.duration(g.ID)
	court := slices.IndexFunc(n.Courts, func(c session.Court) bool { return c.ID == g.Court })
	if court < s.night.ByRally {
		rallies := s.night.rallies(g.ID, g.Rules, lead)
		played := len(g.Rallies)
		at := g.Called.Add(takes * time.Duration(played+1) / time.Duration(len(rallies)))
		return happening{at, session.ScoreRally{Game: g.ID, Rally: rallies[played]}}, nil
	}
	final, err := s.night.final(g.ID, g.Rules, lead)
	return happening{g.Called.Add(takes), session.FinishGame{Game: g.ID, Final: final}}, err
}

// lead is by how much the levels of team A add up to more than those of team B.
func (s *script) lead(club *session.Club, g *session.Game) float64 {
	sum := func(side session.Team) (sum float64) {
		for _, id := range side {
			if id != "" {
				sum += s.levels[club.Name(id)]
			}
		}
		return sum
	}
	return sum(g.A) - sum(g.B)
}

// comings lists who comes and goes from now on.
func (s *script) comings(club *session.Club, n *session.Night) []happening {
	var out []happening
	for _, a := range n.Roll {
		v := s.visits[club.Name(a.Person)]
		switch {
		case a.State == session.Expected:
			out = append(out, happening{v.comes, session.CheckIn{Person: a.Person}})
		case a.State == session.Here && !v.goes.IsZero():
			out = append(out, happening{v.goes, session.Leave{Person: a.Person}})
		}
	}
	return out
}

// organiser is what the organiser does if nothing else happens first: call, begin or close.
func (s *script) organiser(l *session.Ledger, now time.Time) happening {
	n := l.Night()
	enough := n.Count(session.Here) >= 4
	switch {
	case len(n.Running()) > 0:
		return happening{at: farAway}
	case l.NextStep(latest(s.night.firstCall(), now)).Step == session.StepBegin:
		return happening{latest(s.night.firstCall(), now), session.BeginPlay{}}
	case n.Settings.Flow == session.Rolling:
		return happening{latest(s.settings.Closing, now).Add(time.Minute), session.EndNight{}}
	}
	at := s.nextCall(n, now)
	fits := s.settings.Closing.IsZero() || at.Before(s.settings.Closing)
	switch {
	case enough && fits && len(n.Rounds) < n.Settings.Rounds:
		return happening{at, session.CallRound{}}
	case !enough && fits && n.Count(session.Expected) > 0:
		return happening{at: farAway}
	}
	return happening{at.Add(time.Minute), session.EndNight{}}
}

// nextCall is when the next round can be called.
func (s *script) nextCall(n *session.Night, now time.Time) time.Time {
	at := s.night.firstCall()
	for i := range n.Games {
		at = latest(at, n.Games[i].Finished)
	}
	if len(n.Games) > 0 {
		at = at.Add(s.night.pause(len(n.Rounds)))
	}
	return latest(at, now)
}

// farAway is after everything that can happen.
var farAway = opening.AddDate(1, 0, 0)

func latest(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
