package design

// What it costs when the same two people partner, meet or oppose in both of two rounds. One kind
// outweighs all that is likely of the next in a whole design.
const (
	costPartners  = 1 << 40
	costMeetings  = 1 << 20
	costOpponents = 1
)

// meeting is one time that two people share a table; the meetings of two people form a chain.
type meeting struct {
	round    int
	partners bool
	earlier  int // index of the meeting before, -1 for none
}

// overlaps weighs every two rounds by what two people do in both of them.
func overlaps(rounds [][]Table) weights {
	w := make(weights, len(rounds))
	for a := range w {
		w[a] = make([]int, len(rounds))
	}
	people := 0
	for _, round := range rounds {
		for _, t := range round {
			people = max(people, t[0]+1, t[1]+1, t[2]+1, t[3]+1)
		}
	}
	latest := make([]int, people*people) // of each two people, 1 + the index of their last meeting
	var meetings []meeting
	for a, round := range rounds {
		for _, t := range round {
			for i := range t {
				for j := range i {
					pair := max(t[i], t[j])*people + min(t[i], t[j])
					now := meeting{a, i/2 == j/2, latest[pair] - 1}
					for k := now.earlier; k >= 0; k = meetings[k].earlier {
						cost, b := now.repeats(meetings[k]), meetings[k].round
						w[a][b] += cost
						w[b][a] += cost
					}
					meetings = append(meetings, now)
					latest[pair] = len(meetings)
				}
			}
		}
	}
	return w
}

// repeats is the cost of two meetings of the same two people.
func (m meeting) repeats(other meeting) int {
	switch {
	case m.partners && other.partners:
		return costPartners + costMeetings
	case !m.partners && !other.partners:
		return costMeetings + costOpponents
	}
	return costMeetings
}
