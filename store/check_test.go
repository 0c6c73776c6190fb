package store

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestAFileInUseIsCheckedWithoutBbolt and says so; closed, bbolt looks at it too, and there is nothing to tell.
func TestAFileInUseIsCheckedWithoutBbolt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, season(20))
	r, err := Check(path)
	if want := fmt.Sprintf("the file is in use (process %d)", os.Getpid()); err != nil || !r.Sound() || len(r.Notes) != 1 || !strings.Contains(r.Notes[0], want) {
		t.Errorf("open: %+v, %v", r, err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if r, err := Check(path); err != nil || !r.Sound() || len(r.Notes) > 0 {
		t.Errorf("closed: %+v, %v", r, err)
	}
}
