package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"

	"club/quadrille/tui"
	"club/quadrille/tui/config"
)

// settingsFile is where the desk's settings are: theme, glyphs, bell and keys.
func settingsFile() string { return filepath.Join(xdg.ConfigHome, "quadrille", "desk.toml") }

// maxSettings is the largest file that is read as settings, in bytes.
const maxSettings = 64 << 10

// deskSettings are the settings of the desk, and what is wrong with their file. Without a file all is as usual.
func deskSettings() (config.Config, []error) {
	text, err := readSettingsFile(settingsFile())
	c, wrong := config.Parse(text, tui.Keys())
	if err != nil {
		wrong = append(wrong, err)
	}
	for i, err := range wrong {
		wrong[i] = fmt.Errorf("desk.toml, %w", err)
	}
	return c, wrong
}

func readSettingsFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxSettings+1))
	switch {
	case err != nil:
		return nil, err
	case len(text) > maxSettings:
		return nil, fmt.Errorf("which is larger than %d KiB: not read", maxSettings>>10)
	}
	return text, nil
}

// newSettings prints the settings of the desk.
func newSettings() *cobra.Command {
	return &cobra.Command{
		Use:   "settings",
		Short: "Print the desk's settings, and check their file",
		Long: `Prints the settings that the desk opens with, in the form of their file, desk.toml,
with what is allowed: a file to begin with. What is wrong with the file is said
with its line, and the exit code is 1; the desk opens all the same, without what
is wrong. The file may say as little as one line.`,
		Example: "  quadrille settings\n  quadrille settings > my-desk.toml",
		Args:    nothing,
		RunE: func(cmd *cobra.Command, _ []string) error {
			c, wrong := deskSettings()
			if _, err := fmt.Fprintf(cmd.OutOrStdout(), "# %s\n%s", settingsFile(), c.Text()); err != nil {
				return err
			}
			return errors.Join(wrong...)
		},
	}
}
