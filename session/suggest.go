package session

import (
	"fmt"
	"sync"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// Wish is what an organiser wants of the rest of a night.
type Wish struct {
	Games   int       // that everybody who is here gets tonight, those already played among them
	Closing time.Time // when play ends
}

// Forecast says how a wish can come true.
type Forecast struct {
	Fit     Fit           // how many more rounds fit under the present rules
	Rounds  int           // how many more it takes; in the rolling flow, games on each court
	Options []pace.Option // ways to play them, the longest games first
	Best    int           // the longest one that fits with a chance of 80 %, -1 when none does
}

// Suggest says how to play so that everybody who is here gets the wished games by closing time: as now,
// to fewer points, or by the clock. Games that go on are counted as played, and the rest begins when the
// last of them is probably over.
func (n *Night) Suggest(w Wish, now time.Time) (Forecast, error) {
	if w.Games < 1 {
		return Forecast{}, fmt.Errorf("everybody should get at least 1 game, and not %d", w.Games)
	}
	missing, most, here := n.missing(w.Games)
	courts := min(len(n.OpenCourts()), here/n.seats())
	switch {
	case courts == 0:
		return Forecast{}, fmt.Errorf("%d people are here, and a court takes %d: check more people in", here, n.seats())
	case missing == 0:
		return Forecast{}, fmt.Errorf("everybody has had %d already: wish for more", w.Games)
	}
	rounds := max(most, (missing+courts*n.seats()-1)/(courts*n.seats()))
	left := n.left(w.Closing, now)
	if left <= 0 {
		return Forecast{}, fmt.Errorf("no time is left before %s", w.Closing.In(now.Location()).Format("15:04"))
	}
	hall := pace.Hall{Courts: courts, Change: changeMinutes, Left: left}
	if n.Settings.Flow == Rolling {
		hall.Courts = 1 // no court waits for another
	}
	later := *n
	later.Settings.Closing = w.Closing
	f := Forecast{Rounds: rounds, Best: -1}
	f.Fit, _ = later.Fit(now)
	// The people of as many games as the hall plays at once, each in every round, need just these rounds.
	wish := pace.Wish{Hall: hall, People: hall.Courts * n.seats(), Games: rounds}
	rules := n.Settings.Scoring
	rules.Minutes = 0 // a limit set earlier is no reason for another
	var err error
	f.Options, f.Best, err = n.Clock().Suggest(wish, rules)
	return f, err
}

// seats is how many people play on a court.
func (n *Night) seats() int {
	if n.Settings.Scoring.Singles {
		return 2
	}
	return 4
}

// missing is how many games are missing until everybody who is here has had as many as wished: of all
// together, of the one with the fewest, and of how many people.
func (n *Night) missing(games int) (all, most, here int) {
	for _, a := range n.Roll {
		if a.State != Here {
			continue
		}
		here++
		m := max(0, games-n.GamesOf(a.Person))
		all, most = all+m, max(most, m)
	}
	return all, most, here
}

// left is the minutes until closing time, from when all courts are probably free.
func (n *Night) left(closing, now time.Time) float64 {
	left := closing.Sub(now).Minutes()
	if len(n.Running()) > 0 {
		left -= n.untilOver(n.Clock(), now, 0.5) + changeMinutes
	}
	return left
}

// Take are the settings of the night with one option of a forecast: its rules, its rounds, and slots of
// its length.
func (n *Night) Take(o pace.Option, closing time.Time) Settings {
	s := n.Settings
	s.Scoring, s.Closing = o.Rules, closing.UTC()
	s.Slot = max(3, min(120, int(o.Median+0.5)+changeMinutes))
	if s.Flow == Rounds {
		s.Rounds = max(1, min(60, len(n.Rounds)+o.Rounds))
	}
	return s
}

// lengths are mean numbers of rallies by rules. The distribution of a game is exact and so takes a
// moment to work out; there are few rules in a night, and the clock is asked at every frame.
var lengths sync.Map

// rallies is how many rallies a game under r has on average.
func rallies(r scoring.Rules) float64 {
	r.Minutes = 0
	if mean, ok := lengths.Load(r); ok {
		return mean.(float64)
	}
	mean := 1.0 // rules that are none make games neither longer nor shorter
	if g, err := pace.Distribution(r, pace.DefaultServeWins, pace.DefaultServeWins); err == nil {
		mean = g.Mean
	}
	lengths.Store(r, mean)
	return mean
}

// Like is what a game of some minutes under one set of rules would have taken under another, by the mean
// number of rallies.
func Like(minutes float64, from, to scoring.Rules) float64 {
	if from == to {
		return minutes
	}
	return minutes * rallies(to) / rallies(from)
}

// GamesEach is how many games everybody who is here gets at least when all planned rounds are played,
// 0 when they do not fill a court.
func (n *Night) GamesEach() int {
	here := n.Count(Here)
	courts := min(len(n.OpenCourts()), here/n.seats())
	if courts == 0 {
		return 0
	}
	return n.Settings.Rounds * courts * n.seats() / here
}
