package session

// takenBack finds, in the nights in which it was taken back that two people are one, what does not stand in the end:
// what was undone, and the undos themselves. There nothing of it is taken over. The merge may contradict our nights,
// in which both may have played, and what was called while it stood rests on it.
func takenBack(theirs []Record) (map[uint64]bool, error) {
	out := map[uint64]bool{}
	night := NewLedger()
	settle := func() {
		idle := night.idle(night.undone)
		gone := func(e entry) bool { return night.undone[e.action] || idle[e.action] }
		merged := false
		for _, e := range night.tail {
			_, is := e.event.(PeopleMerged)
			merged = merged || is && gone(e)
		}
		for _, e := range night.tail {
			if _, _, undo := toggled(e.event); merged && (undo || gone(e)) {
				out[e.seq] = true
			}
		}
	}
	for _, r := range theirs {
		e, err := night.read(r)
		if err != nil {
			return nil, err
		}
		if _, ok := e.(NightOpened); ok {
			settle()
			night.begin(r.Time)
		}
		night.note(r, e)
	}
	settle()
	return out, nil
}
