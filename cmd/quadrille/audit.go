package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
)

// newAudit builds the command that judges a rotation.
func newAudit() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "audit FILE",
		Short: "Judge any rotation: valid or not, and how fair",
		Long: `Judges a rotation in the form that "quadrille plan --json" prints, wherever it was made, and
prints its fairness certificate. It says which courts stood empty, and how many more games were
possible. An invalid rotation is refused: each fault is named with its round, court and person.
FILE is - for the standard input.`,
		Example: `  quadrille audit rotation.json
  quadrille plan --players 16 --courts 4 --rounds 5 --json | quadrille audit -`,
		Args: takes(1, 1, "one FILE"),
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the certificate as JSON")
	cmd.ValidArgsFunction = first(filesOf("json"))
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		in, err := openInput(cmd, args[0])
		if err != nil {
			return err
		}
		defer in.Close()
		doc, err := rotation.Read(in)
		if err != nil {
			return err
		}
		p, rounds, err := doc.Problem()
		if err != nil {
			return fmt.Errorf("invalid rotation: %w", err)
		}
		if faults := scheduler.Audit(p, rounds); len(faults) > 0 {
			return refuse(cmd, faults)
		}
		certificate, idle := scheduler.Certify(p, rounds), scheduler.IdleCourts(p, rounds)
		if asJSON {
			return printJSON(cmd.OutOrStdout(), judged{certificate, emptyCourts(p, idle)})
		}
		fmt.Fprintf(cmd.OutOrStdout(), "A valid rotation: %s, %s, %s, %s.\n\n", doc.Format, counted(len(p.People), "person", "people"),
			counted(len(p.Courts), "court", "courts"), counted(len(rounds), "round", "rounds"))
		more, err := printIdle(cmd.OutOrStdout(), p, idle)
		if err != nil {
			return err
		}
		return printCertificate(cmd.OutOrStdout(), certificate, more)
	}
	return cmd
}

// refuse tells what is wrong with a rotation, a fault a line.
func refuse(cmd *cobra.Command, faults []scheduler.Violation) error {
	const told = 40
	for _, f := range faults[:min(told, len(faults))] {
		note(cmd, "%s", f.Text)
	}
	if more := len(faults) - told; more > 0 {
		note(cmd, "and %d more", more)
	}
	return fmt.Errorf("this is no valid rotation: %s", counted(len(faults), "fault", "faults"))
}
