package main

import (
	"os"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scheduler/design"
)

// TestFindsWheels searches easy nights. The entry printed must be read back as the plan that the catalogue
// would promise.
func TestFindsWheels(t *testing.T) {
	for _, c := range []struct {
		night string
		most  int // repeated meetings that are few enough
	}{
		{"12,2,6", 12},
		{"25,4,10", 0},
		{"36,6,14", 0},   // one round is left over
		{"9,1,9", 36},    // somebody must sit out twice running
		{"24,6,4", 0},    // nobody sits out
		{"20,4,16", 240}, // the target is not 0, and so no round is left over
	} {
		t.Run(c.night, func(t *testing.T) {
			n, err := parseWheelNight(c.night)
			if err != nil {
				t.Fatal(err)
			}
			o := options{wheel: c.night, meetings: c.most, seed: 1, tries: 4, moves: 200_000}
			best := o.bestWheel(n)
			if !best.found {
				t.Fatal("nothing found")
			}
			s := best.starter
			if got := [3]int{s.People, s.Tables, s.Rounds}; got != [3]int{n.people, n.tables, n.rounds} {
				t.Errorf("a wheel of %d", got)
			}
			plan := s.Plan()
			meetings, err := design.CheckWheel(n.people, n.tables, plan)
			if err != nil || len(plan) != n.rounds || meetings != s.Meetings || meetings > c.most {
				t.Errorf("%d rounds with %d repeated meetings, noted %d, want %d at most: %v", len(plan), meetings, s.Meetings, c.most, err)
			}
			if meetings < n.mustMeet() {
				t.Errorf("%d meetings repeat, fewer than the %d that must", meetings, n.mustMeet())
			}
			var out strings.Builder
			if err := o.run(&out); err != nil || out.String() != s.Text() {
				t.Errorf("the same seed finds another wheel: %s (%v)", out.String(), err)
			}
		})
	}
}

// TestEntriesAreAsStored writes every stored wheel anew and looks for it in the file.
func TestEntriesAreAsStored(t *testing.T) {
	file, err := os.ReadFile("../../wheels.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range design.Wheels() {
		if !strings.Contains(string(file), s.Text()) {
			t.Errorf("wheels.txt does not have\n%s", s.Text())
		}
	}
}

// TestStoredWheelsMeetTheBound checks mustMeet against what is known to be possible.
func TestStoredWheelsMeetTheBound(t *testing.T) {
	reached := 0
	for _, s := range design.Wheels() {
		n := wheelNight{s.People, s.Tables, s.Rounds}
		must := n.mustMeet()
		if s.Meetings < must {
			t.Errorf("%d: %d meetings repeat, though at least %d must", n, s.Meetings, must)
		}
		if s.Meetings == must {
			reached++
		}
	}
	if reached == 0 {
		t.Error("no stored wheel reaches the bound")
	}
}

// TestShapesOfStoredWheels checks that every stored wheel has a shape that is searched.
func TestShapesOfStoredWheels(t *testing.T) {
	for _, s := range design.Wheels() {
		n := wheelNight{s.People, s.Tables, s.Rounds}
		circles := slices.Clone(s.Circles)
		for left := s.People - sum(s.Circles); left > 0; left-- {
			circles = append(circles, 1)
		}
		known := func(shape wheelShape) bool {
			return shape.order == s.Order && shape.bases == len(s.Bases) && slices.Equal(shape.circles, circles)
		}
		if !slices.ContainsFunc(n.shapes(mostLeftOver), known) {
			t.Errorf("%d: no shape of order %d with circles of %d", n, s.Order, circles)
		}
	}
}

func TestShapesAreWheels(t *testing.T) {
	n := wheelNight{27, 5, 12}
	for _, s := range n.shapes(mostLeftOver) {
		if total := s.order * s.bases; total < n.rounds || total > n.rounds+mostLeftOver {
			t.Errorf("%d rounds", total)
		}
		if got := sum(s.circles); got != n.people {
			t.Errorf("%d people on circles of %d", got, s.circles)
		}
		for _, size := range s.circles {
			if s.order%size != 0 {
				t.Errorf("a circle of %d does not come round in %d turns", size, s.order)
			}
		}
	}
	if shapes := n.shapes(0); len(shapes) == 0 || len(shapes) >= len(n.shapes(mostLeftOver)) {
		t.Errorf("%d shapes without a round left over", len(shapes))
	}
}

func sum(numbers []int) (total int) {
	for _, n := range numbers {
		total += n
	}
	return total
}

func TestWheelNightsThatAreNone(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"45", `-wheel "45" is not PEOPLE,TABLES,ROUNDS; give three numbers such as 45,10,15`},
		{"45,10", "is not PEOPLE,TABLES,ROUNDS"},
		{"45,10,15,2", "is not PEOPLE,TABLES,ROUNDS"},
		{"45,10,x", "is not PEOPLE,TABLES,ROUNDS"},
		{"45,10,15 ", "is not PEOPLE,TABLES,ROUNDS"},
		{"99999999999999999999,10,15", "is not PEOPLE,TABLES,ROUNDS"},
		{"45,12,15", "45 people do not fill 12 tables of four; give 1 to 11 tables"},
		{"45,0,15", "give 1 to 11 tables"},
		{"3,0,15", "3 people do not fill a table of four"},
		{"63,10,15", "63 people are more than a wheel has letters for; give 62 at most"},
		{"45,10,1", "a wheel has 2 to 64 rounds, not 1"},
		{"45,10,65", "a wheel has 2 to 64 rounds, not 65"},
		{"8,2,9", "in 9 games somebody must partner one of 7 others twice; give fewer rounds"},
	} {
		t.Run(c.text, func(t *testing.T) {
			err := options{wheel: c.text, tries: 1, moves: 1}.run(&strings.Builder{})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want one that says %q", err, c.want)
			}
		})
	}
}

// TestPrintsTheBestShortOfTheTarget searches a night on which more meetings repeat than the bound says.
func TestPrintsTheBestShortOfTheTarget(t *testing.T) {
	var out strings.Builder
	err := options{wheel: "12,2,6", seed: 1, tries: 1, moves: 5_000}.run(&out)
	if err != nil || !strings.HasPrefix(out.String(), "12 people 2 tables 6 rounds 12 meetings ") {
		t.Errorf("%s (%v)", out.String(), err)
	}
}

func TestWheelSearchThatFailsSaysSo(t *testing.T) {
	err := options{wheel: "45,10,15", seed: 1, tries: 1, moves: 1}.run(&strings.Builder{})
	if err == nil || !strings.Contains(err.Error(), "no wheel for 45 people, 10 tables and 15 rounds in 1 tries") {
		t.Errorf("error %v", err)
	}
}

// FuzzWheelNight checks that whatever is accepted can be searched.
func FuzzWheelNight(f *testing.F) {
	for _, text := range []string{"45,10,15", "4,1,3", "62,1,64", "-4,-1,2", "5,1,5 ", "+9,2,7"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := parseWheelNight(text)
		if err != nil {
			return
		}
		if n.mustMeet() < 0 || n.leastOut() > n.mostOut() || n.mostOut() >= n.rounds && n.tables*8 >= n.people {
			t.Errorf("%q is read as %+v", text, n)
		}
		for _, s := range n.shapes(mostLeftOver) {
			if s.order*s.bases < n.rounds || sum(s.circles) != n.people {
				t.Errorf("%+v has the shape %+v", n, s)
			}
		}
	})
}
