package night

// Tally counts how often two people were partners and opponents.
type Tally struct{ P, O uint16 }

// CountMeetings enters a game into tallies kept at a·people + b. Seats without a known person count
// for nothing.
func CountMeetings(pair []Tally, people int, seats [4]Player) {
	for x, i := range seats {
		for y, j := range seats {
			if x == y || i < 0 || j < 0 || int(i) >= people || int(j) >= people {
				continue
			}
			if at := int(i)*people + int(j); x^y == 1 {
				pair[at].P++
			} else {
				pair[at].O++
			}
		}
	}
}
