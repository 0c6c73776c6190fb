package design

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// load reads one of the files of outside check values.
func load(t *testing.T, name string, into any) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}
