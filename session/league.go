package session

import (
	"errors"
	"fmt"
	"time"

	"club/quadrille/session/standings"
)

// League adds the tables of the nights of a span up, of the games that it chooses; the best so many nights of each
// person count, 0 for all.
func League(club *Club, best int, s Span) []standings.LeagueRow {
	var nights [][]standings.Row
	for _, n := range club.Nights {
		if !s.has(n) {
			continue
		}
		if rows := Standings(club, s.of(club, n)); len(rows) > 0 {
			nights = append(nights, rows)
		}
	}
	return standings.League(nights, best)
}

// MaxBest is the most nights that can be chosen to count for the league.
const MaxBest = 10_000

// LeagueChosen says how many nights of each person count for the league.
type LeagueChosen struct {
	Best int `json:"best,omitempty"`
}

func (e LeagueChosen) apply(f *fold, _ time.Time) error {
	if err := e.validate(); err != nil {
		return err
	}
	f.club.Best = e.Best
	return nil
}

func (e LeagueChosen) validate() error {
	if e.Best < 0 || e.Best > MaxBest {
		return fmt.Errorf("from 1 to %d nights of each person count, or 0 for all, and not %d", MaxBest, e.Best)
	}
	return nil
}

// words says the choice.
func (e LeagueChosen) words() string {
	if e.Best == 0 {
		return "all nights count for the league"
	}
	return "the best " + Counted(e.Best, "night") + " of each person count for the league"
}

// ChooseLeague says how many nights of each person count for the league, 0 for all.
type ChooseLeague struct{ Best int }

func (c ChooseLeague) decide(l *Ledger, _ Env) ([]Event, error) {
	e := LeagueChosen(c)
	if err := e.validate(); err != nil {
		return nil, err
	}
	if c.Best == l.club.Best {
		return nil, errors.New(e.words() + " already")
	}
	return []Event{e}, nil
}
