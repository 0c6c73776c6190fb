package spreadsheet

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"
)

// people is a layout as small as one can be.
var people = Layout{
	The: "the people", Is: "are", Has: "have", Header: "name,age", MaxMiB: 1,
	Columns: []Column{{Name: "name", Required: true, Words: []string{"player"}}, {Name: "age", Words: []string{"years", "old"}}},
	Quiet:   []string{"id"},
}

// list is people, who may stand in a plain list.
func list() Layout {
	l := people
	l.List = "name"
	return l
}

// cells reads a table and joins what it has.
func cells(l Layout, r io.Reader) (string, []string, error) {
	table, err := l.Read(r)
	if err != nil {
		return "", nil, err
	}
	var got []string
	for row, err := range table.Rows() {
		if err != nil {
			return "", nil, err
		}
		got = append(got, fmt.Sprintf("%d:%s=%s", row.Line, row.Cell("name"), row.Cell("age")+row.Cell("shoe")))
	}
	return strings.Join(got, " "), table.Notes, nil
}

func TestTablesAsSpreadsheetsSaveThem(t *testing.T) {
	for name, c := range map[string]struct {
		text, want string
		notes      []string
	}{
		"commas":                {"name,age\nAda,30\n\nBen,\n", "2:Ada=30 4:Ben=", nil},
		"semicolons":            {"name;age\nAda;30\nBen\n", "2:Ada=30 3:Ben=", nil},
		"semicolons, one comma": {"name;age;size, shoe\nAda;30;7\n", "2:Ada=30", []string{"not used: the column size, shoe"}},
		"tabs, an empty cell":   {"id\tname\tage\n\t\tAda\n7\tBen\t3\n", "2:=Ada 3:Ben=3", nil},
		"a line that says so":   {"sep=|\nname|age\nAda|30\n", "3:Ada=30", nil},
		"said in quotes":        {"\"sep=;\"\r\nname;age\r\nAda;30\r\n", "3:Ada=30", nil},
		"none that says so":     {"sep=,name,age\nx,Ada,30\n", "2:Ada=30", []string{"not used: the column sep="}},
		"old line ends":         {"name,age\rAda,30\rBen,\"4\r5\"\r", "2:Ada=30 3:Ben=4\n5", nil},
		"Windows line ends":     {"name,age\r\nAda,30\r\n", "2:Ada=30", nil},
		"empty rows at the end": {"name,age\nAda,30\n,\n , \n", "2:Ada=30", nil},
		"blank lines before":    {"\n\nname,age\nAda,30\n", "4:Ada=30", nil},
		"a mark, a column":      {"\xef\xbb\xbfshoe, AGE ,Name\n7,30,Ada\n8,,Ben\n", "2:Ada=30 3:Ben=", []string{"not used: the column shoe"}},
		"other words":           {"PLAYER,Years,Shoe,Hat\nAda,30,,\n", "2:Ada=30", []string{"taken: the column PLAYER for name, Years for age", "not used: the columns Shoe, Hat"}},
		"a word and the name":   {"name,player\nAda,x\n", "2:Ada=", []string{"not used: the column player"}},
		"Windows-1252":          {"name,age\nJ\xfcrgen M\xfcller,30\nZo\xeb\x80,\n", "2:Jürgen Müller=30 3:Zoë€=", []string{"read as Windows-1252: Jürgen Müller, Zoë€"}},
		"a comma in a cell":     {"name;age\nM\xfcller, Hans;30\n", "2:Müller, Hans=30", []string{"read as Windows-1252: Müller, Hans"}},
		"UTF-16":                {"\xff\xfen\x00a\x00m\x00e\x00\r\x00\n\x00\xfc\x00", "2:ü=", []string{"read as UTF-16: ü"}},
		"UTF-16, big end":       {"\xfe\xff\x00n\x00a\x00m\x00e\x00\n\x00A", "2:A=", []string{"read as UTF-16"}},
		"UTF-16 without a mark": {"n\x00a\x00m\x00e\x00\n\x00\xfc\x00", "2:ü=", []string{"read as UTF-16: ü"}},
		"nobody":                {"name,age\n", "", nil},
	} {
		t.Run(name, func(t *testing.T) {
			got, notes, err := cells(people, strings.NewReader(c.text))
			if err != nil || got != c.want || strings.Join(notes, "; ") != strings.Join(c.notes, "; ") {
				t.Errorf("%q, %q, %v; want %q, %q", got, notes, err, c.want, c.notes)
			}
		})
	}
}

