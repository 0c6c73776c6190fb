// Replay records a night that is kept in a club file, and opens what a crash at any moment of it could have
// left: go run ./store/cmd/replay -states 2000.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"

	"club/quadrille/store/crash"
)

func main() {
	states := flag.Int("states", 2000, "how many states to open")
	seed := flag.Uint64("seed", 1, "for what is drawn by lot")
	work := flag.String("work", "", "play the night in this folder, and nothing else (used by the program itself)")
	flag.Parse()
	if *work != "" {
		exit(crash.Work(*work, os.Stdout))
	}
	exit(replay(*states, *seed))
}

func replay(states int, seed uint64) error {
	dir, err := os.MkdirTemp("", "quadrille-replay-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	for _, part := range []string{"/work", "/states"} {
		if err := os.Mkdir(dir+part, 0o700); err != nil {
			return err
		}
	}
	self, err := os.Executable()
	if err != nil {
		return err
	}
	cmd := exec.Command(self, "-work", dir+"/work")
	cmd.Stderr = os.Stderr
	trace, err := crash.Record(cmd, dir+"/work")
	if err != nil {
		return err
	}
	fmt.Println("recorded:", trace)
	all, err := crash.Records(dir + "/work")
	if err != nil {
		return err
	}
	r, err := trace.Replay(states, seed, all, dir+"/states")
	if err == nil {
		fmt.Println(r)
	}
	return err
}

func exit(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, "replay:", err)
		os.Exit(1)
	}
	os.Exit(0)
}
