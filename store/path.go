package store

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/adrg/xdg"
)

// DefaultPath is where the club file lives when nobody names another: club.qdb in the
// folder quadrille of the user's data folder, as the XDG base directory specification places it.
// It creates nothing.
func DefaultPath() (string, error) {
	// Without a home the library would answer with a folder of the whole machine.
	_, homeless := os.UserHomeDir()
	if xdg.DataHome == "" || homeless != nil && !filepath.IsAbs(os.Getenv("XDG_DATA_HOME")) {
		return "", fmt.Errorf("this system names no folder for your data (HOME is not set): name the club file with --data")
	}
	return filepath.Join(xdg.DataHome, "quadrille", "club.qdb"), nil
}
