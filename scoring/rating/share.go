package rating

// Share is what a team had of the result of a game, between 0 and 1, for [Model.Update]: its points, those of
// the other team, and the target of the game.
//
// Without [Model.HalfMargin] it is 1 for more points, 0 for fewer, 1/2 for as many. With it, half of it is that
// and half is 1/2 + margin/(2·target), at most 1 and at least 0: 11-0 is a whole win, 11-9 is 0.795 of one.
// Weng and Lin know no margins. In our simulations the half margin finds the order of a club sooner.
func (m Model) Share(own, other, target int) float64 {
	win := 0.5
	switch {
	case own > other:
		win = 1
	case own < other:
		win = 0
	}
	return m.Settled(win, own, other, target)
}

// Settled is [Model.Share] where the score does not tell who won, as when the leader retires: win is 1, 1/2 or 0.
func (m Model) Settled(win float64, own, other, target int) float64 {
	if !m.HalfMargin || target < 1 {
		return win
	}
	margin := 0.5 + float64(own-other)/float64(2*target)
	return (win + min(max(margin, 0), 1)) / 2
}
