package store

import (
	"fmt"
	"path/filepath"

	"github.com/adrg/xdg"
)

// DefaultPath is where the club's data file lives when nobody names another: club.qdb in the
// folder quadrille of the user's data folder, as the XDG base directory specification places it.
// It creates nothing.
func DefaultPath() (string, error) {
	if xdg.DataHome == "" {
		return "", fmt.Errorf("this system names no folder for a user's data: name the file with --data")
	}
	return filepath.Join(xdg.DataHome, "quadrille", "club.qdb"), nil
}
