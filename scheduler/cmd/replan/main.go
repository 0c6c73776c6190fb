// Command replan plans nights, plays some rounds, lets somebody leave or come, and plans on, once from nothing
// and once from what remains of the plan. It prints how many of the planned games stay, and how good both are.
//
//	go run ./scheduler/cmd/replan
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"time"

	"club/quadrille/scheduler"
)

func main() {
	moves := flag.Int("moves", 0, "the `budget` of a plan; 0 = the usual")
	flag.Parse()
	fmt.Println("night                    games kept: anew, from the plan   meetings: anew, from the plan     ms")
	var sum [3]int
	var kept [2]int
	games := 0
	for _, c := range [][3]int{
		{16, 4, 5},
		{24, 6, 7},
		{18, 4, 9},
		{22, 5, 8},
		{24, 4, 9},
		{30, 5, 8},
		{37, 7, 8},
		{20, 5, 8},
		{32, 8, 8},
		{28, 6, 7},
		{40, 9, 8},
		{26, 6, 8},
	} {
		for _, after := range []int{1, 2, c[2] / 2} {
			for _, comes := range []bool{false, true} {
				r, err := compare(c, after, comes, *moves)
				if err != nil {
					fmt.Fprintln(os.Stderr, err)
					os.Exit(1)
				}
				fmt.Println(r)
				games += r.games
				kept[0], kept[1] = kept[0]+r.kept[0], kept[1]+r.kept[1]
				switch anew, warm := r.meetings[0], r.meetings[1]; {
				case warm < anew:
					sum[0]++
				case warm == anew:
					sum[1]++
				default:
					sum[2]++
				}
			}
		}
	}
	fmt.Printf("from the plan: better in %d nights, equal in %d, worse in %d; of %d games %d stay, anew %d\n",
		sum[0], sum[1], sum[2], games, kept[1], kept[0])
}

// row is a night that was planned on in both ways: anew, and from the plan.
type row struct {
	name     string
	games    int
	kept     [2]int
	meetings [2]int
	took     time.Duration
}

func (r row) String() string {
	return fmt.Sprintf("%-24s %9d, %4d of %-4d %20d, %4d %10d", r.name, r.kept[0], r.kept[1], r.games, r.meetings[0], r.meetings[1], r.took.Milliseconds())
}

// compare lets the last of the people leave after so many rounds, or somebody come then.
func compare(size [3]int, after int, comes bool, moves int) (row, error) {
	ctx, b := context.Background(), scheduler.Budget{Moves: moves}
	people, courts, rounds := size[0], size[1], size[2]
	p := scheduler.Problem{People: make([]scheduler.Person, people), Courts: make([]scheduler.CourtSpec, courts), Rounds: rounds, Seed: 1}
	r := row{name: fmt.Sprintf("%d/%d/%d, %d leaves", people, courts, rounds, after)}
	if comes {
		r.name = fmt.Sprintf("%d/%d/%d, %d comes", people, courts, rounds, after)
	}
	plan, err := scheduler.Plan(ctx, p, b)
	if err != nil {
		return r, err
	}
	p.History, p.Rounds, p.Seed = plan[:after], rounds-after, uint64(1+after)
	if comes {
		p.People = append(p.People, scheduler.Person{Arrive: after})
	} else {
		p.People[people-1].Leave = after
	}
	shown := plan[after:]
	anew, err := scheduler.Plan(ctx, p, b)
	if err != nil {
		return r, err
	}
	begin := time.Now()
	warm, change, err := scheduler.Replan(ctx, p, shown, b)
	if err != nil {
		return r, err
	}
	r.took = time.Since(begin)
	r.games, r.kept = change.Games, [2]int{scheduler.Changed(shown, anew).Kept, change.Kept}
	for k, rounds := range [][]scheduler.Round{anew, warm} {
		r.meetings[k] = scheduler.Certify(p, rounds).MeetingEvenness.Value
	}
	return r, nil
}