func TestPlainLists(t *testing.T) {
	for text, want := range map[string]string{
		"Ada Alder\nBen Brook\n":                "1:Ada Alder= 2:Ben Brook=",
		"1. Ada Alder\n2) Ben\n\n- Cy O'Dell\n": "1:Ada Alder= 2:Ben= 4:Cy O'Dell=",
		"Alder, Ada\n\"Brook, Ben\"\n":          "1:Alder, Ada= 2:Brook, Ben=",
		"J. R. Noll (guest)\n👩\u200d👧 Vale":     "1:J. R. Noll (guest)= 2:👩\u200d👧 Vale=",
	} {
		got, notes, err := cells(list(), strings.NewReader(text))
		if err != nil || got != want || strings.Join(notes, "") != "no header: each line was taken for a name" {
			t.Errorf("%q: %q, %q, %v", text, got, notes, err)
		}
	}
	for _, text := range []string{
		"Ada,Ben,Cy\nDi,Ed,Flo\n", "Ada\nBen, Cy\n", "Ada\n12\n", "Ada;x\n", "ada@example.org\n", "See the list below:\nAda\n",
		"This is a letter to the members of the club\n",
	} {
		if got, _, err := cells(list(), strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), "no column name") {
			t.Errorf("%q was taken for the list %q, %v", text, got, err)
		}
	}
}

func TestWhatIsNoTableSaysSo(t *testing.T) {
	for text, want := range map[string]string{
		"":                        "the people are empty: the first line must be a header such as name,age",
		"\n \n":                   "the people are empty",
		"age\n3\n":                "the people have no column name",
		"Ada\nBen\n":              "the people have no column name",
		"name,name\nA,B\n":        "the people have the column name twice",
		"name,years,old\nA,B\n":   "both years and old could be the column age: rename one of them to age",
		"name\nBen\n\"Ada\n":      "the people are no CSV: the quotation mark on line 3 is not closed",
		"sep=;\nname\nA\"b\"\n":   "the quotation mark on line 3",
		"name\nA\x00b\n":          "the people cannot be read: it has bytes that no text has",
		"name\nJos\u00e9\nM\xfc":  "line 3 has letters that are not written in UTF-8",
		markUTF8 + "name\nM\xfc":  "line 2 has letters that are not written in UTF-8",
		"name\nM\x81":             "letters are written in a way that is not known here",
		markUTF32LE + "n\x00\x00": "letters are written in a way that is not known here",
		archive + "…xl/workbook":  "it is an .xlsx workbook: open it in your spreadsheet program and save it as CSV",
		archive + "mimetypeapplication/vnd.oasis.opendocument.spreadsheet": "it is an .ods workbook",
		compound + "\x00\x00":                      "it is an .xls workbook",
		"%PDF-1.7":                                 "it is a PDF document",
		"<!DOCTYPE html><table>":                   "it is a web page",
		"name\n" + strings.Repeat("x", 70_000):     "line 2 of the people is longer than 64 KiB",
		strings.Repeat("x", 70_000):                "line 1 of the people is longer than 64 KiB",
		"name\n" + strings.Repeat("Ada\n", 300000): "the people are larger than 1 MiB, which is the most",
	} {
		got, _, err := cells(people, strings.NewReader(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40q gives %.40q and %v, want %q", text, got, err, want)
		}
	}
}

// endless never ends, and counts what is taken of it.
type endless struct {
	piece string
	taken int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.piece[(e.taken+i)%len(e.piece)]
	}
	e.taken += len(p)
	return len(p), nil
}

