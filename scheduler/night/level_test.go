package night

import (
	"slices"
	"testing"
)

// TestWidestGap: teams may differ by so many tenths that the stronger one wins with the limit's chance at most.
func TestWidestGap(t *testing.T) {
	for limit, want := range map[float64]int{0.5: 0, 0.51: 0, 0.6: 3, 0.75: 9, 0.9: 19} { // 2·log10(p/(1-p)) levels
		if got := widestGap(limit); got != want {
			t.Errorf("limit %g: %d tenths, want %d", limit, got, want)
		}
	}
	if got := widestGap(1); got != 1000 {
		t.Errorf("no limit: %d", got)
	}
}

// TestFreeNights: anybody may play in anybody's stead unless somebody has a partner, a wall or a limit of games running.
func TestFreeNights(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Problem)
		want   bool
	}{
		"plain":   {func(*Problem) {}, true},
		"wishes":  {func(p *Problem) { p.NeverMeet = []Pair{{A: 0, B: 1}} }, true},
		"couple":  {func(p *Problem) { p.Together = []Pair{{A: 0, B: 1}} }, false},
		"walls":   {func(p *Problem) { p.People[0].Courts = []Court{1} }, false},
		"run":     {func(p *Problem) { p.MaxRun = 2 }, false},
		"no wall": {func(p *Problem) { p.People[0].Courts = []Court{0, 1} }, true},
	} {
		p := Problem{People: make([]Person, 9), Courts: make([]CourtSpec, 2), Rounds: 3}
		c.change(&p)
		if got := New(&p).Free(); got != c.want {
			t.Errorf("%s: free %v", name, got)
		}
	}
}

// TestLevelsOfWhoStatesNone: they have the mean of the others; where nobody states one there are none.
func TestLevelsOfWhoStatesNone(t *testing.T) {
	p := Problem{People: []Person{{Level: 3}, {}, {Level: 4.5}, {Level: 3.54}}, Courts: make([]CourtSpec, 1), Rounds: 1}
	if got := New(&p).Levels(); !slices.Equal(got, []int{30, 37, 45, 35}) {
		t.Errorf("levels %v", got)
	}
	p.People = make([]Person, 4)
	if got := New(&p).Levels(); got != nil {
		t.Errorf("levels %v of nobody", got)
	}
}
