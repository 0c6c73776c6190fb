package main

import (
	"context"
	"crypto/rand"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/oklog/ulid/v2"
	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/pdf"
	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/session"
	"club/quadrille/store"
	"club/quadrille/tui"
	"club/quadrille/tui/theme"
)

// path is the club file: the one named with --data, else QUADRILLE_DATA, else the default.
func (o *options) path() (string, error) {
	if o.data != "" {
		return o.data, nil
	}
	if env := os.Getenv("QUADRILLE_DATA"); env != "" {
		return env, nil
	}
	return store.DefaultPath()
}

// runDesk opens the desk on the club file.
func runDesk(cmd *cobra.Command, o *options) error {
	if err := needTerminal("the desk"); err != nil {
		return err
	}
	path, err := o.path()
	if err != nil {
		return err
	}
	opened, err := openClub(path)
	if err != nil {
		return withBackup(err, path)
	}
	kept := &keeper{Store: opened}
	desk, err := session.NewDesk(kept, time.Now, newPersonID)
	if err != nil {
		return errors.Join(err, kept.Close())
	}
	desk.CountBy(uptime)
	left, err := showDesk(cmd, desk, kept)
	return errors.Join(err, leaveDesk(cmd, desk, kept, left, path))
}

// hallPlaces lists where the desk can show the page for phones. Tests put the computer itself in its place.
var hallPlaces = phones.Places

// showDesk runs the screens until they are quit or the terminal is closed, waits for the write in flight,
// and tells what is not saved. Kept is nil where nothing is kept.
func showDesk(cmd *cobra.Command, desk *session.Desk, kept *keeper) (*tui.Unsaved, error) {
	screen := unwrapped(cmd.OutOrStdout())
	wanted, wrong := deskSettings()
	look := theme.Of(wanted.Look(theme.Detect(screen, os.Getenv), os.Getenv))
	o := tui.Options{
		Theme:     look,
		Keys:      wanted.Keys,
		Warnings:  wrong,
		ReadFile:  readRosterFile,
		NewSeed:   newSeed,
		NewSecret: newSecret,
		Slices:    slicesWithoutFind,
		Print:     printSheet(cmd),
		Papers:    []string{pdf.A4.String(), pdf.Letter.String()},

		AskBackground: look.Choice().Unsure(os.Getenv),
	}
	if wanted.Bell {
		o.Bell = func() { io.WriteString(screen, "\a") } //nolint:errcheck // a bell that does not ring stops nothing
	}
	if kept != nil {
		o.Backup = func(to string, also session.Command) error { return kept.copyTo(desk, to, also) }
		o.InPlace = kept.InPlace
		o.PutBack = func() (string, error) { return kept.PutBack(time.Now()) }
		if b, err := openBoards(kept.Path()); err == nil {
			defer b.close()
			o.Show = b.show
			p := &deskPhones{path: kept.Path(), ink: inkOf(look.Choice()), places: hallPlaces}
			defer p.end()
			o.Phones = p
		} else {
			o.Warnings = append(o.Warnings, err)
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGHUP)
	defer stop()
	left, err := tui.Run(ctx, desk, o, cmd.InOrStdin(), screen)
	desk.Wait()
	return left, err
}

// needTerminal refuses to draw screens where nobody could see them.
func needTerminal(who string) error {
	if os.Getenv("TERM") == "dumb" || !term.IsTerminal(os.Stdin.Fd()) || !term.IsTerminal(os.Stdout.Fd()) {
		return fmt.Errorf("%s needs a terminal; quadrille --help lists the commands that do without one", who)
	}
	return nil
}

// maxRoster is the largest file that is read as a roster, in bytes.
const maxRoster = 4 << 20

func readRosterFile(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("%s: %s", path, because(err))
	}
	if !info.Mode().IsRegular() || info.Size() > maxRoster {
		return nil, fmt.Errorf("%s is no roster: a CSV file of at most %d MiB is needed", path, maxRoster>>20)
	}
	return os.ReadFile(path)
}

// newPersonID makes an identity that no other laptop makes.
func newPersonID() session.PersonID {
	return session.PersonID(ulid.MustNew(ulid.Now(), rand.Reader).String())
}

// newSeed makes a seed for the draws of a night.
func newSeed() uint64 {
	var b [8]byte
	if _, err := rand.Read(b[:]); err != nil {
		return uint64(time.Now().UnixNano())
	}
	return binary.LittleEndian.Uint64(b[:]) >> 12 // readable when printed, and exact in JSON
}

// newSecret makes the secret of a night's codes.
func newSecret() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // which cannot fail
	return hex.EncodeToString(b[:])
}

// slicesWithoutFind is after how many slices of the usual moves without a find more of them seldom find anything: see
// [scheduler.Improve].
const slicesWithoutFind = 12
