package scoring

// Names are the players' names by side and seat index. An empty name stands for the seat itself, so
// that the zero value names players A1, A2, B1 and B2.
type Names [2][2]string

// Player is the name of one player.
func (n Names) Player(seat Seat) string {
	if name := n[seat.Team][seat.Index]; name != "" {
		return name
	}
	return seat.String()
}

// Team is the name of a team in the game of s: its player in singles, else both partners, or "Team A"
// when neither has a name.
func (n Names) Team(s State, side Team) string {
	first, second := n[side][0], n[side][1]
	switch {
	case s.rules.Singles:
		return n.Player(Seat{Team: side})
	case first == "" && second == "":
		return "Team " + side.String()
	}
	return n.Player(Seat{side, 0}) + " and " + n.Player(Seat{side, 1})
}
