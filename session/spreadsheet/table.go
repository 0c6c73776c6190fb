package spreadsheet

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"
)

// Layout is what a table must look like.
type Layout struct {
	The, Is, Has string   // how messages speak of it: "the games", "are", "have"
	Columns      []string // the names that the header may use; any other column is left alone
	Required     []string // of these, the ones that the header must have
	Header       string   // a header to show to whoever has none
}

// Row is one line of a table.
type Row struct {
	Line  int // in the file, from 1
	cells []string
	at    map[string]int
}

// Cell is the text of a column without the white space around it, empty where the row or the table
// has no such column.
func (r Row) Cell(column string) string {
	if i, ok := r.at[column]; ok && i < len(r.cells) {
		return strings.TrimSpace(r.cells[i])
	}
	return ""
}

// Rows reads a table that a spreadsheet has saved: CSV with a header, whose columns stand in any
// order and are parted by commas, or by semicolons if the header has no comma. A byte order mark is
// skipped. Rows end after the first error.
func (l Layout) Rows(r io.Reader) iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		in, at, err := l.open(r)
		for err == nil {
			var row Row
			if row, err = l.next(in, at); err == nil && !yield(row, nil) {
				return
			}
		}
		if !errors.Is(err, io.EOF) {
			yield(Row{}, err)
		}
	}
}

// open reads the header.
func (l Layout) open(r io.Reader) (*csv.Reader, map[string]int, error) {
	in, err := reader(r)
	if err != nil {
		return nil, nil, err
	}
	header, err := in.Read()
	switch {
	case errors.Is(err, io.EOF):
		return nil, nil, fmt.Errorf("%s %s empty: the first line must be a header such as %s", l.The, l.Is, l.Header)
	case err != nil:
		return nil, nil, l.noCSV(err)
	}
	at, err := l.places(header)
	return in, at, err
}

func (l Layout) next(in *csv.Reader, at map[string]int) (Row, error) {
	cells, err := in.Read()
	if errors.Is(err, io.EOF) {
		return Row{}, io.EOF
	}
	if err != nil {
		return Row{}, l.noCSV(err)
	}
	line, _ := in.FieldPos(0)
	return Row{line, cells, at}, nil
}

func (l Layout) noCSV(err error) error { return fmt.Errorf("%s %s no CSV: %w", l.The, l.Is, err) }

// places finds the columns of a header.
func (l Layout) places(header []string) (map[string]int, error) {
	at := map[string]int{}
	for i, h := range header {
		h = strings.ToLower(strings.TrimSpace(h))
		if !slices.Contains(l.Columns, h) {
			continue
		}
		if _, twice := at[h]; twice {
			return nil, fmt.Errorf("%s %s the column %s twice", l.The, l.Has, h)
		}
		at[h] = i
	}
	for _, c := range l.Required {
		if _, ok := at[c]; !ok {
			return nil, fmt.Errorf("%s %s no column %s: the first line must be a header such as %s", l.The, l.Has, c, l.Header)
		}
	}
	return at, nil
}

// reader sees from the first line what parts the columns, and skips the mark that some
// spreadsheets put before UTF-8 text.
func reader(r io.Reader) (*csv.Reader, error) {
	text := bufio.NewReaderSize(r, 4096)
	if mark, err := text.Peek(3); err == nil && string(mark) == "\xef\xbb\xbf" {
		if _, err := text.Discard(3); err != nil {
			return nil, err
		}
	}
	start, err := text.Peek(512)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	first, _, _ := strings.Cut(string(start), "\n")
	in := csv.NewReader(text)
	if strings.Contains(first, ";") && !strings.Contains(first, ",") {
		in.Comma = ';'
	}
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = true
	return in, nil
}
