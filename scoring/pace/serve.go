package pace

import "club/quadrille/scoring"

// priorRallies is how many counted rallies the default chance is worth.
const priorRallies = 50

// ServeChance is the chance that a serving team wins a rally, from counted rallies: the mean of a Beta
// distribution that starts at [DefaultServeWins] with the weight of 50 rallies. Few rallies move it little.
func ServeChance(won, served int) float64 {
	return (DefaultServeWins*priorRallies + float64(won)) / (priorRallies + float64(served))
}

// CountServes counts the rallies that the serving team won, and all rallies, of a game that was scored
// rally by rally.
func CountServes(r scoring.Rules, first scoring.Team, rallies []scoring.Rally) (won, served int) {
	s := scoring.Start(r, first)
	for _, rl := range rallies {
		if s.Done {
			break
		}
		if rl.Won == s.Serving {
			won++
		}
		served++
		s = s.After(rl)
	}
	return won, served
}
