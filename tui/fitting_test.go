package tui

import (
	"testing"

	"club/quadrille/session"
)

// TestWhatFitsIsAskedBeforeTheNight: the form has what is likely, says what is wrong with it, and asks again with
// what was typed; the page tells games, rounds, other halls, ways to play and the mixing.
func TestWhatFitsIsAskedBeforeTheNight(t *testing.T) {
	s := newStage(t)
	s.press("o", "f").shows("What fits into a night?", "> People", "16")
	s.press("3", "enter").shows("! a court takes 4 people, and 3 are too few").press("ctrl+u").press(letters("22")...)
	s.press("down", "down").press(letters("long")...).press("enter").shows(`! hours: "long" is no time such as 2.5 or 2:30`)
	s.press("ctrl+u").press(letters("2,5")...).press("enter")
	s.shows("22 people on 4 courts for 2:30 h: rounds, side-out to 11", "No games of your club are known yet", "games each", "at least", "last score", "as planned")
	s.press("pgdown").shows("same partner twice", "pairs who never meet").press("home")
	s.press("enter").shows("> People", "22", "2:30").press("esc").resize(200, 60)
	s.press("o", "f", "enter").shows("16 people on 4 courts for 2:00 h", "the longest that gives 5 games", "16       ", "in brackets")
}

// TestTheNightAheadIsLikeTheLast: as many people as came, on its courts, under its rules.
func TestTheNightAheadIsLikeTheLast(t *testing.T) {
	s := called(t, 3, 14)
	s.press("o", "f").shows("People         14", "Courts         3").press("esc")
	s.press("o", "e", "esc")
	if q := s.m.likelyNight(); q.Hall.People != 14 || q.Hall.Courts != 3 || q.Hall.Flow != session.Rounds || q.Hall.Rules != s.night().Settings.Scoring {
		t.Errorf("likely: %+v", q)
	}
}

func TestHoursAreReadAsTheyAreShown(t *testing.T) {
	for text, want := range map[string]int{"2": 120, " 2.5 ": 150, "2,25": 135, "2:30": 150, "0:45": 45, "0.5": 30} {
		got, err := readHours(text)
		if err != nil || got != want {
			t.Errorf("%q is %d min, %v", text, got, err)
		}
		if again, err := readHours(hoursText(got)); err != nil || again != got {
			t.Errorf("%d min are shown as %q and read as %d, %v", got, hoursText(got), again, err)
		}
	}
	for _, text := range []string{"", "two", "2:60", "-1", "2:", "0", "nan", "1:-5", "30"} {
		if got, err := readHours(text); err == nil {
			t.Errorf("%q is %d min", text, got)
		}
	}
}
