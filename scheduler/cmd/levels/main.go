// Command levels plans nights of people of levels from 2.5 to 4.5 in the three steps of leveling, and prints what even
// games cost in meetings, beside the same night of people without levels.
//
//	go run ./scheduler/cmd/levels
package main

import (
	"context"
	"flag"
	"fmt"
	"os"

	"club/quadrille/scheduler"
)

func main() {
	moves := flag.Int("moves", 0, "the `budget` of a plan; 0 = the usual")
	flag.Parse()
	fmt.Println("night      step    sure winner of  team gap  within a court  meetings  without levels  partner repeats")
	for _, c := range [][3]int{{16, 4, 8}, {16, 4, 10}, {20, 5, 8}, {24, 6, 8}, {18, 4, 9}, {28, 5, 8}, {16, 2, 8}} {
		p := scheduler.Problem{
			People: make([]scheduler.Person, c[0]), Courts: make([]scheduler.CourtSpec, c[1]), Rounds: c[2], Seed: 1,
		}
		without := judged(p, *moves)
		for i := range p.People {
			p.People[i].Level = 2.5 + 2*float64(i)/float64(c[0]-1)
		}
		for _, step := range scheduler.Levelings() {
			p.Leveling = step
			k := judged(p, *moves)
			fmt.Printf("%-10s %-7s %6d of %-6d %8.2f %15.2f %9d %15d %16d\n", fmt.Sprintf("%d/%d/%d", c[0], c[1], c[2]), step, k.Levels.Onesided, k.Levels.Games,
				float64(k.Levels.TeamGap)/10/float64(k.Levels.Games), float64(k.Levels.Spread)/10/float64(k.Levels.Games),
				k.MeetingEvenness.Value, without.MeetingEvenness.Value, k.PartnerRepeats.Value)
		}
	}
}

// judged plans a night and judges the plan.
func judged(p scheduler.Problem, moves int) scheduler.Certificate {
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{Moves: moves})
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	return scheduler.Certify(p, rounds)
}
