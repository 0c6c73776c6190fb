package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/events"
	"club/quadrille/session"
	"club/quadrille/store"
)

// exchange is the extension of the files through which laptops share nights.
const exchange = ".jsonl"

// syncer is what the flags of sync ask for.
type syncer struct {
	opts *options
	same session.SameName
}

// newSync builds the command that brings two laptops of one club to the same nights.
func newSync(opts *options) *cobra.Command {
	s := syncer{opts: opts}
	cmd := &cobra.Command{
		Use:   "sync FOLDER|FILE.jsonl",
		Short: "Share nights with another laptop through a stick or folder",
		Long: `Takes in the nights and people that other laptops of the club left in a folder, and leaves its
own there for them: each laptop writes one file of its own, which is replaced as a whole. With a
FILE.jsonl all laptops share that one file. Run it on one laptop, then on the other, then on the
first again: both have everything.

A file that is not whole is told and not taken, so nothing comes in by halves. What both sides have
and know otherwise is shown, and stays as it is on each. Forgotten names go from a shared folder when
the laptop that forgot them syncs again; each laptop forgets for itself.

No night may be open meanwhile, here or at the desk. Who can open the folder can read the files.`,
		Example: `  quadrille sync /media/stick/club
  quadrille sync /media/stick/club.jsonl --same one`,
		Args: takes(1, 1, "one FOLDER or FILE.jsonl"),
	}
	dataFlag(cmd, opts, clubFile)
	addChoice(cmd, &s.same, "same", "whether people of one name on two laptops are one or two (default: ask)", parseSame, "one", "two")
	cmd.ValidArgsFunction = first(filesOf("jsonl"))
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return s.run(cmd, args[0]) }
	return cmd
}

func (s *syncer) run(cmd *cobra.Command, place string) error {
	path, err := s.opts.path()
	if err != nil {
		return err
	}
	folder, err := sharedPlace(place)
	if err != nil {
		return err
	}
	return workIn(path, func(kept *store.Store, desk *session.Desk) error {
		if desk.Ledger().Night() != nil {
			return fmt.Errorf("a night is open here: end it at the desk, then sync")
		}
		ours := place
		if folder {
			ours = filepath.Join(place, fmt.Sprintf("quadrille-%s%s", kept.UUID(), exchange))
		}
		files, err := filesIn(place, folder)
		if err != nil {
			return err
		}
		return s.exchange(cmd, kept, desk, ours, files)
	})
}

// sharedPlace tells whether a place is a folder, and refuses what is neither a folder nor a file to share.
func sharedPlace(place string) (folder bool, err error) {
	shared, err := os.Stat(place)
	switch {
	case err == nil && shared.IsDir():
		return true, nil
	case err != nil && !os.IsNotExist(err):
		return false, fmt.Errorf("%s cannot be read: %s", place, because(err))
	case filepath.Ext(place) != exchange:
		return false, fmt.Errorf("%s is neither a folder nor a file that ends in %s: make the folder first, or name FILE%s", place, exchange, exchange)
	}
	return false, nil
}

// filesIn are the files to take in. That of this laptop is one of them: a club file that was copied to a second
// laptop writes the same one from there.
func filesIn(place string, folder bool) (files []string, err error) {
	if !folder {
		if _, err := os.Stat(place); os.IsNotExist(err) {
			return nil, nil
		}
		return []string{place}, nil
	}
	all, err := os.ReadDir(place)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %s", place, because(err))
	}
	for _, f := range all {
		if f.Type().IsRegular() && strings.HasPrefix(f.Name(), "quadrille-") && filepath.Ext(f.Name()) == exchange {
			files = append(files, filepath.Join(place, f.Name()))
		}
	}
	return files, nil
}

// exchange takes in the files and then leaves everything in ours, unless ours is one that could not be taken in:
// it may have what is nowhere else.
func (s *syncer) exchange(cmd *cobra.Command, kept *store.Store, desk *session.Desk, ours string, files []string) error {
	wrong := false
	for _, file := range files {
		err := s.take(cmd, desk, file)
		if err != nil && file == ours {
			return fmt.Errorf("%s was not taken in, and is left as it is: %w", file, err)
		}
		if err != nil {
			note(cmd, "%s was not taken in: %v", file, err)
			wrong = true
		}
	}
	nights := len(desk.Ledger().Club().Nights)
	switch {
	case kept.Last() == 0 && wrong:
	case kept.Last() == 0:
		return fmt.Errorf("there is nothing to share yet, neither here nor in %s", ours)
	default:
		if err := leave(kept, ours); err != nil {
			return err
		}
		note(cmd, "%s has all %s of this laptop", ours, counted(nights, "night", "nights"))
	}
	if wrong {
		return fmt.Errorf("not everything could be taken in")
	}
	return nil
}

// take takes in the nights of one file, whole or not at all, and tells what is new and what differs.
func (s *syncer) take(cmd *cobra.Command, desk *session.Desk, file string) error {
	f, err := os.Open(file)
	if err != nil {
		return errors.New(because(err))
	}
	defer f.Close()
	theirs, err := events.Read(f)
	if err != nil {
		return err
	}
	their, err := session.LoadRecords(theirs)
	if err != nil {
		return fmt.Errorf("it does not make nights: %w", err)
	}
	if their.Night() != nil {
		return fmt.Errorf("a night is open on that laptop: end it there, and sync there again")
	}
	_, merged, err := desk.Join(theirs, s.same)
	var names *session.SameNameError
	if errors.As(err, &names) {
		return fmt.Errorf("%w: add --same one or --same two", err)
	}
	if err != nil {
		return err
	}
	note(cmd, "from %s:", file)
	tellMerged(cmd, merged)
	for _, text := range session.Differences(desk.Ledger().Club(), their.Club()) {
		note(cmd, "%s", text)
	}
	return nil
}

// leave writes the club's records to the file that this laptop shares, in the place of what it wrote before. The
// others see the old file or the new one, and never a half.
func leave(kept *store.Store, path string) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".quadrille-*")
	if err != nil {
		return notWritten(path, err)
	}
	write := func(w io.Writer) error { return session.ExportCounted(w, kept.Last(), kept.Records(1)) }
	const forAll = 0o644 // whoever may open the folder shares the nights
	if err := errors.Join(write(f), f.Chmod(forAll), f.Sync(), f.Close()); err != nil {
		return notWritten(path, errors.Join(err, os.Remove(f.Name())))
	}
	return notWritten(path, os.Rename(f.Name(), path))
}
