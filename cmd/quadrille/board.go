package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/session/public"
	"club/quadrille/store"
	"club/quadrille/tui/board"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
)

// newBoard builds the command that shows the hall on another screen.
func newBoard(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "board",
		Short: "Show the hall on a second screen, in large letters",
		Long: `Shows on a second screen who plays on which court now and next, who waits, the standings, the
time left and the organiser's messages, in letters as large as the terminal allows, and where the
page for phones is found while it is open (quadrille share, or o and p at the desk). It follows the
desk that has the same club file open on the same computer, waits for one that is not open yet,
and changes nothing. Up to 16 boards follow a desk. It ends with q.

People stand there by first name and initial; the options of the desk (o, then n) choose
full names or names of their own choice, and who is hidden at the door stands there nowhere. No
level, wish, note or rating is shown.

Make the letters of that terminal large: 80 by 24 shows four courts on a large screen so that
they can be read from ten metres.`,
		Example: "  quadrille board",
		Args:    nothing,
		RunE:    func(cmd *cobra.Command, _ []string) error { return runBoard(cmd, opts) },
	}
	dataFlag(cmd, opts, clubFile)
	return cmd
}

// runBoard shows the board until it is quit or its terminal is closed.
func runBoard(cmd *cobra.Command, o *options) error {
	if err := needTerminal("the board"); err != nil {
		return err
	}
	path, err := o.path()
	if err == nil {
		path, err = store.Resolve(path)
	}
	if err != nil {
		return err
	}
	screen := unwrapped(cmd.OutOrStdout())
	wanted, _ := deskSettings() // what is wrong with them the desk tells
	look := wanted.Look(theme.Detect(screen, os.Getenv), os.Getenv)
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGHUP, syscall.SIGTERM)
	defer stop()
	return board.Run(ctx, board.Options{
		Theme: theme.Of(look),
		File:  path,
		Now:   time.Now,
		Code:  codeFor(inkOf(look)),
		Follow: func(ctx context.Context, tell func(board.News)) {
			wire.Follow(ctx, path, buildVersion(), func(n wire.News) { tell(board.News(n)) })
		},
	}, cmd.InOrStdin(), screen)
}

// codeFor draws codes for cameras as large as they fit a width and height, nil where none fits.
func codeFor(ink phones.Ink) func(text string, width, height int) []string {
	return func(text string, width, height int) []string {
		var largest []string
		for ink.Scale = 1; ; ink.Scale++ {
			lines, err := phones.Code(text, ink)
			if err != nil || len(lines) > height || line.Width(lines[0]) > width {
				return largest
			}
			largest = lines
		}
	}
}

// boards lets boards follow a desk on a club file: show tells them what the hall may see, and returns at once.
type boards struct{ server *wire.Server }

func openBoards(path string) (*boards, error) {
	l, err := wire.Listen(path)
	if err != nil {
		return nil, err
	}
	return &boards{wire.Serve(l, buildVersion())}, nil
}

func (b *boards) show(view func() public.View) {
	b.server.Show(func() ([]byte, error) {
		v := view()
		v.Phones = b.server.Page()
		return wire.Encode(v)
	})
}

func (b *boards) close() { _ = b.server.Close() } // the desk is closed, and nobody could mend it
