package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
)

// meanwhile does something that may take long. Who waits at a terminal for a second or more is told
// each second, on the standard error, what is going on; the line is gone when it is over.
func meanwhile(cmd *cobra.Command, what string, do func() error) error {
	screen, ok := cmd.ErrOrStderr().(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" || !term.IsTerminal(screen.Fd()) {
		return do()
	}
	seconds := time.NewTicker(time.Second)
	defer seconds.Stop()
	return tell(screen, seconds.C, what, do)
}

// tell writes a line at each tick until do is done.
func tell(screen io.Writer, tick <-chan time.Time, what string, do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	for seconds := 1; ; seconds++ {
		select {
		case <-tick:
			fmt.Fprintf(screen, "\r\x1b[K%s, %d s", what, seconds)
		case err := <-done:
			if seconds > 1 {
				fmt.Fprint(screen, "\r\x1b[K")
			}
			return err
		}
	}
}
