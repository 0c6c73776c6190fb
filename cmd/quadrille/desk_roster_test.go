package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestARosterThatIsNotThereIsRefusedInWords, not in those of the system.
func TestARosterThatIsNotThereIsRefusedInWords(t *testing.T) {
	path := filepath.Join(t.TempDir(), "roster.csv")
	_, err := readRosterFile(path)
	if err == nil || strings.Contains(err.Error(), "stat") || !strings.Contains(err.Error(), path+": there is no such file") {
		t.Errorf("a roster that is not there: %v", err)
	}
}
