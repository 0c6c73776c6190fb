// Command grid plans every night of a grid of people, courts and rounds, and prints how near the
// plans come to what is provably possible, and how long they take.
//
//	go run ./scheduler/cmd/grid              # 4 to 48 people, up to 16 rounds: some minutes
//	go run ./scheduler/cmd/grid -every 7     # each seventh night of it
//	go run ./scheduler/cmd/grid -mixed       # with the price for sitting out twice running
//	go run ./scheduler/cmd/grid -misses      # also name each night that misses a bound
//	go run ./scheduler/cmd/grid -only FILE   # only the nights that the FILE, what -misses printed, names
//
// Times are the processor's where the system tells them, and otherwise wall clock.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

func main() {
	from := flag.Int("from", 4, "fewest `people`")
	to := flag.Int("to", 48, "most `people`")
	most := flag.Int("rounds", 16, "most `rounds`")
	every := flag.Int("every", 1, "plan each `n`th night only")
	moves := flag.Int("moves", 0, "the `budget` of a plan; 0 = the usual")
	seed := flag.Uint64("seed", 1, "`seed` of the plans")
	mixed := flag.Bool("mixed", false, "sitting out twice running has a price; else it is avoided at any price")
	misses := flag.Bool("misses", false, "name each night that misses a bound")
	only := flag.String("only", "", "plan only the nights named in this `file`, which is what -misses printed")
	flag.Parse()

	named, err := readNights(*only)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println("people  nights  sit-outs  benched  repeats  meetings at bound   value   bound   median ms   max ms")
	var all tally
	number := 0
	for people := *from; people <= *to; people++ {
		var row tally
		for courts := 1; courts <= people/4; courts++ {
			for rounds := 1; rounds <= min(people-1, *most); rounds++ {
				n := night{people, courts, rounds}
				if named != nil && !named[n] {
					continue
				}
				if number++; number%*every != 0 {
					continue
				}
				cert, took, err := n.plan(*seed, *moves, *mixed)
				if err != nil {
					fmt.Fprintln(os.Stderr, err)
					os.Exit(1)
				}
				row.add(cert, took)
				all.add(cert, took)
				if *misses && missed(cert) {
					fmt.Printf("        %v: repeats %s, meetings %s, opponents %s\n", n,
						gap(cert.PartnerRepeats), gap(cert.MeetingEvenness), gap(cert.OpponentEvenness))
				}
			}
		}
		if row.nights > 0 {
			fmt.Printf("%6d %s\n", people, &row)
		}
	}
	fmt.Printf("   all %s\n", &all)
	fmt.Print(all.summary())
}

// night is one point of the grid.
type night struct{ people, courts, rounds int }

func (n night) String() string {
	return fmt.Sprintf("%d people, %d courts, %d rounds", n.people, n.courts, n.rounds)
}

// readNights reads which nights a file names, nil for no file.
func readNights(file string) (map[night]bool, error) {
	if file == "" {
		return nil, nil
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	named := map[night]bool{}
	for line := range strings.Lines(string(text)) {
		var n night
		if _, err := fmt.Sscanf(strings.TrimSpace(line), "%d people, %d courts, %d rounds", &n.people, &n.courts, &n.rounds); err == nil {
			named[n] = true
		}
	}
	if len(named) == 0 {
		return nil, fmt.Errorf("%s names no night; give the file in which you kept what -misses printed", file)
	}
	return named, nil
}

// plan makes a night's rotation and returns its certificate and the time it took.
func (n night) plan(seed uint64, moves int, mixed bool) (scheduler.Certificate, time.Duration, error) {
	p := scheduler.Problem{
		People: make([]scheduler.Person, n.people),
		Courts: make([]scheduler.CourtSpec, n.courts),
		Rounds: n.rounds,
		Seed:   seed,
	}
	if !mixed {
		p.Benching = scheduler.StrictBench
	}
	start := processor()
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{Moves: moves})
	took := processor() - start
	if err != nil {
		return scheduler.Certificate{}, 0, fmt.Errorf("%v: %w", n, err)
	}
	if wrong := scheduler.Audit(p, rounds); len(wrong) > 0 {
		return scheduler.Certificate{}, 0, fmt.Errorf("%v: %s", n, wrong[0].Text)
	}
	return scheduler.Certify(p, rounds), took, nil
}

func missed(c scheduler.Certificate) bool {
	return c.PartnerRepeats.Gap() > 0 || c.MeetingEvenness.Gap() > 0 || c.SitoutSpread.Gap() > 0 || c.BenchedTwice.Gap() > 0
}

func gap(v scheduler.Value) string { return fmt.Sprintf("%d (bound %d)", v.Value, v.Bound) }
