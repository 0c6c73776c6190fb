package measure

import (
	"club/quadrille/scheduler/night"
)

// Levels are how even the games of a night are, of people whose levels are known.
type Levels struct {
	Games    int `json:"games"`    // doubles whose four levels are known
	Onesided int `json:"onesided"` // those with a sure winner
	TeamGap  int `json:"team_gap"` // Σ differences of the teams' levels, in tenths
	Spread   int `json:"spread"`   // Σ differences between the best and the last on a court, in tenths
}

// LevelsOf counts them over games.
func LevelsOf(p *night.Problem, games []night.Game) (l Levels) {
	_, limit := p.Even()
	for _, g := range games {
		known, low, high, gap := 0, 0, 0, 0
		for k, i := range g.Seats() {
			if i < 0 || int(i) >= len(p.People) || p.People[i].Level == 0 {
				continue
			}
			level := int(p.People[i].Level*10 + 0.5)
			if known++; known == 1 {
				low, high = level, level
			}
			low, high = min(low, level), max(high, level)
			gap += level * (1 - k&2)
		}
		if known < 4 {
			continue
		}
		gap = max(gap, -gap)
		l.Games++
		l.TeamGap += gap
		l.Spread += high - low
		l.Onesided += night.One(night.WinChance(float64(gap)/10, 0) > limit)
	}
	return l
}
