package forecast

import (
	"math"
	"math/rand/v2"
	"slices"

	"club/quadrille/scoring/pace"
	"club/quadrille/session"
)

// evening is one night as chance has it.
type evening struct {
	games  int     // over by closing time
	rounds int     // over by closing time, in rounds
	end    float64 // minutes from the first call to the last score of these
}

// player plays a hall over and over.
type player struct {
	hall  Hall
	habit Habit
	dice  *rand.Rand
}

// visits are when those come who are late, and when those go who leave early, in minutes.
func (p player) visits() (come, gone []float64) {
	share := func(from, to float64) float64 {
		return (from + (to-from)*p.dice.Float64()) * float64(p.hall.Minutes)
	}
	for range p.hall.Late {
		come = append(come, share(0.1, 0.4))
	}
	for range p.hall.Leave {
		gone = append(gone, share(0.5, 0.85))
	}
	slices.Sort(come)
	return come, gone
}

// present is how many people are there at a moment.
func (p player) present(come, gone []float64, at float64) int {
	here := p.hall.People
	for _, t := range come {
		if t > at {
			here--
		}
	}
	for _, t := range gone {
		if t <= at {
			here--
		}
	}
	return here
}

// game draws how long games take tonight: one mean and one spread for the night, of which the habit knows
// so much, and then every game by itself.
func (p player) game() func() float64 {
	c := p.habit.Clock
	precision := gamma(p.dice, c.Alpha) / c.Beta
	sigma := 1 / math.Sqrt(precision)
	mu := c.M + p.dice.NormFloat64()*sigma/math.Sqrt(c.Kappa)
	limit := math.Inf(1)
	if p.hall.Rules.Minutes > 0 {
		limit = float64(p.hall.Rules.Minutes)
	}
	return func() float64 { return min(limit, math.Exp(mu+sigma*p.dice.NormFloat64())) }
}

// play plays the night in its flow.
func (p player) play() evening {
	if p.hall.Flow == session.Rolling {
		return p.rolling()
	}
	return p.inRounds()
}

// inRounds plays a night whose rounds are called until closing time. What counts is what is over by then.
func (p player) inRounds() (e evening) {
	come, gone := p.visits()
	game := p.game()
	closing := float64(p.hall.Minutes)
	for at := 0.0; at < closing; {
		courts := min(p.hall.Courts, p.present(come, gone, at)/p.hall.Seats())
		longest := 0.0
		for range courts {
			minutes := game()
			longest = max(longest, minutes)
			if at+minutes <= closing {
				e.games++
				e.end = max(e.end, at+minutes)
			}
		}
		if courts == 0 {
			longest = 1 // somebody has to come first
		} else if at+longest <= closing {
			e.rounds++
		}
		at += longest + p.habit.Change
	}
	return e
}

// rolling plays a night whose courts are called as they free, while a game is over by closing time with the
// chance that the desk asks for.
func (p player) rolling() (e evening) {
	come, gone := p.visits()
	game := p.game()
	closing := float64(p.hall.Minutes)
	known := p.habit.Desk
	free := make([]float64, p.hall.Courts)  // when each court is free, or looked at again
	began := make([]float64, p.hall.Courts) // its game; -1 while it has none
	for i := range began {
		began[i] = -1
	}
	for {
		court, at := 0, math.Inf(1)
		for i, t := range free {
			if t < at {
				court, at = i, t
			}
		}
		if at >= closing {
			return e
		}
		if took := at - began[court]; began[court] >= 0 && (p.hall.Rules.Minutes == 0 || took < float64(p.hall.Rules.Minutes)) {
			known = known.After(took)
		}
		began[court] = -1
		busy := 0
		for _, b := range began {
			if b >= 0 {
				busy++
			}
		}
		switch here := p.present(come, gone, at); {
		case !p.inTime(known, closing-at):
			free[court] = math.Inf(1)
		case here < (busy+1)*p.hall.Seats():
			free[court] = at + 1 // too few: somebody has to come, or another court to end
		default:
			minutes := game()
			began[court], free[court] = at, at+minutes
			e.games++
			e.end = max(e.end, at+minutes)
		}
	}
}

// inTime tells whether the desk would still call a court with so many minutes left.
func (p player) inTime(known pace.Clock, left float64) bool {
	if limit := p.hall.Rules.Minutes; limit > 0 && left >= float64(limit) {
		return true
	}
	return known.Chance(left) >= session.LikelyOver
}

// gamma draws from the gamma distribution of that shape, 1 or more, and scale 1: G. Marsaglia, W. W. Tsang, A
// simple method for generating gamma variables, ACM Transactions on Mathematical Software 26 (2000).
func gamma(dice *rand.Rand, shape float64) float64 {
	d := shape - 1.0/3
	c := 1 / math.Sqrt(9*d)
	for {
		x := dice.NormFloat64()
		v := 1 + c*x
		if v <= 0 {
			continue
		}
		v = v * v * v
		if math.Log(1-dice.Float64()) < x*x/2+d-d*v+d*math.Log(v) {
			return d * v
		}
	}
}
