package main

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newDemo opens the desk on an invented night.
func newDemo() *cobra.Command {
	var test bool
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Open the desk on an invented night",
		Long: `Opens the desk on an invented night of 18 people and 4 courts. Nothing of it is kept. With
--selftest no screen opens: a small night is played on a file of its own, drawn and looked over, which
shows in a moment that the program works on this computer.`,
		Example: `  quadrille demo
  quadrille demo --selftest`,
		Args: nothing,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if test {
				return selftest(cmd)
			}
			if err := needTerminal("the desk"); err != nil {
				return err
			}
			folder, err := os.MkdirTemp("", "quadrille-demo-")
			if err != nil {
				return err
			}
			defer os.RemoveAll(folder)
			kept, err := store.Open(filepath.Join(folder, "demo.qdb"), store.CreatedBy(buildVersion()))
			if err != nil {
				return err
			}
			desk, err := session.NewDesk(kept, time.Now, newPersonID)
			if err == nil {
				desk.CountBy(uptime)
				err = session.OpenDemo(desk)
			}
			if err == nil {
				_, err = showDesk(cmd, desk, nil)
			}
			return errors.Join(err, kept.Close())
		},
	}
	cmd.Flags().BoolVar(&test, "selftest", false, "play, draw and check a small night without a terminal")
	return cmd
}
