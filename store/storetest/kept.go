// Package storetest has a club file of November 2026 for tests of the store.
package storetest

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"io"
	"testing"
)

//go:embed kept.gz
var packed []byte

// Kept is a club file as this program wrote it then: 253 invented events with a snapshot, in pages of 4 KiB. Never write
// it anew: it shows that files of that make still open.
func Kept(t testing.TB) []byte {
	t.Helper()
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
