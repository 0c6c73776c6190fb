// Package crowd is many phones in a process of their own, for tests of what serves them: streams that look for
// one text in what arrives, as little as a phone's network spends, and pages that are loaded at a steady rate.
package crowd

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"time"
)

// Order is what a crowd does.
type Order struct {
	Host    string   // that serves the page, with its port; an address of 127.0.0.0/8
	Keys    []string // of the people who look, one after the other
	Streams int      // that are kept open
	Loads   int      // pages with their files, a second
	Marker  string   // begins the text that is looked for; digits and dashes behind it belong to it
}

// Arrival is a text that came to a stream and is another than the one before.
type Arrival struct {
	Stream int
	Text   string
	At     time.Time
}

// Report is what a crowd saw.
type Report struct {
	Arrivals []Arrival
	Loaded   int // pages
	Failed   int // pages that did not come whole
}

// variable holds the order of a process that is a crowd.
const variable = "QUADRILLE_TEST_CROWD"

// Main makes the process a crowd if it was started as one, and does not return then. TestMain calls it first.
func Main() {
	text := os.Getenv(variable)
	if text == "" {
		return
	}
	var o Order
	err := json.Unmarshal([]byte(text), &o)
	if err == nil {
		err = play(o, os.Stdin, os.Stdout)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "crowd:", err)
		os.Exit(1)
	}
	os.Exit(0)
}

// Crowd is a crowd that looks.
type Crowd struct {
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bufio.Reader
}

// ready is the line by which a crowd says that all of its streams are open.
const ready = "ready\n"

// Start starts a crowd, and returns when all of its streams are open.
func Start(o Order) (*Crowd, error) {
	own, err := os.Executable()
	if err != nil {
		return nil, err
	}
	text, err := json.Marshal(o)
	if err != nil {
		return nil, err
	}
	c := &Crowd{cmd: exec.Command(own)}
	c.cmd.Env, c.cmd.Stderr = append(os.Environ(), variable+"="+string(text)), os.Stderr
	if c.in, err = c.cmd.StdinPipe(); err != nil {
		return nil, err
	}
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	c.out = bufio.NewReader(out)
	if err := c.cmd.Start(); err != nil {
		return nil, err
	}
	if line, err := c.out.ReadString('\n'); line != ready {
		_ = c.in.Close()
		return nil, errors.Join(fmt.Errorf("the crowd does not look: %q", line), err, c.cmd.Wait())
	}
	return c, nil
}

// End sends the crowd home when the last text has come to all of its streams, or will not come any more, and gives
// what it saw.
func (c *Crowd) End(last string) (r Report, err error) {
	_, err = io.WriteString(c.in, last)
	_ = c.in.Close()
	if err != nil {
		return r, errors.Join(err, c.cmd.Wait())
	}
	err = json.NewDecoder(c.out).Decode(&r)
	return r, errors.Join(err, c.cmd.Wait())
}
