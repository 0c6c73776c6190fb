package scoring

// endChange follows the change of ends within a game.
type endChange struct {
	at   int  // the score at which ends change, 0 when they do not any more
	now  bool // the last rally reached it
	done bool
}

// EndsAt is the score at which the sides change ends within a game: 6 in a game to 11, 8 to 15, 11 to
// 21 (2026: 21.B), half of the target rounded up in any other. In a match of several games only the
// deciding game has it.
func (r Rules) EndsAt() int { return (r.To + 1) / 2 }

func newEndChange(r Rules) endChange {
	at := r.EndsAt()
	if r.BestOf > 1 || max(r.StartA, r.StartB) >= at || at >= r.To {
		return endChange{}
	}
	return endChange{at: at}
}

// reached notes that a side has come to points.
func (e *endChange) reached(points int) {
	if points == e.at && !e.done {
		e.now, e.done = true, true
	}
}

// EndsChange reports whether the sides change ends before the next serve. The same player goes on
// serving, from the same box.
func (s State) EndsChange() bool { return s.ends.now }
