package session

import (
	"slices"
	"testing"
)

func TestDifferencesAreOfPeopleWhomBothKnow(t *testing.T) {
	ours := &Club{People: []Person{{ID: "1", Name: "Anna", Level: 3.5}, {ID: "2", Name: "Ben", Group: "x"}, {ID: "3", Name: "Cora"}}}
	theirs := &Club{People: []Person{{ID: "2", Name: "Benno", Group: "x", Level: 4}, {ID: "1", Name: "Anna", Level: 3.5}, {ID: "4", Name: "Di"}}}
	got := Differences(ours, theirs)
	want := []string{"Ben: called Ben here, Benno there; level none here, 4 there"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	if again := Differences(ours, ours); len(again) > 0 {
		t.Errorf("a club differs from itself: %q", again)
	}
}
