package scoring

import "testing"

// TestSwitchedEnds: teams have changed ends where the sheet says so, and not for other entries.
func TestSwitchedEnds(t *testing.T) {
	s := Sheet{Rules: Rules{To: 11, WinBy: 2}, Entries: []Entry{{Kind: RallyWon, Rally: Rally{Won: A}}}}
	if s.SwitchedEnds() {
		t.Error("a rally changed ends")
	}
	s.Entries = append(s.Entries, Entry{Kind: EndsSwitched}, Entry{Kind: RallyWon, Rally: Rally{Won: B}})
	if !s.SwitchedEnds() || (Sheet{}).SwitchedEnds() {
		t.Error("changed ends are not seen, or seen where nothing was entered")
	}
}

// TestSetRightNamesTheWinner: a score that is set right ends the game for the team whose score it is, and one that
// ends nothing has no winner that a later reader could take for one.
func TestSetRightNamesTheWinner(t *testing.T) {
	start := Start(Rules{To: 11, WinBy: 2}, A)
	for score, want := range map[Score]struct {
		done   bool
		winner Team
	}{{11, 4}: {true, A}, {4, 11}: {true, B}, {10, 10}: {false, A}, {12, 13}: {false, A}, {12, 14}: {true, B}} {
		set := start.Setting()
		set.Score = score
		s, err := start.Set(set)
		if err != nil || s.Done != want.done || s.Winner != want.winner {
			t.Errorf("%v: done %v, winner %v, %v", score, s.Done, s.Winner, err)
			continue
		}
		if set.Score = (Score{3, 4}); want.done {
			if again, err := s.Set(set); err != nil || again.Done || again.Winner != A {
				t.Errorf("%v and then 3-4: done %v, winner %v, %v", score, again.Done, again.Winner, err)
			}
		}
	}
}
