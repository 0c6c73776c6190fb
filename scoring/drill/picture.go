package drill

import "club/quadrille/scoring"

// Where players are drawn, in columns from their own baseline, and in rows from their left sideline as they face the
// net. A row is two feet.
const (
	outside   = -4 // the server, behind the baseline
	deep      = 3  // who waits for the two bounces near the baseline
	atKitchen = 10 // the receiver's partner, who has nothing to wait for
	leftRow   = 3
	rightRow  = 7
)

// Picture is the court from above, to scale, before the next serve: team A plays on the left. The server stands
// behind the baseline, as in A1>, the receiver in brackets, as in (B1). The picture is 53 columns wide
// and 11 rows high, in plain ASCII.
func Picture(s scoring.State) []string {
	c := newCourt(-outside)
	for _, p := range s.Positions() {
		label, from := " "+p.Seat.String()+" ", deep
		switch {
		case s.Done:
		case p.Seat == s.Server:
			from = outside
			label = p.Seat.String() + "> "
			if p.Seat.Team == scoring.B {
				label = " <" + p.Seat.String()
			}
		case p.Seat == s.Receiver:
			label = "(" + p.Seat.String() + ")"
		case p.Seat.Team != s.Serving:
			from = atKitchen
		}
		row, column := leftRow, from
		if p.Box == scoring.Right {
			row = rightRow
		}
		if p.Seat.Team == scoring.B { // facing the other way
			row, column = leftRow+rightRow-row, Length-from-len(label)+1
		}
		c.text(row, column, label)
	}
	return c.lines()
}
