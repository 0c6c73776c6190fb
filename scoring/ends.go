package scoring

import "fmt"

// endChange follows the switch of ends within a game.
type endChange struct {
	at   int  // the score at which the teams switch, 0 when they do not
	now  bool // the last rally reached it
	done bool
}

// EndsAt is the score at which the teams switch ends within a game: 6 in a game to 11, 8 to 15, 11 to
// 21 (2026: 21.B), half of the target rounded up in any other.
func (r Rules) EndsAt() int { return (r.To + 1) / 2 }

func newEndChange(r Rules) endChange {
	at := r.EndsAt()
	if max(r.StartA, r.StartB) >= at || at >= r.To {
		return endChange{}
	}
	return endChange{at: at}
}

// reached notes that a team has come to points.
func (e *endChange) reached(points int) {
	if points == e.at && !e.done {
		e.now, e.done = true, true
	}
}

// EndsChange reports whether the teams switch ends before the next serve. The same player goes on
// serving, from the same box.
func (s State) EndsChange() bool { return s.ends.now }

// EndsWhy is one sentence that says why the teams switch ends before the next serve, and empty when they do
// not.
func (s State) EndsWhy(n Names) string {
	if !s.ends.now {
		return ""
	}
	return fmt.Sprintf("At %s the teams switch ends; %s serves all the same.", counted(s.ends.at, "point", "points"), n.Player(s.Server))
}
