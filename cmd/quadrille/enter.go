package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/paper"
)

// enterer is what the flags of enter ask for.
type enterer struct {
	opts  *options
	plan  string // the rotation that was printed
	rules *scoring.Rules
	same  session.SameName
}

// newEnter builds the command that takes in what was played from paper.
func newEnter(opts *options) *cobra.Command {
	e := enterer{opts: opts}
	cmd := &cobra.Command{
		Use:   "enter FILE",
		Short: "Take in the results of a night that went on by paper",
		Long: `Takes in results that were typed from paper, a game a line: round, court and score, as in "1 3 11 7". In place of
a score may stand "9-6 timed", "9-6 retired b", "walkover a" or "void". A line "round 3 KQFA" has the letters that
stand behind a round on the paper: then the games must be just those. What follows a # is left out. Everything
is entered, or nothing, and then each line that cannot be is named.

They go into the night that is open, for rounds that were called or are planned in the club file. With --plan the rounds
are those of a rotation that was printed, and a night is opened for it if none is open, as is usual in your club or by the
flags below. The same lines twice change nothing. The desk must not have the club file open meanwhile; it takes results
itself, a field for each court: press : there and type "results from paper".
FILE is - for the standard input.`,
		Example: `  quadrille enter results.txt
  quadrille enter results.txt --plan rotation.json
  echo 1 3 11 7 | quadrille enter -`,
		Args: takes(1, 1, "one FILE"),
	}
	addFile(cmd, &e.plan, "plan", "the rotation that was printed, as \"quadrille plan --json\" made it", "json")
	addChoice(cmd, &e.same, "same", "whether people of nearly one name are one or two (default: ask)", parseSame, "one", "two")
	dataFlag(cmd, opts, clubFile)
	e.rules = rulesFlags(cmd)
	for _, name := range ruleNames {
		goesWith(cmd, name, "plan")
	}
	goesWith(cmd, "same", "plan")
	cmd.ValidArgsFunction = first(filesOf("txt"))
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return e.run(cmd, args[0]) }
	return cmd
}

// ruleNames are the flags that say how games are scored.
var ruleNames = []string{"scoring", "to", "win-by", "cap", "win-on-serve"}

// run enters what was typed and says what it was.
func (e *enterer) run(cmd *cobra.Command, file string) error {
	if file == "-" && e.plan == "-" {
		return usagef("only one of FILE and --plan can be the standard input")
	}
	in, err := openInput(cmd, file)
	if err != nil {
		return err
	}
	defer in.Close()
	typed, err := paper.ReadTyped(in)
	if err != nil {
		return err
	}
	path, err := e.opts.existing()
	if e.plan != "" {
		path, err = e.opts.path()
	}
	if err != nil {
		return err
	}
	return work(path, func(desk *session.Desk) error {
		plan, err := e.printed(cmd, desk.Ledger().Club())
		if err != nil {
			return err
		}
		done, err := paper.Enter(desk, typed, plan)
		var alike *session.AlikeError
		if errors.As(err, &alike) {
			return fmt.Errorf("%w: add --same one or --same two", err)
		}
		if err != nil {
			return err
		}
		for _, d := range done {
			fmt.Fprintln(cmd.OutOrStdout(), wrap(d.String(), 2))
		}
		note(cmd, "%s entered at night %d", counted(len(done), "result", "results"), desk.Ledger().Club().Night().ID)
		return nil
	})
}

// printed is the rotation that was printed, nil where none is named.
func (e *enterer) printed(cmd *cobra.Command, club *session.Club) (*paper.Plan, error) {
	if e.plan == "" {
		return nil, nil
	}
	doc, err := readPlan(cmd, e.plan)
	if err != nil {
		return nil, err
	}
	settings, _ := club.Proposal(doc.Seed)
	settings.Flow, settings.Format, settings.Rounds = session.Rounds, doc.Format, len(doc.Rounds)
	if len(given(cmd, ruleNames)) > 0 {
		settings.Scoring = *e.rules
	}
	return &paper.Plan{
		Night: doc.Paper(), Courts: doc.Courts, Entries: doc.Entries(), Same: e.same,
		Open: session.OpenNight{Name: "By paper", Settings: settings, Courts: min(len(doc.Courts), session.MaxCourts)},
	}, nil
}
