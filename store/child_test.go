package store

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"go.uber.org/goleak"
)

// Some claims are about several processes. The test binary then starts itself again, and the
// variable below says what the copy is to do instead of testing.
const roleVar = "STORE_TEST_ROLE"

var roles = map[string]func(path string) error{
	"hold":  holdFile,
	"race":  raceForFile,
	"write": writeForEver,
}

func TestMain(m *testing.M) {
	if role := os.Getenv(roleVar); role != "" {
		if err := roles[role](os.Args[1]); err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	// Each step of the model flushes to disk; the command line may still ask for more.
	if err := flag.Set("rapid.checks", strconv.Itoa(atLength(30, 300))); err != nil {
		fmt.Println(err)
		os.Exit(2)
	}
	goleak.VerifyTestMain(m)
}

// A child is a copy of the test binary at work.
type child struct {
	cmd   *exec.Cmd
	stdin io.WriteCloser
	lines *bufio.Scanner // what it prints
}

func start(tb testing.TB, role, path string) *child {
	tb.Helper()
	c := &child{cmd: exec.Command(os.Args[0], path)}
	c.cmd.Env = append(os.Environ(), roleVar+"="+role)
	c.cmd.Stderr = os.Stderr
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		tb.Fatal(err)
	}
	if c.stdin, err = c.cmd.StdinPipe(); err != nil {
		tb.Fatal(err)
	}
	c.lines = bufio.NewScanner(out)
	if err := c.cmd.Start(); err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { c.cmd.Process.Kill(); c.cmd.Wait() })
	return c
}

// line is the next that the child prints.
func (c *child) line(tb testing.TB) string {
	tb.Helper()
	if !c.lines.Scan() {
		tb.Fatal("the child said nothing more")
	}
	return c.lines.Text()
}

// untilToldToStop returns when the parent closes the pipe.
func untilToldToStop() { io.Copy(io.Discard, os.Stdin) }
