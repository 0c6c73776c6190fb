package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
)

// writeTo writes to a new file, whole or not at all, or to the standard output for "" and "-".
func writeTo(cmd *cobra.Command, path string, write func(io.Writer) error) error {
	if path == "" || path == "-" {
		return write(cmd.OutOrStdout())
	}
	if err := mustBeNew(path); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".quadrille-*") // readable by its owner alone
	if err != nil {
		return notWritten(path, err)
	}
	if err := errors.Join(write(f), f.Sync(), f.Close()); err != nil {
		return notWritten(path, errors.Join(err, os.Remove(f.Name())))
	}
	return notWritten(path, os.Rename(f.Name(), path))
}

// notWritten says in words why a file could not be written. An error that is not about the file stays
// as it is.
func notWritten(path string, err error) error {
	var file *fs.PathError
	var link *os.LinkError
	if errors.As(err, &file) || errors.As(err, &link) {
		return fmt.Errorf("%s cannot be written: %s", path, because(err))
	}
	return err
}

// mustBeNew keeps a slip of the keyboard from writing over a file.
func mustBeNew(path string) error {
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s is there already: name a new file, or remove that one first", path)
	}
	return nil
}

// throughFile lets make write a file of some name, or for "-" a temporary one, which then goes to the
// standard output as it is.
func throughFile(cmd *cobra.Command, name string, make func(path string) error) (err error) {
	if name != "-" {
		return make(name)
	}
	out := cmd.OutOrStdout()
	if screen, ok := unwrapped(out).(*os.File); ok && term.IsTerminal(screen.Fd()) {
		return usagef("the standard output is a terminal, and a club file is no text: name a file, or add > FILE")
	}
	folder, err := os.MkdirTemp("", "quadrille-")
	if err != nil {
		return notWritten(os.TempDir(), err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	path := filepath.Join(folder, "club.qdb")
	if err := make(path); err != nil {
		return err
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(out, f)
	return err
}

// calledFile is how a file is called in a sentence.
func calledFile(path string) string {
	if path == "-" {
		return "the standard output"
	}
	return path
}
