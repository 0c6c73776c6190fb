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
	fmt.Println("night                          games kept: anew, from the plan   meetings: anew, from the plan     ms")
	var total sums
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
				total.add(compare(c, "", after, comes, *moves))
			}
		}
	}
	fmt.Println(total)
	var bound sums
	for _, kind := range kinds {
		for _, c := range [][3]int{{20, 4, 7}, {22, 5, 8}, {26, 6, 7}} {
			for _, after := range []int{2, 4} {
				for _, comes := range []bool{false, true} {
					bound.add(compare(c, kind, after, comes, *moves))
				}
			}
		}
	}
	fmt.Println(bound)
}

// sums are what all nights come to.
type sums struct {
	nights [3]int // better from the plan, equal, worse
	games  int
	kept   [2]int
}

// add prints a night and counts it.
func (s *sums) add(r row, err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println(r)
	s.games += r.games
	s.kept[0], s.kept[1] = s.kept[0]+r.kept[0], s.kept[1]+r.kept[1]
	switch anew, warm := r.meetings[0], r.meetings[1]; {
	case warm < anew:
		s.nights[0]++
	case warm == anew:
		s.nights[1]++
	default:
		s.nights[2]++
	}
}

func (s sums) String() string {
	return fmt.Sprintf("from the plan: better in %d nights, equal in %d, worse in %d; of %d games %d stay, anew %d",
		s.nights[0], s.nights[1], s.nights[2], s.games, s.kept[1], s.kept[0])
}

// kinds are nights on which not everybody may play in everybody's stead: two couples, four people who play on two
// courts only, teams of two groups, and nobody more than three games running.
var kinds = []string{"couples", "walls", "mixed", "runs"}

// bind makes a problem one of a kind.
func bind(p *scheduler.Problem, kind string) {
	switch kind {
	case "couples":
		p.Together = []scheduler.Pair{{A: 0, B: 1}, {A: 2, B: 3}}
	case "walls":
		for i := range 4 {
			p.People[i].Courts = []scheduler.Court{0, 1}
		}
	case "mixed":
		p.Format = scheduler.Mixed
		for i := range p.People {
			p.People[i].Group = []string{"x", "y"}[i%2]
		}
	case "runs":
		p.MaxRun = 3
	}
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
	return fmt.Sprintf("%-30s %9d, %4d of %-4d %20d, %4d %10d", r.name, r.kept[0], r.kept[1], r.games, r.meetings[0], r.meetings[1], r.took.Milliseconds())
}

// compare lets the last of the people leave after so many rounds, or somebody come then.
func compare(size [3]int, kind string, after int, comes bool, moves int) (row, error) {
	ctx, b := context.Background(), scheduler.Budget{Moves: moves}
	people, courts, rounds := size[0], size[1], size[2]
	p := scheduler.Problem{People: make([]scheduler.Person, people), Courts: make([]scheduler.CourtSpec, courts), Rounds: rounds, Seed: 1}
	bind(&p, kind)
	r := row{name: fmt.Sprintf("%d/%d/%d, %d leaves", people, courts, rounds, after)}
	if comes {
		r.name = fmt.Sprintf("%d/%d/%d, %d comes", people, courts, rounds, after)
	}
	if kind != "" {
		r.name += ", " + kind
	}
	plan, err := scheduler.Plan(ctx, p, b)
	if err != nil {
		return r, err
	}
	p.History, p.Rounds, p.Seed = plan[:after], rounds-after, uint64(1+after)
	if comes {
		p.People = append(p.People, scheduler.Person{Arrive: after, Group: p.People[0].Group})
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
