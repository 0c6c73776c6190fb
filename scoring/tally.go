package scoring

// Tally counts the faults of a game.
type Tally struct {
	Side [2][Other + 1]int    // by side and [Fault]
	Seat [2][2][Other + 1]int // by side, seat index and fault: only those whose player was noted
}

// TallyFaults counts the faults of rallies. A rally without a noted fault counts for nobody.
func TallyFaults(rallies []Rally) Tally {
	var t Tally
	for _, r := range rallies {
		if r.Fault == None || r.Fault > Other {
			continue
		}
		loser := r.Won.Other()
		t.Side[loser][r.Fault]++
		if seat, ok := r.Player(); ok {
			t.Seat[loser][seat.Index][r.Fault]++
		}
	}
	return t
}

// Of is how many faults a team made.
func (t Tally) Of(side Team) int { return sum(t.Side[side]) }

// By is how many faults were noted of a player.
func (t Tally) By(seat Seat) int { return sum(t.Seat[seat.Team][seat.Index]) }

func sum(counts [Other + 1]int) int {
	total := 0
	for _, n := range counts {
		total += n
	}
	return total
}
