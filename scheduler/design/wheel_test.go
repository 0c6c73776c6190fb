package design

import (
	"fmt"
	"strings"
	"testing"
)

// TestWheels checks that every stored wheel keeps its promises and notes as many repeated meetings as
// there are.
func TestWheels(t *testing.T) {
	stored := map[[3]int]bool{}
	for _, w := range Wheels() {
		night := [3]int{w.People, w.Tables, w.Rounds}
		if stored[night] {
			t.Errorf("two wheels for %v: the second is never played", night)
		}
		stored[night] = true
		t.Run(fmt.Sprintf("%d-%d-%d", w.People, w.Tables, w.Rounds), func(t *testing.T) {
			plan, ok := Wheel(w.People, w.Tables, w.Rounds)
			if !ok || len(plan) != w.Rounds {
				t.Fatalf("%d rounds, want %d", len(plan), w.Rounds)
			}
			meetings, err := CheckWheel(w.People, w.Tables, plan)
			if err != nil {
				t.Fatal(err)
			}
			if meetings != w.Meetings {
				t.Errorf("Σ C(m,2) is %d, noted as %d", meetings, w.Meetings)
			}
		})
	}
	if _, ok := Wheel(5, 1, 200); ok {
		t.Error("a wheel of a night that has none")
	}
}

// TestWheelsTurn checks what makes a wheel one: the circles fit and come round in Order turns, and
// turned by one step each round becomes the one that is so many base rounds later.
func TestWheelsTurn(t *testing.T) {
	for _, w := range Wheels() {
		t.Run(fmt.Sprintf("%d-%d-%d", w.People, w.Tables, w.Rounds), func(t *testing.T) {
			onCircles := 0
			for _, size := range w.Circles {
				onCircles += size
				if w.Order%size != 0 {
					t.Errorf("a circle of %d people is not back after %d turns", size, w.Order)
				}
			}
			if onCircles > w.People {
				t.Errorf("%d of %d people on circles", onCircles, w.People)
			}
			if w.Order*len(w.Bases) < w.Rounds {
				t.Errorf("%d turns of %d base rounds for %d rounds", w.Order, len(w.Bases), w.Rounds)
			}
			plan := w.Plan()
			for r := len(w.Bases); r < len(plan); r++ {
				for c, before := range plan[r-len(w.Bases)] {
					for seat, p := range before {
						if got, want := plan[r][c][seat], w.turned(p, 1); got != want {
							t.Fatalf("round %d: person %d becomes %d, want %d", r+1, p, got, want)
						}
					}
				}
			}
		})
	}
}

func TestWheelLettersDiffer(t *testing.T) {
	for i, letter := range WheelLetters {
		if first := strings.IndexRune(WheelLetters, letter); first != i {
			t.Errorf("persons %d and %d are both %c", first, i, letter)
		}
	}
}

func TestCheckWheelNamesFaults(t *testing.T) {
	play := func(rounds ...Table) (plan [][]Table) {
		for _, t := range rounds {
			plan = append(plan, []Table{t})
		}
		return plan
	}
	for _, c := range []struct {
		name   string
		people int
		rounds [][]Table
		want   string
	}{
		{"table missing", 4, [][]Table{{}}, "round 1 has 0 tables"},
		{"unfair", 5, play(Table{0, 1, 2, 3}, Table{0, 2, 1, 3}), "plays 0 games and another"},
		{"out twice", 6, play(Table{0, 1, 2, 3}, Table{1, 2, 3, 5}, Table{0, 3, 4, 5}, Table{1, 4, 2, 5}), "sits out twice running"},
		{"partners twice", 5, play(Table{0, 1, 2, 3}, Table{0, 1, 2, 4}), "persons 0 and 1 partner 2 times"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := CheckWheel(c.people, 1, c.rounds)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want one that says %q", err, c.want)
			}
		})
	}
	meetings, err := CheckWheel(9, 1, play(Table{0, 1, 2, 3}, Table{4, 5, 6, 7}))
	if err != nil || meetings != 0 {
		t.Errorf("%d meetings repeat and error %v, though one of nine must sit out twice", meetings, err)
	}
	if meetings, _ := CheckWheel(4, 1, play(Table{0, 1, 2, 3}, Table{0, 2, 1, 3}, Table{0, 3, 1, 2})); meetings != 6*3 {
		t.Errorf("Σ C(m,2) is %d for six pairs who meet three times, not 18", meetings)
	}
}