// What is too large is refused in a memory that does not grow with it, and a file even before it is read.
func TestWhatIsTooLargeTakesNoMemory(t *testing.T) {
	for name, c := range map[string]struct {
		piece string
		most  int
	}{
		"a line without end": {"x", 128 << 10},
		"rows without end":   {"Ada Alder,30\n", 2 << 20},
	} {
		e := &endless{piece: c.piece}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _, err := cells(people, e)
		runtime.ReadMemStats(&after)
		if err == nil || e.taken > c.most || after.TotalAlloc-before.TotalAlloc > 16<<20 {
			t.Errorf("%s: %v after %d bytes with %d allocated", name, err, e.taken, after.TotalAlloc-before.TotalAlloc)
		}
	}
	path := filepath.Join(t.TempDir(), "big.csv")
	if err := errors.Join(os.WriteFile(path, nil, 0o600), os.Truncate(path, 100<<20)); err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, _, err = cells(people, f); err == nil || !strings.Contains(err.Error(), "larger than 1 MiB") {
		t.Errorf("100 MiB: %v", err)
	}
	if at, err := f.Seek(0, io.SeekCurrent); err != nil || at != 0 {
		t.Errorf("%d bytes were read of a file that is refused by its size, %v", at, err)
	}
}

// A table may be just as large as the limit, and no byte larger.
func TestATableAsLargeAsTheLimit(t *testing.T) {
	text := "name,age\n" + strings.Repeat("Ada Alder,30\n", 9000)
	text += strings.Repeat("\n", 1<<20-len(text))
	if _, _, err := cells(people, strings.NewReader(text)); err != nil && strings.Contains(err.Error(), "larger than") {
		t.Errorf("just 1 MiB: %v", err)
	}
	if _, _, err := cells(people, strings.NewReader(text+"\n")); err == nil || !strings.Contains(err.Error(), "larger than 1 MiB") {
		t.Errorf("a byte more: %v", err)
	}
}

// Whatever bytes there are, they are refused in words, or read as text with lines that count up.
func FuzzRead(f *testing.F) {
	f.Add([]byte("name,age\nAda,30\n"))
	f.Add([]byte("sep=;\r\nname;age\r\nJ\xfcrgen;3\r\n"))
	f.Add([]byte("\xff\xfen\x00a\x00m\x00e\x00\n\x00\xfc\x00"))
	f.Add([]byte("1. Ada\n2. Ben\n"))
	f.Add([]byte("name\tage\n\"a\tb\"\t\n"))
	f.Add([]byte(archive + "xl/"))
	f.Fuzz(func(t *testing.T, data []byte) {
		table, err := list().Read(strings.NewReader(string(data)))
		if err != nil {
			if !strings.Contains(err.Error(), "the people") && !strings.Contains(err.Error(), "could be the column") {
				t.Fatalf("error %v does not say what it is about", err)
			}
			return
		}
		line := 0
		for row, err := range table.Rows() {
			if err != nil {
				break
			}
			if row.Line <= line {
				t.Fatalf("row %d after row %d", row.Line, line)
			}
			if line = row.Line; !utf8.ValidString(row.Cell("name") + row.Cell("age")) {
				t.Fatalf("row %d is no text: %q", row.Line, row.Cell("name"))
			}
		}
	})
}

// Bytes of any kind become text, whose lines end in one way.
func FuzzDecode(f *testing.F) {
	f.Add([]byte("a\r\nb\rc\n"))
	f.Add([]byte("\xfe\xff\x00a\xd8\x00"))
	f.Add([]byte("J\xfcrgen"))
	f.Fuzz(func(t *testing.T, data []byte) {
		text, _, err := decode(data)
		if err == nil && (!utf8.ValidString(text) || strings.Contains(text, "\r")) {
			t.Fatalf("%q came to %q", data, text)
		}
	})
}
