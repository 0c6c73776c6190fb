package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"strings"
	"time"
)

// effort is what one run took.
type effort struct {
	wall   time.Duration // of the process, start to end
	cpu    time.Duration // of the processor, with child processes
	search time.Duration // of the search alone in wall clock, by its own statement
}

// measure runs a program and returns what it took and the answer that it printed.
func measure(cmd *exec.Cmd) (effort, string, error) {
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	cmd.WaitDelay = time.Second // a child of the solver may outlive it, and hold its output open
	start := time.Now()
	err := cmd.Run()
	wall := time.Since(start)
	if err != nil {
		return effort{}, "", fmt.Errorf("%w: %s", err, strings.TrimSpace(errs.String()))
	}
	state := cmd.ProcessState
	return effort{wall, state.UserTime() + state.SystemTime(), searchTime(out.String())}, out.String(), nil
}

// least takes the smaller of each figure. It is for repeated runs of the same work, where whatever
// is above the least is the machine's other business.
func (e effort) least(f effort) effort {
	return effort{min(e.wall, f.wall), min(e.cpu, f.cpu), min(e.search, f.search)}
}

// less orders runs of different models: by processor time, which other work on the machine moves
// least.
func (e effort) less(f effort) bool { return e.cpu < f.cpu }

// check judges an answer.
func (n night) check(output string) error {
	rounds, err := readAnswer(strings.NewReader(output))
	if err != nil {
		return err
	}
	return n.judge(rounds)
}
