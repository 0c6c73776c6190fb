package scheduler

// countMeetings enters a game into tallies kept at a·people + b. Seats without a known person count
// for nothing.
func countMeetings(pair []tally, people int, seats [4]Player) {
	for x, i := range seats {
		for y, j := range seats {
			if x == y || i < 0 || j < 0 || int(i) >= people || int(j) >= people {
				continue
			}
			if at := int(i)*people + int(j); x^y == 1 {
				pair[at].p++
			} else {
				pair[at].o++
			}
		}
	}
}
