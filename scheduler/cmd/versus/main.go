// Command versus plans the same nights with Quadrille and with a general-purpose constraint solver,
// side by side on this machine, and prints who finds an optimal plan how fast.
//
//	apt-get update && apt-get install --no-install-recommends minizinc    # on Debian, once
//	go run ./scheduler/cmd/versus               # some minutes
//	go run ./scheduler/cmd/versus -limit 10s    # give the solver less time
//	go run ./scheduler/cmd/versus -plan 20/5/5  # only Quadrille's plan, in the solver's form
//
// The solver is MiniZinc with Gecode. It gets every model in models/ that fits a night, and the best
// of them counts. The models are written to be good at it: names that could be swapped are fixed
// beforehand. Each night has two rows: one for plain searches in a fixed order, the other for random
// restarts, which are far better on some nights and a game of luck on all: try other seeds before
// quoting them.
//
// Each side is one process, measured from its start to its end in wall clock and in processor time;
// so the solver's time has the translation of the model in it, and Quadrille's the start of a Go program.
// The columns "search" leave both out: what the solver says that posting the constraints and
// searching took, and the one call of scheduler.Plan in a fresh process. Quadrille's figures are the
// least of several runs of the same work.
//
// Both answers pass the same parser, the same audit and the same certificate: an answer counts if
// it is valid and no measure of who meets whom can be better.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, err)
		}
		os.Exit(1)
	}
}

// run does what the arguments ask: the table goes to out, progress to notes.
func run(ctx context.Context, args []string, out, notes io.Writer) error {
	flags := flag.NewFlagSet("versus", flag.ContinueOnError)
	flags.SetOutput(notes)
	limit := flags.Duration("limit", 2*time.Minute, "wall `time` that the solver gets for each model")
	runs := flags.Int("runs", 10, "how often Quadrille plans each night; the least of the `count` runs stands")
	seed := flags.Int("seed", 1, "`seed` of the solver's restarts")
	only := flags.String("night", "", "compare this `people/courts/rounds` alone")
	plan := flags.String("plan", "", "print Quadrille's plan of `people/courts/rounds` and compare nothing")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *plan != "" {
		n, err := parseNight(*plan)
		if err != nil {
			return err
		}
		return n.print(ctx, out)
	}
	nights := nightsToCompare
	if *only != "" {
		n, err := parseNight(*only)
		if err != nil {
			return err
		}
		nights = []night{n}
	}
	solver, err := findSolver(ctx)
	if err != nil {
		return err
	}
	fmt.Fprintln(notes, solver.version)
	return compare(ctx, contest{solver: solver, limit: *limit, seed: *seed, runs: *runs, notes: notes}, nights, out)
}
