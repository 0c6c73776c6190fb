package pace_test

import (
	"fmt"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

func ExampleDistribution() {
	g, err := pace.Distribution(scoring.Rules{To: 11, WinBy: 2}, pace.DefaultServeWins, pace.DefaultServeWins)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f rallies, eight games of ten have %d to %d\n", g.Mean, g.Quantile(0.1), g.Quantile(0.9))
	fmt.Printf("the likeliest score is %v, with %.1f %%\n", g.Outcomes[0].Score, 100*g.Outcomes[0].P)
	// Output:
	// 40.2 rallies, eight games of ten have 27 to 54
	// the likeliest score is 11-9, with 6.7 %
}

func ExampleClock_Rounds() {
	clock, err := pace.NewClock(15)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, minutes := range []float64{12, 17, 13, 14.5, 11, 16} {
		clock = clock.After(minutes)
	}
	hall := pace.Hall{Courts: 4, Change: 3, Left: 120}
	fmt.Println(clock.Rounds(hall, 0.5), "rounds probably,", clock.Rounds(hall, 0.95), "nearly surely")
	// Output: 5 rounds probably, 4 nearly surely
}
