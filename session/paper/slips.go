package paper

import "fmt"

// usualTo is how many points a game is taken to have room for where the rotation does not say how it is scored.
const usualTo = 11

// overtime is how many points more than the target a slip has room for, since a lead of two may take longer.
const overtime = 4

// Slips has a slip for each game that is not over yet, to cut: who plays, a box for the score of each team, and points
// to cross off rally by rally.
func Slips(n Night) Sheet {
	s := Sheet{Title: n.Title, Beside: 2}
	points := n.Rules.To + overtime
	if n.Rules.To == 0 {
		points = usualTo + overtime
	}
	for _, r := range n.Rounds {
		for _, g := range r.Games {
			if g.Played {
				continue
			}
			b := Block{Heading: "Court " + g.Court, Cut: true}
			if r.Number > 0 {
				b.Heading = fmt.Sprintf("Round %d, court %s", r.Number, g.Court)
			}
			if terms := n.terms(); terms != "" {
				b.Lines = append(b.Lines, terms)
			}
			if b.Code = n.Pages[g.Court]; b.Code != "" {
				b.Lines = append(b.Lines, "A phone in the Wi-Fi of the desk sends the score by this court's page.")
			}
			for _, team := range [][]string{g.A, g.B} {
				b.Tallies = append(b.Tallies, Tally{Team(team), points})
			}
			s.Blocks = append(s.Blocks, b)
		}
	}
	if len(s.Blocks) == 0 {
		s.Under = append(s.Under, "No game waits for its score.")
	}
	return s
}
