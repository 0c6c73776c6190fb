package simulation

import (
	"math"
	"slices"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// Report is what a night was like. Times are in minutes. Play is what lies between the first call
// and closing time, or the last score in a night without one.
type Report struct {
	Players        int                   `json:"players"` // who came
	Games          int                   `json:"games"`
	Rounds         int                   `json:"rounds"`           // 0 in the rolling flow
	Minutes        float64               `json:"minutes"`          // from the first call to the last score
	IdleCourtShare float64               `json:"idle_court_share"` // court time of play without a game
	WaitMinutes    Waits                 `json:"wait_minutes"`
	GamesPerPlayer Games                 `json:"games_per_player"`
	Certificate    scheduler.Certificate `json:"certificate"`
	Events         int                   `json:"events"` // records of the night
	Queue          *Report               `json:"queue,omitempty"`
}

// Waits is how long people waited during play, from a game or their arrival to their next game. Who was on
// the bench at the last call and did not play again waited in vain, until the last score, closing time or
// going home, whichever came first; that counts as well. Who came off later waited for nothing.
type Waits struct {
	Median float64 `json:"median"`
	P95    float64 `json:"p95"`
	Max    float64 `json:"max"`
	Open   int     `json:"open"` // waits that no call ended
}

// Games is how evenly games were spread. Jain is Jain's index of games per time present,
// (Σx)²/(n·Σx²), which is 1 when all are equal and 1/n when one has everything (Jain, Chiu, Hawe:
// A quantitative measure of fairness, DEC TR-301, 1984).
type Games struct {
	Min  int     `json:"min"`
	Max  int     `json:"max"`
	Jain float64 `json:"jain"`
}

// measure looks back at the closed night of a ledger.
func measure(l *session.Ledger, log session.Log) (Report, error) {
	club, n := l.Club(), l.Club().Night()
	r := Report{
		Games:       len(n.Games),
		Rounds:      len(n.Rounds),
		Certificate: session.Certify(club, n, n.Closed),
	}
	for record, err := range log.Records(1) {
		if err != nil {
			return r, err
		}
		if record.Night == n.ID {
			r.Events++
		}
	}
	w := playOf(n)
	r.Minutes = decimals(w.last.Sub(w.from).Minutes(), 1)
	r.IdleCourtShare = decimals(w.idle(n), 3)
	r.WaitMinutes = waits(n, w)
	r.Players, r.GamesPerPlayer = shares(n, w)
	return r, nil
}

// window is the time of play.
type window struct{ from, until, last time.Time }

func playOf(n *session.Night) window {
	if len(n.Games) == 0 {
		return window{n.Closed, n.Closed, n.Closed}
	}
	w := window{from: n.Games[0].Called}
	for i := range n.Games {
		w.last = latest(w.last, n.Games[i].Finished)
	}
	w.until = w.last
	if c := n.Settings.Closing; !c.IsZero() {
		w.until = c
	}
	return w
}

// clip is how much of the time between two moments lies in the window.
func (w window) clip(from, to time.Time) time.Duration {
	if to.After(w.until) {
		to = w.until
	}
	return max(0, to.Sub(latest(from, w.from)))
}

// idle is the share of the court time of play that saw no game.
func (w window) idle(n *session.Night) float64 {
	whole := w.until.Sub(w.from) * time.Duration(len(n.Courts))
	if whole <= 0 {
		return 0
	}
	var used time.Duration
	for i := range n.Games {
		used += w.clip(n.Games[i].Called, n.Games[i].Finished)
	}
	return 1 - float64(used)/float64(whole)
}

// waits measures every wait that ended with a call, except for the first call of the night, which
// nobody waited for during play, and every wait that was still open.
func waits(n *session.Night, w window) Waits {
	free := map[session.PersonID]time.Time{}
	for _, a := range n.Roll {
		free[a.Person] = latest(a.Arrived, w.from)
	}
	ended := slices.Clone(n.Games)
	slices.SortStableFunc(ended, func(a, b session.Game) int { return a.Called.Compare(b.Called) })
	var all []float64
	var last time.Time // call
	played := map[session.PersonID]bool{}
	for i := range ended {
		g := &ended[i]
		last = g.Called
		for _, id := range g.Players() {
			if g.Called.After(w.from) {
				all = append(all, g.Called.Sub(free[id]).Minutes())
			}
			free[id], played[id] = g.Finished, true
		}
	}
	closed := len(all)
	for _, a := range n.Roll {
		from := free[a.Person]
		if a.Arrived.IsZero() || from.After(last) || from.Equal(last) && played[a.Person] {
			continue
		}
		if wait := earliest(w.until, w.last, a.Arrived.Add(a.Present)).Sub(from).Minutes(); wait > 0 {
			all = append(all, wait)
		}
	}
	open := len(all) - closed
	slices.Sort(all)
	return Waits{decimals(quantile(all, 0.5), 1), decimals(quantile(all, 0.95), 1), decimals(quantile(all, 1), 1), open}
}

func earliest(times ...time.Time) time.Time { return slices.MinFunc(times, time.Time.Compare) }

// shares counts the people who came and how evenly their games were spread.
func shares(n *session.Night, w window) (int, Games) {
	var games Games
	var sum, squares, counted float64
	people := 0
	for _, a := range n.Roll {
		if a.Arrived.IsZero() {
			continue
		}
		g := n.GamesOf(a.Person)
		if people == 0 || g < games.Min {
			games.Min = g
		}
		games.Max = max(games.Max, g)
		people++
		if there := w.clip(a.Arrived, a.Arrived.Add(a.Present)).Hours(); there > 0 {
			rate := float64(g) / there
			sum += rate
			squares += rate * rate
			counted++
		}
	}
	if squares > 0 {
		games.Jain = decimals(sum*sum/(counted*squares), 4)
	}
	return people, games
}

// quantile is the value of sorted numbers below which a share of them lies; 0 for none.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	at := share * float64(len(sorted)-1)
	low := int(at)
	high := min(low+1, len(sorted)-1)
	return sorted[low] + (at-float64(low))*(sorted[high]-sorted[low])
}

// decimals rounds to a number of decimal places.
func decimals(x float64, places int) float64 {
	scale := math.Pow10(places)
	return math.Round(x*scale) / scale
}
