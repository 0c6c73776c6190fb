package drill

import (
	"fmt"
	"math/rand/v2"

	"club/quadrille/scoring"
)

// Question tells a rally and asks what comes next.
type Question struct {
	Level  Level
	Before scoring.State // the serve that was played
	Won    scoring.Team  // who won the rally
}

const (
	// serveWins is the chance of the serving team in a made-up rally, as in a club game.
	serveWins = 0.44
	// attempts is how many games are made up in search of a rally that fits the level. Nearly every game has
	// one; what the rules do not have, as second servers in singles, no number of games will bring,
	// and then any rally is asked about.
	attempts = 20
)

// ask makes up the n-th question of a seed.
func ask(seed uint64, n int, level Level, rules scoring.Rules) Question {
	rng := rand.New(rand.NewPCG(seed, uint64(n)))
	if level == EveryScoring {
		kinds := others(rules)
		rules = kinds[rng.IntN(len(kinds))]
	}
	share := rng.Float64()
	var found, all []Question
	for try := 0; try < attempts && len(found) == 0; try++ {
		s := scoring.Start(rules, scoring.Team(rng.IntN(2)))
		for !s.Done {
			won := s.Serving
			if rng.Float64() >= serveWins {
				won = won.Other()
			}
			q := Question{Level: level, Before: s, Won: won}
			s = q.After()
			all = append(all, q)
			if level.fits(s, share) {
				found = append(found, q)
			}
		}
	}
	if len(found) == 0 {
		found = all
	}
	return found[rng.IntN(len(found))]
}

// After is the state that the question is about.
func (q Question) After() scoring.State { return q.Before.After(scoring.Rally{Won: q.Won}) }

// Text is the question in words. Players are named by their seats.
func (q Question) Text() string {
	s, team := q.Before, scoring.Names{}
	rules := ""
	if q.Level == EveryScoring {
		rules = "Playing " + s.Rules().String() + ". "
	}
	told := fmt.Sprintf("%sThe call was %s, and %v served from the %v box. %s won the rally.",
		rules, s.Call(), s.Server, s.Box, team.Team(s, q.Won))
	if q.Level.asksMore() {
		return told + " What is the next call, who serves, from which box, and is it time to switch ends, game point, or the end of the game?"
	}
	return told + " What is the next call, who serves, and from which box?"
}

// Expected is the right answer.
func (q Question) Expected() Answer {
	s := q.After()
	if s.Done {
		return Answer{Over: true}
	}
	a := Answer{Call: s.Call(), Server: s.Server, Box: s.Box}
	if q.Level.asksMore() {
		a.Ends = s.EndsChange()
		_, a.GamePoint = s.GamePoint()
	}
	return a
}
