// Command starters finds the stored starters of the design catalogue again, or others like them:
//
//	go run ./scheduler/design/cmd/starters                   lists the starters and their symmetries
//	go run ./scheduler/design/cmd/starters -people 57        searches one and prints its base rounds
//	go run ./scheduler/design/cmd/starters -matrix 24        searches two rows of a difference matrix
//	go run ./scheduler/design/cmd/starters -wheel 45,10,15   searches a wheel for 45 people, 10 tables, 15 rounds
//
// The search is simulated annealing over one person of each orbit under the starter's turn. The
// same seed finds the same starter on every machine. Most take seconds; 32 people, 18 couples and a
// matrix of order 24 need -moves 4000000 or more, 72 and 84 people -moves 10000000. Where no turn
// shortens the search, 33 and 44 people take many minutes, and 77 people and 15 couples, which
// backtracking found, are out of its reach.
//
// A wheel is a night's plan that turns into itself; annealing looks for its base rounds, and the best
// is printed as wheels.txt has it. The search ends when no more meetings repeat than -meetings, or
// than must. A try anneals each shape of wheel that fits the night six times, and so a search that finds
// no end takes -tries times six times -moves moves for each of perhaps twenty shapes, which is many
// minutes: say -meetings where fewer are known to be out of reach. Most of the stored wheels are found
// within seconds.
package main

import (
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"

	"club/quadrille/scheduler/design"
)

func main() {
	var o options
	flag.IntVar(&o.people, "people", 0, "search the starters for this number of people; 0 lists all")
	flag.IntVar(&o.matrix, "matrix", 0, "search a difference matrix of this order instead")
	flag.StringVar(&o.wheel, "wheel", "", "search a wheel for PEOPLE,TABLES,ROUNDS instead")
	flag.IntVar(&o.meetings, "meetings", 0, "repeated meetings, Σ C(m,2) over pairs who meet m times, that are few enough for a wheel")
	flag.Uint64Var(&o.seed, "seed", 1, "seed of the first try; each further try takes the next")
	flag.IntVar(&o.tries, "tries", 40, "give up after this many tries")
	flag.IntVar(&o.moves, "moves", 2_000_000, "moves of one annealing")
	flag.Parse()
	if err := o.run(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "starters:", err)
		os.Exit(1)
	}
}

// options says what to search and how long.
type options struct {
	people, matrix, tries, moves int
	wheel                        string // PEOPLE,TABLES,ROUNDS
	meetings                     int
	seed                         uint64
}

// run lists or searches, and fails if a search finds nothing.
func (o options) run(out io.Writer) error {
	if o.matrix > 0 {
		return o.searchMatrix(out)
	}
	if o.wheel != "" {
		return o.searchWheel(out)
	}
	for _, s := range design.Starters() {
		switch {
		case o.people == 0:
			fmt.Fprintf(out, "%-6s %3d people, ring of %2d, %d layers, %2d fixed, turn of order %d, %d base rounds\n",
				s.Kind, s.People, s.Group.Ring.N(), s.Group.Layers, s.Group.Fixed, s.Group.Order(), len(s.Bases))
		case o.people == s.People:
			if err := o.search(s, out); err != nil {
				return err
			}
		}
	}
	if o.people == 0 {
		listWheels(out)
	}
	return nil
}

// listWheels prints a line for each stored wheel.
func listWheels(out io.Writer) {
	for _, s := range design.Wheels() {
		fmt.Fprintf(out, "wheel  %3d people, %2d tables, %2d rounds, turn of order %2d, %d base rounds, %d meetings repeat, circles of %d\n",
			s.People, s.Tables, s.Rounds, s.Order, len(s.Bases), s.Meetings, s.Circles)
	}
}

// search prints the first starter that a try finds.
func (o options) search(s design.Starter, out io.Writer) error {
	order := float64(s.Group.Order())
	least := 0
	for try := range o.tries {
		seed := o.seed + uint64(try)
		rng := rand.New(rand.NewPCG(seed, 0))
		p := newPuzzle(s, rng)
		if anneal(p, rng, o.moves, 8*order*order, order*order) {
			fmt.Fprintf(out, "%s %d, seed %d: %v\n", s.Kind, s.People, seed, p.rounds())
			return nil
		}
		if try == 0 || p.cost < least {
			least = p.cost
		}
	}
	return fmt.Errorf("no %s starter for %d people in %d tries (least cost %d); try more moves or another seed",
		s.Kind, s.People, o.tries, least)
}
