package night

// Shape says how a round to plan is filled: which courts hold games, and how many people there sit
// out.
type Shape struct {
	Courts []Court // one for each game
	Here   int     // people present
}

// Seats is how many people play doubles.
func (s Shape) Seats() int { return 4 * len(s.Courts) }

// Out is how many of those present do not play doubles.
func (s Shape) Out() int { return s.Here - s.Seats() }

// MostGames is how many games the people present in round r can fill on so many courts, by their
// numbers alone.
func (n *Night) MostGames(r, courts int) int {
	here := n.Here[r]
	switch n.Problem.Format {
	case Mixed:
		var count [2]int
		for _, i := range here {
			count[n.Side[i]]++
		}
		return min(courts, count[0]/2, count[1]/2)
	case Pairs:
		whole := 0
		for _, i := range here {
			if n.HasMate(i, r) {
				whole++
			}
		}
		return min(courts, whole/4)
	}
	return min(courts, len(here)/4)
}

// Restful lowers a number of games so that enough people rest for nobody to play more than MaxRun
// games running: of every MaxRun+1 rounds each person must rest in one. With few people that can mean
// rounds in which all rest.
func (n *Night) Restful(r, games int) int {
	if n.Problem.MaxRun <= 0 {
		return games
	}
	k := n.Problem.MaxRun
	return min(games, max(1, len(n.Here[r])*k/(4*(k+1))))
}
