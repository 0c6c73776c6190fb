package scoring_test

import (
	"fmt"

	"club/quadrille/scoring"
)

func ExampleFold() {
	rallies, err := scoring.ParseRallies("a b b b a")
	if err != nil {
		fmt.Println(err)
		return
	}
	s := scoring.Fold(scoring.Rules{To: 11, WinBy: 2}, scoring.A, rallies)
	fmt.Println(s.Call(), s.Server, s.Box, s.Receiver)
	fmt.Println(s.Why())
	// Output:
	// 2-1-2 B2 left A1
	// Team B lost the rally on the first serve: no point, and B2 serves second, from the left box where B2 already stands.
}

func ExampleRules_ParseFinal() {
	r := scoring.Rules{To: 11, WinBy: 2}
	for _, text := range []string{"11-7", "9-6 t", "10-5 r a", "w b", "11-10"} {
		f, err := r.ParseFinal(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(f)
	}
	// Output:
	// 11-7
	// 9-6 timed
	// 10-5 retired, B won
	// 0-11 walkover
	// 11-10 does not end a game to 11, win by 2: 12-10 or 11-9 would; if play was stopped there, add timed or retired
}

func ExampleSheet() {
	sheet := scoring.Sheet{Rules: scoring.Rules{To: 11, WinBy: 2}}
	for _, e := range []scoring.Entry{
		{Kind: scoring.RallyWon, Rally: scoring.Rally{Won: scoring.A}},
		{Kind: scoring.RallyWon, Rally: scoring.Rally{Won: scoring.B, Fault: scoring.Net, By: 2}},
		{Kind: scoring.RallyInserted, At: 2, Rally: scoring.Rally{Won: scoring.A}, Note: "nobody typed it"},
	} {
		var err error
		if sheet, err = sheet.Add(e); err != nil {
			fmt.Println(err)
			return
		}
	}
	state, err := sheet.State()
	if err != nil {
		fmt.Println(err)
		return
	}
	rallies, err := sheet.Rallies()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(state.Call(), "after", scoring.FormatRallies(rallies))
	fmt.Println("faults of A2:", scoring.TallyFaults(rallies).By(scoring.Seat{Team: scoring.A, Index: 1}))
	// Output:
	// 0-2-1 after aab
	// faults of A2: 1
}
