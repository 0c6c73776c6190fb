package spreadsheet

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"iter"
	"strings"
	"unicode"
)

// Layout is what a table must look like.
type Layout struct {
	The, Is, Has string // how messages speak of it: "the games", "are", "have"
	Columns      []Column
	Quiet        []string // headings that this program writes and does not read: nobody needs to be told
	Header       string   // a header to show to whoever has none
	List         string   // the column that a plain list without a header is, empty if it must have one
	MaxMiB       int      // how large a file may be
}

// Table is a table that was read.
type Table struct {
	// Notes say, a sentence each, what whoever reads the table must know to see that it was read rightly:
	// how its letters were written, what stood for which column, and what was not used.
	Notes []string

	layout Layout
	header []string // as it stands in the file, nil for a list

	delimiter rune // of the columns, 0 for a list
	at        map[string]int
	rows      iter.Seq2[Row, error]
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

// Read reads a table that a spreadsheet has saved: CSV in UTF-8, UTF-16 or Windows-1252, with line ends of any
// kind, whose columns are parted by commas, semicolons or tabs and stand in any order below a header; or, where
// the layout allows it, a plain list without a header. What the table is not is said in the error.
func (l Layout) Read(r io.Reader) (*Table, error) {
	data, err := l.load(r)
	if err != nil {
		return nil, err
	}
	if err := refuseWorkbook(data); err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", l.The, err)
	}
	text, written, err := decode(data)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", l.The, err)
	}
	t := &Table{layout: l}
	if err := t.open(text); err != nil {
		return nil, err
	}
	if written != "" {
		t.Notes = append([]string{"read as " + written + examples(text, t.delimiter)}, t.Notes...)
	}
	return t, nil
}

// open finds the header, or that there is none.
func (t *Table) open(text string) error {
	delimiter, text, line := announced(text)
	for header, rest, more := strings.Cut(text, "\n"); strings.TrimSpace(header) == ""; header, rest, more = strings.Cut(text, "\n") {
		if !more {
			return fmt.Errorf("%s %s empty: the first line must be a header such as %s", t.layout.The, t.layout.Is, t.layout.Header)
		}
		text, line = rest, line+1
	}
	first, _, _ := strings.Cut(text, "\n")
	if delimiter == 0 {
		known := 0
		if delimiter, known = t.layout.delimiter(first); known == 0 && t.list(text, line) {
			return nil
		}
	}
	t.delimiter = delimiter
	in := newReader(text, delimiter)
	var err error
	if t.header, err = in.Read(); err != nil {
		return t.noCSV(err, line)
	}
	if t.at, t.Notes, err = t.layout.places(t.header); err != nil {
		return err
	}
	t.rows = func(yield func(Row, error) bool) {
		for {
			row, err := t.next(in, line)
			if errors.Is(err, io.EOF) || !yield(row, err) || err != nil {
				return
			}
		}
	}
	return nil
}

// Rows gives the rows below the header, once. They end after the first error.
func (t *Table) Rows() iter.Seq2[Row, error] { return t.rows }

// Has tells whether the table has a column.
func (t *Table) Has(column string) bool { _, ok := t.at[column]; return ok }

// next is the next row that has anything in it: spreadsheets write the empty ones below a table too.
func (t *Table) next(in *csv.Reader, before int) (Row, error) {
	cells, err := in.Read()
	for err == nil && strings.TrimSpace(strings.Join(cells, "")) == "" {
		cells, err = in.Read()
	}
	if errors.Is(err, io.EOF) {
		return Row{}, io.EOF
	}
	if err != nil {
		return Row{}, t.noCSV(err, before)
	}
	line, _ := in.FieldPos(0)
	return Row{before + line, cells, t.at}, nil
}

// noCSV says in words what the reader of CSV found wrong. What it can find in a text is always about quotation
// marks.
func (t *Table) noCSV(err error, before int) error {
	var wrong *csv.ParseError
	if !errors.As(err, &wrong) {
		return fmt.Errorf("%s %s no CSV: %w", t.layout.The, t.layout.Is, err)
	}
	return fmt.Errorf("%s %s no CSV: the quotation mark on line %d is not closed, or stands within a cell: take it out, or write it twice in a cell that is quoted",
		t.layout.The, t.layout.Is, before+wrong.StartLine)
}

// examples are some cells with letters that a wrong guess would have spoilt.
func examples(text string, delimiter rune) string {
	var out []string
	for cell := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == '\n' || r == '"' || r == delimiter }) {
		if strings.IndexFunc(cell, func(r rune) bool { return r > unicode.MaxASCII }) < 0 {
			continue
		}
		if out = append(out, strings.TrimSpace(cell)); len(out) == 3 {
			break
		}
	}
	if len(out) == 0 {
		return ""
	}
	return ": " + strings.Join(out, ", ")
}
