// Quadrille runs a club's doubles night from a terminal: who is here, who plays with whom and
// where, what the score is and who leads. Without a command it opens the desk; its commands plan,
// judge, simulate and keep nights for scripts and for the curious.
package main

import (
	"os"

	_ "club/quadrille/tui/background" // settles what Bubble Tea would ask a silent terminal for
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
