// Package events reads what `quadrille export` wrote: all records of a club as JSON Lines.
package events

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"club/quadrille/session"
	"club/quadrille/session/jsontext"
)

// The most that an export may hold. They keep a broken file from filling the memory.
const (
	MaxRecords = 2_000_000
	maxLine    = 8 << 20
)

// Read reads an export: a first line that names the form, then one record a line, numbered from 1
// without gaps. Where the first line says how many there are, just so many must follow. Every error names
// the line.
func Read(r io.Reader) ([]session.Record, error) {
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, maxLine)
	count, err := head(lines)
	if err != nil {
		return nil, err
	}
	var out []session.Record
	for number := 2; lines.Scan(); number++ {
		if len(lines.Bytes()) == 0 {
			continue
		}
		var record session.Record
		if err := json.Unmarshal(lines.Bytes(), &record); err != nil {
			return nil, fmt.Errorf("events line %d is no event: %s", number, jsontext.Why(err))
		}
		if want := uint64(len(out)) + 1; record.Seq != want {
			return nil, fmt.Errorf("events line %d has the number %d where %d belongs: the file is not whole", number, record.Seq, want)
		}
		if len(out) == MaxRecords {
			return nil, fmt.Errorf("the export has more than %d events", MaxRecords)
		}
		out = append(out, record)
	}
	if err := lines.Err(); err != nil {
		return nil, unread(err, len(out)+2)
	}
	if count > 0 && uint64(len(out)) != count {
		return nil, fmt.Errorf("the file has %d of %d events: it was not written to its end, or cut", len(out), count)
	}
	return out, nil
}

// unread says why a line could not be read.
func unread(err error, line int) error {
	if errors.Is(err, bufio.ErrTooLong) {
		return fmt.Errorf("events line %d is longer than %d MiB: this is no export of events", line, maxLine>>20)
	}
	return fmt.Errorf("events line %d cannot be read: %w", line, err)
}

// head reads the first line, and how many records it says there are, 0 where it does not.
func head(lines *bufio.Scanner) (count uint64, err error) {
	var form struct {
		Quadrille string `json:"quadrille"`
		Format    int    `json:"format"`
		Records   uint64 `json:"records"`
	}
	if !lines.Scan() {
		if err := lines.Err(); err != nil {
			return 0, unread(err, 1)
		}
		return 0, fmt.Errorf("the export is empty")
	}
	if err := json.Unmarshal(lines.Bytes(), &form); err != nil || form.Quadrille != "events" {
		return 0, fmt.Errorf("this is no export of events: its first line must be as \"quadrille export\" writes it")
	}
	if form.Format > session.ExportFormat {
		return 0, fmt.Errorf("this export was written by a newer Quadrille (form %d, this one knows %d): use the newer program",
			form.Format, session.ExportFormat)
	}
	return form.Records, nil
}
