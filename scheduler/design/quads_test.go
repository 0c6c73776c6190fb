package design

import "testing"

func TestNobodyMeetsTwice(t *testing.T) {
	for people := 4; people <= 100; people += 4 {
		rounds, ok := Quads(people)
		if !ok {
			t.Errorf("no rounds for %d people", people)
		}
		if err := CheckQuads(people, rounds); err != nil {
			t.Errorf("%d people: %v", people, err)
		}
		t.Log(people, len(rounds), (people-1)/3)
	}
}

func TestSpouses(t *testing.T) {
	for n := 4; n <= 20; n++ {
		rounds, ok := SpouseAvoiding(n)
		t.Log(n, len(rounds), ok)
		if !ok {
			continue
		}
		if err := CheckSpouseAvoiding(n, rounds); err != nil {
			t.Errorf("%d couples: %v", n, err)
		}
	}
}
