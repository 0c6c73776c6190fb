package main

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// existing is the path of a club file that is there. Commands that only tell or copy never make
// one.
func (o *options) existing() (string, error) {
	path, err := o.path()
	if err != nil {
		return "", err
	}
	return path, mustExist(path)
}

func mustExist(path string) error {
	if _, err := os.Stat(path); os.IsNotExist(err) {
		return fmt.Errorf("there is no club file %s yet: open the desk first, or name another with --data", path)
	}
	return nil
}

// mustBeThere refuses a file that somebody named and that is not there.
func mustBeThere(path string) error {
	if _, err := os.Stat(path); os.IsNotExist(err) {
		return fmt.Errorf("there is no file %s", path)
	}
	return nil
}

// look reads the club file as it is now, also while a desk has it open.
func (o *options) look() (*store.View, *session.Ledger, error) {
	path, err := o.existing()
	if err != nil {
		return nil, nil, err
	}
	view, err := store.Look(path)
	if err != nil {
		return nil, nil, err
	}
	ledger, err := session.Open(view)
	return view, ledger, err
}

// work opens a club file for a command that changes it, and closes it after do. A file that it had to
// make, and in which do left nothing, is removed again.
func work(path string, do func(*session.Desk) error) error {
	return workIn(path, func(_ *store.Store, desk *session.Desk) error { return do(desk) })
}

// workIn is work for a command that needs the file itself too.
func workIn(path string, do func(*store.Store, *session.Desk) error) (err error) {
	_, missing := os.Lstat(path)
	kept, err := openClub(path)
	if err != nil {
		return err
	}
	defer func() {
		empty := kept.Last() == 0
		err = errors.Join(err, kept.Close())
		if empty && os.IsNotExist(missing) {
			err = errors.Join(err, os.Remove(path))
		}
	}()
	desk, err := session.NewDesk(kept, time.Now, newPersonID)
	if err != nil {
		return err
	}
	return do(kept, desk)
}

// clubFile is what the help says of the flag --data where it names the club file.
const clubFile = "the club `file` (default: $QUADRILLE_DATA, else the one in the folder for your data)"

// dataFlag adds the flag that names a file of the club to a command that uses one.
func dataFlag(cmd *cobra.Command, opts *options, what string) {
	addFile(cmd, &opts.data, "data", what, "qdb")
	before(cmd, func(*cobra.Command) error {
		if opts.data == "-" {
			return usagef("--data takes the name of a file: the club file is kept open, so it cannot be the standard input or output")
		}
		return nil
	})
}

// nightFlag adds the flag that chooses one night.
func nightFlag(cmd *cobra.Command, opts *options, night *string, otherwise string) {
	addText(cmd, night, "night", "the number or date of a night, such as 3 or 2026-01-08",
		"`night` by its number or date, 3 or 2026-01-08 (default: "+otherwise+")")
	completes(cmd, "night", opts.nights)
}

// mustNameNight refuses what can be neither the number nor the date of a night of the club.
func mustNameNight(which string) error {
	_, noDate := time.Parse(time.DateOnly, which)
	if number, err := strconv.Atoi(which); which == "" || noDate == nil || err == nil && number > 0 {
		return nil
	}
	return usagef("--night takes the number or date of a night, such as 3 or 2026-01-08, not %s", quoted(which))
}

// nightOf finds a night by number or date, the newest for "". Of two nights on one date it is the
// later.
func nightOf(club *session.Club, which string) (*session.Night, error) {
	if len(club.Nights) == 0 {
		return nil, fmt.Errorf("the club has not had a night yet: open the desk to begin one")
	}
	if which == "" {
		return club.Night(), nil
	}
	number, err := strconv.Atoi(which)
	for i := len(club.Nights) - 1; i >= 0; i-- {
		n := club.Nights[i]
		if err == nil && int(n.ID) == number || date(n) == which {
			return n, nil
		}
	}
	return nil, fmt.Errorf("there is no night %s: the club's nights are 1 to %d, the last on %s", which, len(club.Nights), date(club.Night()))
}

// date is the day of a night in the place of this computer.
func date(n *session.Night) string { return n.Opened.Local().Format(time.DateOnly) }
