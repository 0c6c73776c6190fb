package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/netip"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"
	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/store"
	"club/quadrille/tui/theme"
)

// usualPort is where phones find the page.
const usualPort = 8470

// shareRequest is what share is asked for.
type shareRequest struct {
	address string
	port    int
}

// newShare builds the command that shows the hall on people's phones.
func newShare(opts *options) *cobra.Command {
	asked := shareRequest{port: usualPort}
	cmd := &cobra.Command{
		Use:   "share",
		Short: "Show the hall on people's phones, in the local network",
		Long: `Opens a page on the local network, and prints its address and a code for cameras. Everybody
finds there, by name, the next court, partner and opponents and how long it will be, and the whole
hall, the standings and the organiser's messages: what the wall board shows, and nothing else. It
follows the desk that has the same club file open on the same computer, in a second terminal.

Nothing can be changed by a phone. The page is offered at an address of a private network only; if
this computer has several, --address says by which one the phones come. It ends with the night,
with ctrl+c, or after an hour in which no night goes on. Whoever is in the same network can read
along, as at the wall.`,
		Example: `  quadrille share
  quadrille share --address 192.168.1.20`,
		Args: nothing,
		RunE: func(cmd *cobra.Command, _ []string) error { return runShare(cmd, opts, asked) },
	}
	addAddress(cmd, &asked.address, "address", "`address` of this computer by which the phones come (default: that of the only network)")
	addWhole(cmd, &asked.port, "port", 0, 65535, "`number` of the port, from 1024 up; 0 takes any that is free")
	before(cmd, func(*cobra.Command) error {
		if asked.port > 0 && asked.port < 1024 {
			return usagef("--port takes 0 or a whole number from 1024 to 65535, not %d: the lower ones are the system's", asked.port)
		}
		return nil
	})
	dataFlag(cmd, opts, clubFile)
	return cmd
}

// addAddress adds a flag for an address in numbers.
func addAddress(cmd *cobra.Command, value *string, name, what string) {
	read := func(text string) (string, error) {
		_, err := netip.ParseAddr(strings.Trim(text, "[]"))
		return text, err
	}
	cmd.Flags().Var(asked[string]{value, "an address in numbers, such as 192.168.1.20", read, "address"}, name, what)
	completes(cmd, name, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		places, _ := phones.Places() // without them nothing is offered
		var words []string
		for _, p := range places {
			words = append(words, p.Addr.String()+"\t"+p.Interface)
		}
		return words, cobra.ShellCompDirectiveNoFileComp
	})
}

// runShare shows the page until the night ends or somebody ends it.
func runShare(cmd *cobra.Command, o *options, asked shareRequest) (err error) {
	path, err := o.path()
	if err == nil {
		path, err = store.Resolve(path)
	}
	if err != nil {
		return err
	}
	server, err := openPage(asked)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, server.Close()) }()
	out := cmd.OutOrStdout()
	if err := announce(out, server.URL(), inkFor(unwrapped(out))); err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGHUP, syscall.SIGTERM)
	defer stop()
	s := usualSharing(server, out)
	return s.follow(ctx, path)
}

// usualSharing is a page that waits as long as one should.
func usualSharing(server *phones.Server, out io.Writer) *sharing {
	return &sharing{server: server, out: out, idle: time.Hour, farewell: 5 * time.Second}
}

// follow follows the desk of a club file until the night is over, there is none for long, or ctx ends.
func (s *sharing) follow(ctx context.Context, path string) error {
	news := make(chan wire.News)
	follow, enough := context.WithCancel(ctx)
	done := make(chan struct{})
	go func() {
		defer close(done)
		wire.Share(follow, path, buildVersion(), s.server.URL(), func(n wire.News) {
			select {
			case news <- n:
			case <-follow.Done():
			}
		})
	}()
	defer func() { enough(); <-done }()
	return s.run(ctx, news)
}

// openPage opens the port that was asked for.
func openPage(asked shareRequest) (*phones.Server, error) {
	places, err := phones.Places()
	if err != nil {
		return nil, err
	}
	at, err := phones.Choose(places, asked.address)
	if err != nil {
		return nil, err
	}
	return openPort(at, asked.port)
}

