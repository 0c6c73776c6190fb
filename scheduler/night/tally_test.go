package night

import "testing"

// TestCountMeetings: partners and opponents are told apart, both ways round, and whoever is not known counts for nothing.
func TestCountMeetings(t *testing.T) {
	const people = 4
	pair := make([]Tally, people*people)
	CountMeetings(pair, people, [4]Player{0, 1, 2, 3})
	CountMeetings(pair, people, [4]Player{0, 1, 2, 7})      // 7 is gone
	CountMeetings(pair, people, [4]Player{3, Nobody, 0, 9}) // 3 alone against 0
	for _, c := range []struct {
		a, b Player
		want Tally
	}{{0, 1, Tally{2, 0}}, {2, 3, Tally{1, 0}}, {0, 2, Tally{0, 2}}, {1, 2, Tally{0, 2}}, {0, 3, Tally{0, 2}}, {1, 3, Tally{0, 1}}, {2, 2, Tally{}}} {
		if got, back := pair[int(c.a)*people+int(c.b)], pair[int(c.b)*people+int(c.a)]; got != c.want || back != c.want {
			t.Errorf("%d and %d: %v and %v, want %v", c.a, c.b, got, back, c.want)
		}
	}
}
