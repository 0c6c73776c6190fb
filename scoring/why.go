package scoring

import "fmt"

// Why is one sentence that tells a beginner why the last rally changed what it did. Players are named
// by their seats: A1, B2.
func (s State) Why() string { return s.WhyFor(Names{}) }

// WhyFor is [State.Why] with the players' names.
func (s State) WhyFor(n Names) string {
	switch s.What {
	case Point:
		return s.whyPoint(n)
	case SecondServer:
		return fmt.Sprintf("%s lost the rally on the first serve: no point, and %s serves second, from the %s box where %s already stands.",
			n.Team(s, s.Serving), n.Player(s.Server), s.Box, n.Player(s.Server))
	case ServeOver:
		if s.rules.Scoring == RallyScoring {
			return s.whyTaken(n)
		}
		return s.whySideOut(n)
	case Game:
		return s.whyGame(n)
	case Corrected:
		return fmt.Sprintf("The game was corrected by hand: %s serves from the %s box.", n.Player(s.Server), s.Box)
	case Penalty:
		return s.whyPenalty(n)
	}
	return s.whyStart(n)
}

func (s State) whyStart(n Names) string {
	if s.rules.threeNumbers() {
		return fmt.Sprintf("The team that starts a game has only one server, who is called the second: %s serves from the %s box.",
			n.Player(s.Server), s.Box)
	}
	return fmt.Sprintf("%s serves first, from the %s box because %s.", n.Player(s.Server), s.Box, s.parity("the server's score is"))
}

func (s State) whyPoint(n Names) string {
	if s.rules.Singles {
		return fmt.Sprintf("%s won the rally while serving: a point, and the next serve is from the %s box because %s.",
			n.Player(s.Server), s.Box, s.parity("the server's score is now"))
	}
	return fmt.Sprintf("%s won the rally while serving: a point, the partners change boxes, and %s serves on from the %s box.",
		n.Team(s, s.Serving), n.Player(s.Server), s.Box)
}

// whySideOut explains a serve that goes over without a point.
func (s State) whySideOut(n Names) string {
	loser, server := n.Team(s, s.last.server.Team), n.Player(s.Server)
	switch {
	case s.rules.Singles:
		return fmt.Sprintf("%s lost the rally while serving, so it is a side out with no point: %s serves, from the %s box because %s.",
			loser, server, s.Box, s.parity("the server's score is"))
	case s.last.opening:
		return fmt.Sprintf("%s lost the rally, and the team that starts a game has only one server, so it is a side out: %s, in the right box, serves first.",
			loser, server)
	}
	return fmt.Sprintf("%s lost the rally on the second serve, so it is a side out with no point: %s, in the right box, serves first.",
		loser, server)
}

// whyTaken explains a serve that the receivers won in rally scoring.
func (s State) whyTaken(n Names) string {
	winner, server := n.Team(s, s.Serving), n.Player(s.Server)
	if s.last.withheld {
		return fmt.Sprintf("%s won the rally, but the last point must be won on serve: no point, only the serve, and %s serves from the %s box.",
			winner, server, s.Box)
	}
	if s.rules.Singles {
		return fmt.Sprintf("%s won the rally: a point and the serve, from the %s box because %s.",
			winner, s.Box, s.parity("the new score is"))
	}
	return fmt.Sprintf("%s won the rally: a point and the serve, and %s, who now stands in the right box, serves.", winner, server)
}

func (s State) whyGame(n Names) string {
	own, other := s.Score.Of(s.Winner), s.Score.Of(s.Winner.Other())
	reason := fmt.Sprintf("with a lead of %d or more", s.rules.WinBy)
	switch {
	case own-other < s.rules.WinBy:
		reason = fmt.Sprintf("where any lead wins, for the cap is %d", s.rules.Cap)
	case s.rules.WinBy == 1:
		reason = "first"
	}
	return fmt.Sprintf("%s won the rally and came to %s %s: the game is over, %d-%d.",
		n.Team(s, s.Winner), counted(own, "point", "points"), reason, own, other)
}

func (s State) whyPenalty(n Names) string {
	fouler := n.Team(s, s.Won.Other())
	if s.Done {
		return fmt.Sprintf("A technical foul of %s changed the score, and that ends the game.", fouler)
	}
	return fmt.Sprintf("A technical foul of %s changed the score: everybody moves to the box that the score asks for, and %s serves on from the %s box.",
		fouler, n.Player(s.Server), s.Box)
}

// parity says whether the server's score is even or odd.
func (s State) parity(subject string) string {
	if s.Score.Of(s.Serving)%2 == 0 {
		return subject + " even"
	}
	return subject + " odd"
}
