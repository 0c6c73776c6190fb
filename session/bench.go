package session

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Picker chooses the next game of the rolling flow.
type Picker func(scheduler.Rolling) (scheduler.Game, error)

// NextGame says who plays next on a court that is free, in the rolling flow. It changes nothing.
func NextGame(club *Club, n *Night, court CourtID, now time.Time) (PlannedGame, error) {
	return pickNext(club, n, court, now, scheduler.Next)
}

func pickNext(club *Club, n *Night, court CourtID, now time.Time, pick Picker) (PlannedGame, error) {
	bench := n.Bench()
	if need := 4; len(bench) < need {
		return PlannedGame{}, fmt.Errorf("%w: %d on the bench", ErrTooFew, len(bench))
	}
	d := newRollingDraw(club, n, now)
	r := scheduler.Rolling{
		People:    d.problem.People,
		Courts:    d.problem.Courts,
		Format:    n.Settings.Format,
		Court:     scheduler.Court(slices.Index(d.courts, court)),
		Together:  d.problem.Together,
		NeverMeet: d.problem.NeverMeet,

		LevelLimit: n.Settings.Balance,

		Seed: n.Settings.Seed + uint64(len(n.Games)),
	}
	r.Played = d.games()
	running := n.Running()
	slices.SortFunc(running, func(a, b *Game) int { return cmp.Compare(a.ID, b.ID) })
	for _, g := range running {
		r.Running = append(r.Running, d.game(g))
	}
	longest := math.Inf(1)
	for _, a := range bench {
		longest = min(longest, now.Sub(a.Waiting).Minutes()) // the bench is in order, whatever the clock says
		r.Waiting = append(r.Waiting, scheduler.Waiting{
			Player:  d.player(a.Person),
			Waited:  longest,
			Present: a.PresentFor(now).Minutes(),
			Games:   n.GamesOf(a.Person),
		})
	}
	g, err := pick(r)
	if err != nil {
		return PlannedGame{}, err
	}
	return d.planned(g), nil
}

// newRollingDraw numbers everybody who has been here, and all courts, without regard to rounds.
func newRollingDraw(club *Club, n *Night, now time.Time) *draw {
	d := &draw{night: n, club: club, now: now}
	d.problem.Format, d.problem.Seed = n.Settings.Format, n.Settings.Seed
	for _, a := range n.Roll {
		if a.Arrived.IsZero() {
			continue
		}
		p, _ := club.Person(a.Person)
		d.people = append(d.people, a.Person)
		d.problem.People = append(d.problem.People, scheduler.Person{Name: p.Name, Group: strings.ToLower(p.Group), Level: p.Level})
	}
	for _, c := range n.Courts {
		d.courts = append(d.courts, c.ID)
		d.problem.Courts = append(d.problem.Courts, scheduler.CourtSpec{Name: string(c.ID)})
	}
	d.problem.Together, d.problem.NeverMeet = d.wishes()
	return d
}

// freeCourts lists the open courts without a game.
func (n *Night) freeCourts() []CourtID {
	var out []CourtID
	for _, c := range n.Courts {
		if c.Open && c.Game == 0 {
			out = append(out, c.ID)
		}
	}
	return out
}

// callFree makes the events that fill every free court from the bench, one after the other, each
// on the state that the one before leaves. It stops without error when the bench is too short.
func callFree(l *Ledger, before []Event, env Env, pick Picker) ([]Event, error) {
	f := &fold{l.club.clone(), l.last + 1}
	for _, e := range before {
		if err := e.apply(f, env.Now); err != nil {
			return nil, err
		}
	}
	n := f.club.OpenNight()
	events := before
	if n == nil || !n.Rolls || n.Hold != nil || n.pastClosing(env.Now) {
		return events, nil
	}
	for _, court := range n.freeCourts() {
		g, err := pickNext(f.club, n, court, env.Now, pick)
		if err != nil {
			break
		}
		e := GameCalled{Game: GameID(len(n.Games) + 1), Court: court, A: g.A, B: g.B, Terms: n.Settings.Terms()}
		if err := e.apply(f, env.Now); err != nil {
			return nil, err
		}
		events = append(events, e)
	}
	return events, nil
}

// pastClosing tells whether games should no longer call themselves.
func (n *Night) pastClosing(now time.Time) bool {
	return !n.Settings.Closing.IsZero() && !now.Before(n.Settings.Closing)
}

// Waited is how long somebody on the bench has waited, to the second.
func (a Attendance) Waited(now time.Time) time.Duration {
	if a.Waiting.IsZero() || now.Before(a.Waiting) {
		return 0
	}
	return now.Sub(a.Waiting).Truncate(time.Second)
}
