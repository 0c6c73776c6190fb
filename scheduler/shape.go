package scheduler

// shape says how a round to plan is filled: which courts hold games, and how many people there sit
// out.
type shape struct {
	courts []Court // one for each game
	here   int     // people present
}

func (s shape) seats() int { return 4 * len(s.courts) }

// out is how many of those present do not play doubles.
func (s shape) out() int { return s.here - s.seats() }

// mostGames is how many games the people present in round r can fill on so many courts, by their
// numbers alone.
func (n *night) mostGames(r, courts int) int {
	here := n.here[r]
	switch n.p.Format {
	case Mixed:
		var count [2]int
		for _, i := range here {
			count[n.side[i]]++
		}
		return min(courts, count[0]/2, count[1]/2)
	case Pairs:
		whole := 0
		for _, i := range here {
			if n.bound(i, r) {
				whole++
			}
		}
		return min(courts, whole/4)
	}
	return min(courts, len(here)/4)
}

// restful lowers a number of games so that enough people rest for nobody to play more than MaxRun
// games running: of every MaxRun+1 rounds each person must rest in one. With few people that can mean
// rounds in which all rest.
func (n *night) restful(r, games int) int {
	if n.p.MaxRun <= 0 {
		return games
	}
	k := n.p.MaxRun
	return min(games, max(1, len(n.here[r])*k/(4*(k+1))))
}
