package session

// NextUndo is the action that an undo takes back: the newest that somebody did and that still stands. Ok is
// false when there is none.
func (l *Ledger) NextUndo() (a Action, ok bool) {
	for end := len(l.tail); end > 0; { // from the end, since keys ask at each press
		begin := end - 1
		for begin > 0 && l.tail[begin-1].action == l.tail[begin].action {
			begin--
		}
		if a := l.actionOf(l.tail[begin:end]); a.IsDone() && !a.Undone {
			return a, true
		}
		end = begin
	}
	return Action{}, false
}

// Weighty tells whether people in the hall have acted on an action: they were called, came in, their score
// was taken, play was held or resumed, or somebody was hurt. Whoever undoes it should know what that takes back.
func (a Action) Weighty() bool {
	return a.has(func(e Event) bool {
		switch e.(type) {
		case RoundCalled, PlayBegun, GameCalled, PersonArrived, GameFinished, ScoreCorrected, PlayHeld, PlayResumed, PersonHurt, PersonCleared:
			return true
		}
		return false
	})
}
