package scoring_test

import (
	"slices"
	"testing"

	"club/quadrille/scoring"
)

// TestCourse: rallies with what they gave, corrections made, a technical foul as what it took or gave.
func TestCourse(t *testing.T) {
	won := func(team scoring.Team) scoring.Entry {
		return scoring.Entry{Kind: scoring.RallyWon, Rally: scoring.Rally{Won: team}}
	}
	foul := func(team scoring.Team) scoring.Entry {
		return scoring.Entry{Kind: scoring.TechnicalFoul, Team: team}
	}
	const a, b = scoring.A, scoring.B
	for _, c := range []struct {
		name    string
		entries []scoring.Entry
		want    []scoring.Step
	}{
		{"nothing", nil, nil},
		{"side outs", []scoring.Entry{won(a), won(b), won(b), won(a), won(a)}, []scoring.Step{{a, 1}, {b, 0}, {b, 1}, {a, 0}, {a, 0}}},
		{"a foul takes a point", []scoring.Entry{won(a), foul(a)}, []scoring.Step{{a, 1}, {a, -1}}},
		{"a foul gives one", []scoring.Entry{foul(a)}, []scoring.Step{{b, 1}}},
		{"a rally that never was", []scoring.Entry{won(a), won(b), {Kind: scoring.RallyRemoved, At: 1}}, []scoring.Step{{b, 0}}},
		{
			"set right",
			[]scoring.Entry{won(a), {Kind: scoring.SetRight, Setting: scoring.Start(scoring.Rules{To: 11, WinBy: 2}, b).Setting()}, won(b)},
			[]scoring.Step{{a, 1}, {b, 1}},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := scoring.Sheet{Rules: scoring.Rules{To: 11, WinBy: 2}}
			for _, e := range c.entries {
				var err error
				if s, err = s.Add(e); err != nil {
					t.Fatal(err)
				}
			}
			got, err := s.Course()
			if err != nil || !slices.Equal(got, c.want) {
				t.Errorf("the course is %v, %v, want %v", got, err, c.want)
			}
		})
	}
}
