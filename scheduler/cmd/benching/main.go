// Command benching plans nights on which about half of the people sit out, once such that as few as can be sit
// out twice running and once such that this has a price, and prints what each gains and pays.
//
//	go run ./scheduler/cmd/benching                  # the nights of the table in figures.md
//	go run ./scheduler/cmd/benching -grid            # all of 4 to 48 people, up to 16 rounds, that differ
//	go run ./scheduler/cmd/benching 16/2/10 24/3/10  # these
package main

import (
	"context"
	"flag"
	"fmt"
	"os"

	"club/quadrille/scheduler"
)

func main() {
	grid := flag.Bool("grid", false, "all nights of the grid on which the two differ")
	moves := flag.Int("moves", 0, "the `budget` of a plan; 0 = the usual")
	every := flag.Int("every", 1, "each `n`th night of the grid only")
	flag.Parse()
	nights := flag.Args()
	if len(nights) == 0 {
		nights = []string{"16/2/8", "16/2/10", "24/3/10", "23/3/10", "8/1/8", "14/2/8", "18/2/9", "32/4/10", "12/2/8"}
	}
	if *grid {
		nights = all(*every)
	}
	fmt.Println("night     twice running  meetings      strangers     partner repeats  bound: meetings strangers")
	var sum total
	for _, text := range nights {
		var n night
		if _, err := fmt.Sscanf(text, "%d/%d/%d", &n.people, &n.courts, &n.rounds); err != nil {
			fmt.Fprintf(os.Stderr, "%q is no night: write people/courts/rounds, as 16/2/10\n", text)
			os.Exit(2)
		}
		strict, mixed, err := n.both(*moves)
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		sum.add(strict, mixed)
		if !*grid || strict != mixed {
			fmt.Printf("%-9s %s %s %s %s %s\n", text,
				pair(strict.BenchedTwice, mixed.BenchedTwice), pair(strict.MeetingEvenness, mixed.MeetingEvenness),
				pair(strict.Strangers, mixed.Strangers), pair(strict.PartnerRepeats, mixed.PartnerRepeats),
				fmt.Sprintf("%d %d", mixed.MeetingEvenness.Bound, mixed.Strangers.Bound))
		}
	}
	fmt.Print(sum)
}

// night is one point of the grid.
type night struct{ people, courts, rounds int }

// all lists the nights of the grid on which half of the people or nearly so sit out.
func all(every int) (nights []string) {
	number := 0
	for people := 4; people <= 48; people++ {
		for courts := 1; courts <= people/4; courts++ {
			if people < 8*courts-3 || people > 8*courts+3 {
				continue
			}
			for rounds := 1; rounds <= min(people-1, 16); rounds++ {
				if number++; number%every == 0 {
					nights = append(nights, fmt.Sprintf("%d/%d/%d", people, courts, rounds))
				}
			}
		}
	}
	return nights
}

// both plans the night in both ways.
func (n night) both(moves int) (strict, mixed scheduler.Certificate, err error) {
	p := scheduler.Problem{
		People: make([]scheduler.Person, n.people), Courts: make([]scheduler.CourtSpec, n.courts), Rounds: n.rounds, Seed: 1,
	}
	for k, c := range []*scheduler.Certificate{&strict, &mixed} {
		p.Benching = []scheduler.Benching{scheduler.StrictBench, scheduler.MixedBench}[k]
		rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{Moves: moves})
		if err != nil {
			return strict, mixed, err
		}
		*c = scheduler.Certify(p, rounds)
	}
	return strict, mixed, nil
}

func pair(a, b scheduler.Value) string {
	return fmt.Sprintf("%5d → %-5d", a.Value, b.Value)
}

// total adds up nights.
type total struct{ nights, differ, twice, meetings int }

func (t *total) add(strict, mixed scheduler.Certificate) {
	t.nights++
	if strict != mixed {
		t.differ++
	}
	t.twice += mixed.BenchedTwice.Value - strict.BenchedTwice.Value
	t.meetings += mixed.MeetingEvenness.Value - strict.MeetingEvenness.Value
}

// String says the totals in words.
func (t total) String() string {
	return fmt.Sprintf("%d nights, of which %d differ: %+d times twice running, %+d repeated meetings\n", t.nights, t.differ, t.twice, t.meetings)
}
