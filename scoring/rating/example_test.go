package rating_test

import (
	"fmt"

	"club/quadrille/scoring/rating"
)

func ExampleReplay() {
	m := rating.Default()
	table, err := rating.Replay(m, nil, []rating.Game[string]{
		{A: []string{"Ann", "Art"}, B: []string{"Bea", "Bob"}, Share: m.Share(11, 7, 11)},
		{A: []string{"Ann", "Bea"}, B: []string{"Art", "Bob"}, Share: m.Share(11, 9, 11)},
		{A: []string{"Ann", "Bob"}, B: []string{"Art", "Bea"}, Share: m.Share(5, 11, 11)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range table {
		low, high := p.Interval()
		fmt.Printf("%s %.1f (%.1f to %.1f), comparable %v\n", p.Who, p.Mu, low, high, p.Comparable)
	}
	// Output:
	// Ann 27.0 (11.6 to 42.4), comparable true
	// Art 26.9 (11.5 to 42.4), comparable true
	// Bea 26.8 (11.4 to 42.3), comparable true
	// Bob 19.2 (3.8 to 34.7), comparable true
}
