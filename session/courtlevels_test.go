package session

import "testing"

// TestACourtIsKeptForLevels: in both flows mostly people of its levels play there, and nobody plays less for it.
func TestACourtIsKeptForLevels(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		share := func(kept bool) float64 {
			d, _, clock := newTestDesk(t)
			s := DefaultSettings(7)
			s.Flow = flow
			must(t, d, OpenNight{Settings: s, Courts: 2})
			for i := range 12 {
				level := 2.5
				if i%2 == 0 {
					level = 4.5
				}
				must(t, d, AddGuest{Name: string(rune('A' + i)), Level: level})
			}
			if kept {
				must(t, d, LevelCourt{Court: "1", Low: 4})
			}
			playCalls(t, d, clock, 8)
			strong, all := 0, 0
			for _, g := range d.Ledger().Night().Games {
				for _, id := range g.Players() {
					if p, _ := d.Ledger().Club().Person(id); g.Court == "1" {
						all++
						if p.Level == 4.5 {
							strong++
						}
					}
				}
			}
			return float64(strong) / float64(all)
		}
		if with, without := share(true), share(false); with < without+0.04 {
			t.Errorf("%s: %.2f of the places on court 1 are those of strong people, and %.2f where nobody asks for it", flow, with, without)
		}
	}
}

// TestLevelsOfACourtAreChosenInWords.
func TestLevelsOfACourtAreChosenInWords(t *testing.T) {
	d, log, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	refused(t, d, LevelCourt{Court: "1"}, "court 1 is for any level already")
	refused(t, d, LevelCourt{Court: "9", Low: 3}, "no court 9")
	refused(t, d, LevelCourt{Court: "1", Low: 4, High: 3}, "the lower one comes first")
	refused(t, d, LevelCourt{Court: "1", Low: 11}, "between 0 and 10")
	key := d.Ledger().DrawKey()
	for _, c := range []struct {
		low, high float64
		words     string
	}{{3.5, 5, "levels 3.5 to 5"}, {4, 0, "levels from 4"}, {0, 3, "levels to 3"}} {
		must(t, d, LevelCourt{"1", c.low, c.high})
		if got := d.Ledger().Newest(); got != "court 1 for "+c.words {
			t.Errorf("told as %q", got)
		}
		if d.Ledger().DrawKey() == key {
			t.Error("the rotation does not depend on it")
		}
		if spec := newDraw(d.Ledger().Club(), d.Ledger().Night(), clock.now).problem.Courts[0]; spec.MinLevel != c.low || spec.MaxLevel != c.high {
			t.Errorf("the court is drawn as %+v", spec)
		}
	}
	would, err := d.Ledger().Without(d.Ledger().Actions()[len(d.Ledger().Actions())-1].ID)
	if err != nil {
		t.Fatal(err)
	}
	if text := WouldBe(d.Ledger().Club(), would); len(text) != 1 || text[0] != "court 1 is for levels from 4" {
		t.Errorf("without it: %q", text)
	}
	must(t, d, Undo{}, LevelCourt{"1", 0, 0})
	checkReplay(t, d, log)
}
