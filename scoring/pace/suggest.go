package pace

import (
	"fmt"

	"club/quadrille/scoring"
)

// Wish is what an organiser wants of a night.
type Wish struct {
	Hall    Hall
	People  int
	Games   int     // that everybody gets
	Serve   float64 // chance of the serving team in a rally, 0 for [DefaultServeWins]
	Certain float64 // how sure it must be, 0 for 0.8
}

// Option is one way to play the rest of a night.
type Option struct {
	Rules  scoring.Rules
	Rounds int     // it takes to give everybody the games
	Median float64 // minutes of a game
	Chance float64 // that the rounds are over by closing time
}

// shortest is the least number of minutes for which a time limit is worth the walk to the court.
const shortest = 6

// targets are the points that a club plays to, longest game first.
var targets = []int{21, 15, 11, 9, 7}

// rounds is how many rounds give everybody their games, and an error when no court can be filled.
func (w Wish) rounds(r scoring.Rules) (int, error) {
	if err := w.Hall.Validate(); err != nil {
		return 0, err
	}
	seats := 4
	if r.Singles {
		seats = 2
	}
	courts := min(w.Hall.Courts, w.People/seats)
	if courts < 1 {
		return 0, fmt.Errorf("%d people do not fill a court: it takes %d", w.People, seats)
	}
	if w.Games < 1 {
		return 0, fmt.Errorf("everybody should get at least 1 game, and not %d", w.Games)
	}
	perRound := courts * seats
	return (w.People*w.Games + perRound - 1) / perRound, nil
}

// Suggest is how to play so that everybody gets the wished games by closing time: the options from the
// longest game to the shortest, and the index of the longest one that is certain enough. The clock knows the
// minutes of games under now. The options are the rules as they are, the usual targets below theirs and
// last a time limit. The index is -1 when even the limit would leave no time to play.
func (c Clock) Suggest(w Wish, now scoring.Rules) ([]Option, int, error) {
	rounds, err := w.rounds(now)
	if err != nil {
		return nil, -1, err
	}
	serve, certain := orElse(w.Serve, DefaultServeWins), orElse(w.Certain, 0.8)
	known, err := Distribution(now, serve, serve)
	if err != nil {
		return nil, -1, err
	}
	best := -1
	var options []Option
	for _, r := range shorter(now) {
		game, err := Distribution(r, serve, serve)
		if err != nil {
			return nil, -1, err
		}
		clock := c.For(known, game)
		o := Option{Rules: r, Rounds: rounds, Median: clock.Median(), Chance: clock.FitChance(w.Hall, rounds)}
		if best < 0 && o.Chance >= certain {
			best = len(options)
		}
		options = append(options, o)
	}
	minutes := int((w.Hall.Left+w.Hall.Change)/float64(rounds) - w.Hall.Change)
	if minutes < shortest {
		return options, best, nil
	}
	limited := now
	limited.Minutes = minutes
	options = append(options, Option{Rules: limited, Rounds: rounds, Median: min(c.Median(), float64(minutes)), Chance: 1})
	if best < 0 {
		best = len(options) - 1
	}
	return options, best, nil
}

// shorter is r itself and r to each usual target below its own that its start leaves possible. A cap keeps its
// distance from the target.
func shorter(r scoring.Rules) []scoring.Rules {
	out := []scoring.Rules{r}
	for _, to := range targets {
		if to < r.To && to > max(r.StartA, r.StartB) {
			less := r
			less.To = to
			if r.Cap > 0 {
				less.Cap = to + r.Cap - r.To
			}
			out = append(out, less)
		}
	}
	return out
}

// orElse is x, or the default where x is not set.
func orElse(x, otherwise float64) float64 {
	if x == 0 {
		return otherwise
	}
	return x
}
