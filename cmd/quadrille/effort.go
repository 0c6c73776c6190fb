package main

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/scheduler"
)

// effort is how long a rotation is searched for: so many times as long as usual, which gives the same rotation
// everywhere, or for so long, which gives what this machine finds in that time.
type effort struct {
	times int
	span  time.Duration // 0 = by times
}

// The longest search that can be asked for.
const (
	mostEffort = 1000
	mostSpan   = time.Hour
)

// String is the effort as it is given.
func (e effort) String() string {
	if e.span > 0 {
		return e.span.String()
	}
	return strconv.Itoa(e.times)
}

// parseEffort reads an effort: a whole number, or seconds or minutes as in 10s, 2m or 1m30s.
func parseEffort(text string) (effort, error) {
	text = strings.TrimSpace(text)
	if n, err := strconv.Atoi(text); err == nil {
		if n < 1 || n > mostEffort {
			return effort{}, errOutside
		}
		return effort{times: n}, nil
	}
	span, err := time.ParseDuration(text)
	if err != nil || span < time.Second || span > mostSpan {
		return effort{}, errOutside
	}
	return effort{times: 1, span: span}, nil
}

// addEffort adds the flag.
func addEffort(cmd *cobra.Command, value *effort) {
	*value = effort{times: 1}
	takes := fmt.Sprintf("a whole number from 1 to %d, or a time from 1s to 60m", mostEffort)
	cmd.Flags().Var(asked[effort]{value, takes, parseEffort, "N|time"}, "effort",
		"search N times as long as usual, or for a time such as 10s, for a rotation nearer to the bounds")
	completes(cmd, "effort", cobra.NoFileCompletions)
}

// budget is the effort of searches that time does not limit.
func (e effort) budget() scheduler.Budget { return scheduler.Budget{Effort: e.times} }

// plan makes a rotation with that effort. Where it is a time, the usual rotation is improved until that is over or so
// many slices running find nothing better.
func (e effort) plan(ctx context.Context, p scheduler.Problem) ([]scheduler.Round, error) {
	until, cancel := context.WithTimeout(ctx, e.span)
	defer cancel()
	rounds, err := scheduler.Plan(ctx, p, e.budget())
	if err != nil || e.span == 0 {
		return rounds, err
	}
	for slice, since := uint64(0), 0; until.Err() == nil && since < enoughSlices; slice++ {
		better, found, err := scheduler.Improve(until, p, rounds, e.budget(), slice)
		if err != nil {
			return nil, err
		}
		if since++; found {
			rounds, since = better, 0
		}
	}
	return rounds, ctx.Err()
}

// enoughSlices is after how many slices without anything better more of them are not worth waiting for.
const enoughSlices = 400
