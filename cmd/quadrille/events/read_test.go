package events

import (
	"bytes"
	"strings"
	"testing"

	"club/quadrille/session"
)

const first = `{"quadrille":"events","format":1}` + "\n"

const record = `{"seq":1,"action":1,"time":"2026-01-08T18:50:00Z","night":1,"kind":"NightClosed","version":1,"payload":{}}` + "\n"

func TestWhatExportWroteComesBack(t *testing.T) {
	records, err := Read(strings.NewReader(first + record + strings.Replace(record, `"seq":1`, `"seq":2`, 1)))
	if err != nil || len(records) != 2 {
		t.Fatalf("%d records, %v", len(records), err)
	}
	log := &session.MemoryLog{}
	if err := log.Append(records); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := session.ExportEvents(&out, log.Records(1)); err != nil {
		t.Fatal(err)
	}
	if want := first + record + strings.Replace(record, `"seq":1`, `"seq":2`, 1); out.String() != want {
		t.Errorf("%s\nis not\n%s", out.String(), want)
	}
}

func TestReadRefusesWithTheLine(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"nothing", "", "the export is empty"},
		{"something else", "{}\n", "no export of events"},
		{"a newer form", `{"quadrille":"events","format":9}`, "written by a newer Quadrille (form 9"},
		{"a lost end", `{"quadrille":"events","format":1,"records":2}` + "\n" + record, "the file has 1 of 2 events"},
		{"no event", first + "what\n", "events line 2 is no event"},
		{"an event missing", first + strings.Replace(record, `"seq":1`, `"seq":2`, 1), "events line 2 has the number 2 where 1 belongs"},
		{"a line without end", first + strings.Repeat("x", maxLine+1), "events line 2 is longer than 8 MiB"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read(strings.NewReader(tt.text))
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add(first + record)
	f.Add(first + "\n\n" + record)
	f.Add(`{"quadrille":"events"}` + "\n" + `{"seq":1,"time":null,"payload":[1]}`)
	f.Fuzz(func(t *testing.T, text string) {
		records, err := Read(strings.NewReader(text))
		if err != nil && records != nil {
			t.Fatal("records beside an error")
		}
		for i, r := range records {
			if r.Seq != uint64(i)+1 {
				t.Fatalf("record %d stands at place %d", r.Seq, i+1)
			}
		}
	})
}
