//go:build unix && !darwin

package store

import (
	"strings"
	"testing"

	"github.com/adrg/xdg"
)

// TestTheClubFileIsInTheFolderForData: the one that is named, or that of the home; without either, nowhere.
func TestTheClubFileIsInTheFolderForData(t *testing.T) {
	t.Cleanup(xdg.Reload)
	for _, c := range []struct{ home, data, want string }{
		{"/home/ada", "", "/home/ada/.local/share/quadrille/club.qdb"},
		{"/home/ada", "/mnt/data", "/mnt/data/quadrille/club.qdb"},
		{"", "/mnt/data", "/mnt/data/quadrille/club.qdb"},
		{"", "", ""},
		{"", "data", ""},
	} {
		t.Setenv("HOME", c.home)
		t.Setenv("XDG_DATA_HOME", c.data)
		xdg.Reload()
		got, err := DefaultPath()
		if got != c.want || (err == nil) != (c.want != "") || err != nil && !strings.Contains(err.Error(), "name the club file with --data") {
			t.Errorf("home %q, data %q: %q, %v", c.home, c.data, got, err)
		}
	}
}
