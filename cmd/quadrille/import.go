package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/events"
	"club/quadrille/session"
	"club/quadrille/session/spreadsheet"
	"club/quadrille/store"
)

// importer is what the flags of import ask for.
type importer struct {
	opts *options
	here bool
	same session.SameName
}

// newImport builds the command that takes in a roster or another laptop's nights.
func newImport(opts *options) *cobra.Command {
	im := importer{opts: opts}
	cmd := &cobra.Command{
		Use:   "import FILE",
		Short: "Take in a roster, or the nights of another laptop",
		Long: `A roster: its people become known to the club and are expected at the night that is open,
at the times that the roster states. Who is known by name already is brought up to date; a new
name that is nearly that of somebody else is asked about.

An export of events, or another club file: nights and people that are not here yet are added.
People are joined by identity; who has the name of one of ours and another identity is asked
about. Importing the same file twice changes nothing.

The desk must not have the club file open meanwhile. FILE is - for the standard input.`,
		Example: `  quadrille import people.csv --here
  quadrille import other-laptop.qdb --same one
  quadrille import club.jsonl --data new.qdb`,
		Args: takes(1, 1, "one FILE"),
	}
	cmd.Flags().BoolVar(&im.here, "here", false, "check everybody in whom the roster does not announce for later")
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(filesOf("csv", "jsonl", "qdb"))
	addChoice(cmd, &im.same, "same", "whether people of one name in both files, or of nearly one name on a roster, are one or two (default: ask)", parseSame, "one", "two")
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return im.run(cmd, args[0]) }
	return cmd
}

// parseSame reads one or two.
func parseSame(text string) (session.SameName, error) {
	switch text {
	case "one":
		return session.OneAlike, nil
	case "two":
		return session.TwoAlike, nil
	}
	return session.AskSame, fmt.Errorf("say one or two")
}

// run sees from its first bytes what a file is: an export begins with a brace, a club file holds
// bytes that no table has, and everything else is taken for a roster.
func (im *importer) run(cmd *cobra.Command, path string) error {
	in, err := openInput(cmd, path)
	if err != nil {
		return err
	}
	defer in.Close()
	text := bufio.NewReader(in)
	start, err := text.Peek(512)
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	switch {
	case bytes.HasPrefix(bytes.TrimSpace(start), []byte("{")):
		records, err := events.Read(text)
		if err != nil {
			return err
		}
		return im.join(cmd, records)
	case bytes.IndexByte(start, 0) >= 0 && !spreadsheet.IsTable(start) && path != "-":
		records, err := recordsIn(path)
		if err != nil {
			return err
		}
		return im.join(cmd, records)
	}
	return im.expect(cmd, text)
}

// recordsIn reads all records of another club file.
func recordsIn(path string) ([]session.Record, error) {
	view, err := store.Look(path)
	if err != nil {
		return nil, err
	}
	var out []session.Record
	for r, err := range view.Records(1) {
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// join takes in what another log has and ours has not. It makes the club file if there is none.
func (im *importer) join(cmd *cobra.Command, theirs []session.Record) error {
	if im.here {
		return usagef("--here goes with a roster")
	}
	path, err := im.opts.path()
	if err != nil {
		return err
	}
	return work(path, func(desk *session.Desk) error {
		_, merged, err := desk.Join(theirs, im.same)
		var names *session.SameNameError
		if errors.As(err, &names) {
			return fmt.Errorf("%w: add --same one or --same two", err)
		}
		if err != nil {
			return err
		}
		tellMerged(cmd, merged)
		return nil
	})
}

// tellMerged says what joining another log brought, and what it left as it was.
func tellMerged(cmd *cobra.Command, merged session.Merged) {
	note(cmd, "%s and %s are new, %s known already", counted(merged.Nights, "night", "nights"),
		counted(merged.People, "person", "people"), counted(merged.Known, "night was", "nights were"))
	for _, name := range merged.Renamed {
		note(cmd, "somebody with a name of ours is called %s from now on", name)
	}
	for _, text := range merged.Differ {
		note(cmd, "%s; ours was kept: keep the other file too", text)
	}
	if merged.Left > 0 {
		note(cmd, "%s left out: they rest on events that were lost before that file was rescued", counted(merged.Left, "event was", "events were"))
	}
}

// expect takes in a roster.
func (im *importer) expect(cmd *cobra.Command, text io.Reader) error {
	entries, err := parseRoster(cmd, text)
	if err != nil {
		return err
	}
	path, err := im.opts.existing()
	if err != nil {
		return err
	}
	return work(path, func(desk *session.Desk) error {
		l, err := desk.Do(session.ImportRoster{Entries: entries, Arrived: im.here, Same: im.same})
		var alike *session.AlikeError
		if errors.As(err, &alike) {
			return fmt.Errorf("%w: add --same one or --same two, or mend the names in the file", err)
		}
		if err != nil {
			return err
		}
		n := l.Night()
		note(cmd, "%s of the roster taken in: %d expected and %d here at night %d", counted(len(entries), "person", "people"),
			n.Count(session.Expected), n.Count(session.Here), n.ID)
		return nil
	})
}
