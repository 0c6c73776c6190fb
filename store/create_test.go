package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// TestAFreshFileNeverTakesANameThatIsTaken, also where the disk knows no links.
func TestAFreshFileNeverTakesANameThatIsTaken(t *testing.T) {
	dir := t.TempDir()
	taken, free := filepath.Join(dir, "taken"), filepath.Join(dir, "free")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := linkNew(filepath.Join(dir, "none"), taken); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a name that is taken: %v", err)
	}
	if err := linkNew(filepath.Join(dir, "none"), free); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("nothing to name: %v", err)
	}
	if err := linkNew(taken, free); err != nil {
		t.Error(err)
	}
}
