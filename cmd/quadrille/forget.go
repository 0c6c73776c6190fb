package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newForget builds the command that removes a person's name for good.
func newForget(opts *options) *cobra.Command {
	var yes bool
	cmd := &cobra.Command{
		Use:   "forget NAME",
		Short: "Take a person's name out of every event and backup, for good",
		Long: `Writes the backups that the desk keeps, and then the club file, anew without a person's names and
what was noted about the person. Results stay, under a neutral label. A name that only backups
have is found too. If it is cut off, run it again. This cannot be undone. Copies that you made
elsewhere are not touched. The desk must not have the file open.`,
		Example: `  quadrille forget "Ann Other" --yes`,
		Args:    takes(1, 1, "one NAME (in quotes)"),
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(opts.names)
	cmd.Flags().BoolVar(&yes, "yes", false, "do it; without this flag nothing is changed")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		path, err := opts.existing()
		if err != nil {
			return err
		}
		return forget(cmd, path, args[0], yes)
	}
	return cmd
}

// forget removes a name from the copies of a club file and then from the file itself, so that a run that
// was cut off can be done again: as long as a copy has the name, so has the file or the copy itself.
func forget(cmd *cobra.Command, path, name string, yes bool) (err error) {
	kept, err := openClub(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	f, err := newForgetting(kept, path, name)
	if err != nil {
		return err
	}
	switch {
	case !f.person.Known() && len(f.stuck) == 0:
		return fmt.Errorf("neither the club file nor a backup knows anybody called %s: write the whole name as the standings do", name)
	case !yes && len(f.files) > 0:
		return fmt.Errorf("%s would become %s for good, in %s: add --yes to do it", strings.Join(f.person.Names(), ", once "), f.label, f.where())
	}
	for _, file := range f.files {
		if err := file.rewrite(); err != nil {
			f.stuck = append(f.stuck, fmt.Errorf("%s (%w)", file.path, err))
		}
	}
	if len(f.stuck) > 0 {
		return fmt.Errorf("the name may still stand in %s: remove what cannot be read, mend what cannot be written, and run this again", f.stuckIn())
	}
	note(cmd, "%s is forgotten in %s: results stay under the name %s", name, f.where(), f.label)
	return nil
}

// forgetting is all that there is to do to forget somebody.
type forgetting struct {
	person *session.Forgotten
	label  string
	files  []rewriting // the copies, and the club file last
	stuck  []error     // files that have the name and cannot be written anew
}

// rewriting is a file that is to be written anew.
type rewriting struct {
	path   string
	club   *store.Store // the club file, which is open; nil for a copy
	change func(session.Record) session.Record
}

// newForgetting reads the club file and its copies. What cannot be read is no reason to stop unless it
// has the name.
func newForgetting(kept *store.Store, path, name string) (*forgetting, error) {
	f := &forgetting{person: session.NewForgotten(name)}
	copies, err := copiesOf(path)
	if err != nil {
		return nil, err
	}
	views, unread := map[string]*store.View{}, map[string]error{}
	if err := f.person.Learn(kept); err != nil {
		return nil, err
	}
	for _, copied := range copies {
		view, err := store.Look(copied)
		if err == nil {
			err = f.person.Learn(view)
		}
		if err != nil {
			unread[copied] = err
			continue
		}
		views[copied] = view
	}
	for _, copied := range copies {
		if view := views[copied]; view != nil {
			unread[copied] = f.plan(rewriting{path: copied}, view)
		}
		if err := unread[copied]; err != nil && f.mentionedIn(copied) {
			f.stuck = append(f.stuck, fmt.Errorf("%s (%w)", copied, err))
		}
	}
	return f, f.plan(rewriting{path: path, club: kept}, kept)
}

// plan takes note of what is to be changed in a file.
func (f *forgetting) plan(file rewriting, log session.Log) error {
	ledger, err := session.Load(log.Records(1))
	if err != nil {
		return err
	}
	change, label, err := f.person.In(log, ledger.Club())
	if err != nil || change == nil {
		return err
	}
	file.change = change
	f.files, f.label = append(f.files, file), label
	return nil
}

// mentionedIn tells whether a file that cannot be read as a club file has the name in its bytes.
func (f *forgetting) mentionedIn(path string) bool {
	data, err := os.ReadFile(path)
	return err != nil || f.person.MentionedIn(data)
}

// where says in words which files have the name.
func (f *forgetting) where() string {
	copies := 0
	for _, file := range f.files {
		if file.club == nil {
			copies++
		}
	}
	switch {
	case copies == len(f.files):
		return counted(copies, "backup", "backups")
	case copies == 0:
		return f.files[0].path
	}
	return fmt.Sprintf("%s and in %s", counted(copies, "backup", "backups"), f.files[copies].path)
}

// stuckIn names the files that still have the name, and why.
func (f *forgetting) stuckIn() string {
	var files []string
	for _, err := range f.stuck {
		files = append(files, err.Error())
	}
	return strings.Join(files, ", and in ")
}

// rewrite writes a file anew without the name.
func (r rewriting) rewrite() error {
	if r.club != nil {
		return r.club.Rewrite(r.change)
	}
	copied, err := store.Open(r.path)
	if err != nil {
		return err
	}
	return errors.Join(copied.Rewrite(r.change), copied.Close())
}
