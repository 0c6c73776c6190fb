package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"time"
)

// contest is how the two sides are compared.
type contest struct {
	solver solver
	limit  time.Duration // wall time for each model
	seed   int           // of the solver's restarts
	runs   int           // of Quadrille
	notes  io.Writer     // progress
}

// compare plans each night on both sides and writes the table, row by row: one for the solver's
// plain searches and one for those with restarts.
func compare(ctx context.Context, c contest, nights []night, out io.Writer) error {
	writeHead(out)
	for _, n := range nights {
		ours, err := c.ours(ctx, n)
		if err != nil {
			return fmt.Errorf("quadrille on %s: %w", n, err)
		}
		for _, restarts := range []bool{false, true} {
			theirs, err := c.theirs(ctx, n, restarts)
			if err != nil {
				return err
			}
			writeRow(out, n, theirs, ours)
		}
	}
	return nil
}

// attempt is the outcome of one of the solver's methods.
type attempt struct {
	method method
	solved bool
	effort effort // if not solved, what it was given
}

// theirs runs every model for the night and returns the best attempt.
func (c contest) theirs(ctx context.Context, n night, restarts bool) (attempt, error) {
	var best attempt
	for i, model := range n.models() {
		m := method{model, restarts, c.seed}
		e, err := c.solver.solve(ctx, n, m, c.limit)
		if err != nil && !errors.Is(err, errNoAnswer) {
			return attempt{}, fmt.Errorf("the solver on %s: %w", n, err)
		}
		a := attempt{m, err == nil, e}
		fmt.Fprintf(c.notes, "%s %s: %s\n", n, m, a)
		if i == 0 || a.beats(best) {
			best = a
		}
	}
	return best, nil
}

// beats tells whether a is better than b: solved, or solved with less work.
func (a attempt) beats(b attempt) bool {
	if a.solved != b.solved {
		return a.solved
	}
	return a.effort.less(b.effort)
}

// String says how it went.
func (a attempt) String() string {
	word := "none"
	if a.solved {
		word = "found"
	}
	return fmt.Sprintf("%s in %s of wall clock, %s of processor, %s of search", word,
		a.effort.wall.Round(time.Millisecond), a.effort.cpu.Round(time.Millisecond), a.effort.search.Round(time.Millisecond))
}

// ours plans the night several times, each in a process of its own like the solver, and returns the least of each figure.
func (c contest) ours(ctx context.Context, n night) (effort, error) {
	program, err := os.Executable()
	if err != nil {
		return effort{}, fmt.Errorf("finding this program to run it again: %w", err)
	}
	var best effort
	for i := range max(1, c.runs) {
		e, output, err := measure(exec.CommandContext(ctx, program, "-plan", n.String()))
		if err != nil {
			return effort{}, err
		}
		if err := n.check(output); err != nil {
			return effort{}, err
		}
		if i == 0 {
			best = e
		}
		best = best.least(e)
	}
	return best, nil
}
