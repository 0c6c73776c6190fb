package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
)

// readPlan reads a rotation that must be a valid one.
func readPlan(cmd *cobra.Command, path string) (rotation.Document, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return rotation.Document{}, err
	}
	defer in.Close()
	doc, err := rotation.Read(in)
	if err != nil {
		return doc, err
	}
	p, rounds, err := doc.Problem()
	if err != nil {
		return doc, fmt.Errorf("invalid rotation: %w", err)
	}
	if faults := scheduler.Audit(p, rounds); len(faults) > 0 {
		return doc, refuse(cmd, faults)
	}
	return doc, nil
}
