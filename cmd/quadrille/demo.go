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
	return &cobra.Command{
		Use:     "demo",
		Short:   "Open the desk on an invented night",
		Long:    "Opens the desk on an invented night of 18 people and 4 courts. Nothing of it is kept.",
		Example: "  quadrille demo",
		Args:    nothing,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := needTerminal(); err != nil {
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
}