// openPort shows the page at a port of an address; 0 is any that is free.
func openPort(at netip.Addr, port int) (*phones.Server, error) {
	l, err := phones.Listen(netip.AddrPortFrom(at, uint16(port)))
	if errors.Is(err, syscall.EADDRINUSE) {
		return nil, fmt.Errorf("port %d of %s is taken by another program, or by another share: choose one with --port, or 0 for any that is free", port, at)
	}
	if err != nil {
		return nil, fmt.Errorf("no port can be opened at %s: %s", at, because(err))
	}
	return phones.Serve(l, phones.UsualLimits), nil
}

// whatIsShared is the one sentence that says what is shown to whom and how it ends.
const whatIsShared = "Everybody in the local network can now see at this address what the wall board shows (courts, calls, who waits, standings, " +
	"messages, people by the names that the club shows; no level, wish, note or rating), nobody can change anything there, and it ends with the night or with ctrl+c."

// announce prints what is shared, and where it is found, as text and as a code.
func announce(out io.Writer, url string, ink phones.Ink) error {
	code, err := phones.Code(url, ink)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "%s\n\n%s\n\n%s\n\n", wrap(whatIsShared, 0), strings.Join(code, "\n"), url)
	return err
}

// inkFor is how a code is drawn on an output.
func inkFor(out io.Writer) phones.Ink {
	look := theme.Detect(out, os.Getenv)
	if file, ok := out.(*os.File); !ok || !term.IsTerminal(file.Fd()) {
		look.Hueless = true
	}
	return inkOf(look)
}

func inkOf(look theme.Choice) phones.Ink {
	coloured := !look.Hueless && look.Profile != termenv.Ascii && !look.ASCII
	return phones.Ink{Colours: coloured, Light: look.Bright, ASCII: look.ASCII}
}

// sharing brings what the desk shows to the page, and knows when that ends.
type sharing struct {
	server   *phones.Server
	out      io.Writer
	idle     time.Duration // without a night, after which it ends
	farewell time.Duration // for phones to hear that the night is over

	open bool   // a night goes on, as far as is known
	seen bool   // a night went on
	said string // to the organiser, last
}

// run takes the news in until the night is over, there is none for long, or ctx ends.
func (s *sharing) run(ctx context.Context, news <-chan wire.News) error {
	idle := time.NewTimer(s.idle)
	defer idle.Stop()
	for {
		select {
		case <-ctx.Done():
			return s.say("The page is closed.")
		case <-idle.C:
			return s.say("No night goes on: the page is closed. Open it again with quadrille share.")
		case n := <-news:
			before := s.open
			over, err := s.hear(n)
			switch {
			case err != nil:
				return err
			case over:
				return s.end(ctx)
			case s.open:
				idle.Stop()
			case before:
				idle.Reset(s.idle)
			}
		}
	}
}

// hear takes one piece of news in. Over tells that the night has ended.
func (s *sharing) hear(n wire.News) (over bool, err error) {
	s.open = n.View != nil && n.View.Open
	if n.View != nil && !s.open && s.seen {
		return true, nil
	}
	s.seen = s.seen || s.open
	s.server.Tell(n.View) // first, so that what the organiser reads is so
	switch {
	case n.View == nil && n.Why != "":
		err = s.say(n.Why)
	case n.View == nil:
		err = s.say("The desk is not open: the page waits for it. Open quadrille in another terminal.")
	case s.open:
		err = s.say("Phones follow the desk.")
	default:
		err = s.say("No night goes on yet: the page waits for one.")
	}
	return false, err
}

// end tells the phones that the night is over, and leaves them a moment to hear it.
func (s *sharing) end(ctx context.Context) error {
	s.server.Over()
	select {
	case <-ctx.Done():
	case <-time.After(s.farewell):
	}
	return s.say("The night is over: the page is closed.")
}

// say tells the organiser something that was not told just before.
func (s *sharing) say(text string) error {
	if text == s.said {
		return nil
	}
	s.said = text
	_, err := fmt.Fprintln(s.out, wrap(text, 0))
	return err
}
