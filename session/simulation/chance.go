package simulation

import (
	"math"
	"math/rand/v2"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
	"club/quadrille/session"
)

// Everything left to chance has a stream of its own, numbered by what it is about. So a game takes
// as long, and somebody comes as late, whatever else happened before.
const (
	streamPeople = iota << 32
	streamVisits
	streamGames
	streamRallies
	streamBreaks
	streamNames
)

func (n Night) dice(stream, number uint64) *rand.Rand {
	return rand.New(rand.NewPCG(n.Seed, stream+number))
}

// How long games take: the logarithm of the minutes is normal, with a median of 14 minutes, and
// two games of three lie between 11 and 18. This is the order of the figures that clubs report for
// side-out doubles to 11, from the call to the score.
const (
	medianGame = 14 * time.Minute
	spreadGame = 0.25
)

// duration is how long a game takes.
func (n Night) duration(id session.GameID) time.Duration {
	z := n.dice(streamGames, uint64(id)).NormFloat64()
	return time.Duration(float64(medianGame) * math.Exp(spreadGame*z)).Truncate(time.Second)
}

// pause is how long people need between a round and the next: to report, to look, to walk.
func (n Night) pause(round int) time.Duration {
	return time.Minute + time.Duration(n.dice(streamBreaks, uint64(round)).IntN(60))*time.Second
}

const (
	// edge is how much a level more on one team adds to the log-odds of a rally. Over a game to 11
	// it comes to the odds of the game that scheduler.WinChance assumes.
	edge = 0.19
	// unstated is the level of people of whom none is known.
	unstated = 3.25
)

// rallies plays a game to its end and tells who won each rally. Lead is by how much the levels of
// team A add up to more than those of team B.
func (n Night) rallies(id session.GameID, rules scoring.Rules, lead float64) []scoring.Rally {
	dice := n.dice(streamRallies, uint64(id))
	var out []scoring.Rally
	for s := scoring.Start(rules, scoring.A); !s.Done; s = s.After(out[len(out)-1]) {
		ahead := lead
		if s.Serving == scoring.B {
			ahead = -lead
		}
		won := s.Serving
		if dice.Float64() >= sigmoid(logit(pace.DefaultServeWins)+edge*ahead) {
			won = s.Serving.Other()
		}
		out = append(out, scoring.Rally{Won: won})
	}
	return out
}

// final is the score that a game comes to.
func (n Night) final(id session.GameID, rules scoring.Rules, lead float64) (scoring.Final, error) {
	s := scoring.Fold(rules, scoring.A, n.rallies(id, rules, lead))
	return rules.Final(s.Score.A, s.Score.B, scoring.Played)
}

func logit(p float64) float64   { return math.Log(p / (1 - p)) }
func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }
