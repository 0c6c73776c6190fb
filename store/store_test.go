package store_test

import (
	"path/filepath"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

func TestRecordsOutliveTheProcess(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club", "club.qdb")
	s, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	r := session.Record{Seq: 1, Action: 1, Time: time.UnixMilli(1).UTC(), Kind: "NightOpened", Version: 1, Payload: []byte("{}")}
	if err := s.Append([]session.Record{r}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s, err = store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for got, err := range s.Records(1) {
		if err != nil || got.Kind != r.Kind || !got.Time.Equal(r.Time) {
			t.Fatal(got, err)
		}
	}
	if s.Last() != 1 {
		t.Fatal(s.Last())
	}
}
