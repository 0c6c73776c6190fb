package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"slices"
	"sync"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
)

// talking are the commands that talk with a person while they run: they need no line that says so.
var talking = []string{"demo", "board", "share", "call", "drill"}

// doing says what a command is at, for those who wait for it; "working" for any other.
var doing = map[string]string{
	"plan": "planning", "audit": "judging", "simulate": "playing the night", "pace": "working it out",
	"import": "taking it in", "standings": "making the table", "rate": "rating", "export": "writing",
	"backup": "copying", "restore": "copying", "check": "reading all of it", "rescue": "searching all of it",
	"compact": "writing it anew", "forget": "writing it anew", "merge": "reading all of it",
}

// progress is a line on the terminal that tells who waits, each second, what is going on. It is gone
// as soon as anything else is written.
type progress struct {
	mu     sync.Mutex
	screen io.Writer // nil where nobody watches
	shown  bool
}

// watched is the progress line of a run, which is shown only if errs is a terminal on which lines can
// be taken back.
func watched(in io.Reader, errs io.Writer, args []string) *progress {
	screen, ok := errs.(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" || !term.IsTerminal(screen.Fd()) {
		return &progress{}
	}
	if keyboard, ok := in.(*os.File); ok && term.IsTerminal(keyboard.Fd()) && slices.Contains(args, "-") {
		return &progress{} // somebody types the input
	}
	return &progress{screen: screen}
}

// while does what a command does, and tells of it at each tick.
func (p *progress) while(what string, tick <-chan time.Time, do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	for seconds := 1; ; seconds++ {
		select {
		case <-tick:
			p.show(fmt.Sprintf("%s, %d s", what, seconds))
		case err := <-done:
			p.clear()
			return err
		}
	}
}

func (p *progress) show(text string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	fmt.Fprint(p.screen, "\r\x1b[K"+text)
	p.shown = true
}

// clear takes the line back.
func (p *progress) clear() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.shown {
		fmt.Fprint(p.screen, "\r\x1b[K")
	}
	p.shown = false
}

// telling makes the commands below root tell who waits what they do.
func (p *progress) telling(root *cobra.Command) {
	for _, c := range root.Commands() {
		what, do := cmp.Or(doing[c.Name()], "working"), c.RunE
		if p.screen == nil || slices.Contains(talking, c.Name()) {
			continue
		}
		c.RunE = func(cmd *cobra.Command, args []string) error {
			seconds := time.NewTicker(time.Second)
			defer seconds.Stop()
			return p.while(what, seconds.C, func() error { return do(cmd, args) })
		}
	}
}

// clearing is an output before which the progress line is taken back.
type clearing struct {
	io.Writer
	line *progress
}

// Write implements io.Writer.
func (c clearing) Write(text []byte) (int, error) {
	c.line.clear()
	return c.Writer.Write(text)
}
