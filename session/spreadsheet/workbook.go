package spreadsheet

import (
	"bytes"
	"fmt"
)

// The first bytes of files that spreadsheets keep their own form in: the ZIP archive of .xlsx and .ods (PKWARE
// APPNOTE 4.3.7), and the compound file of .xls (MS-CFB 2.2).
const (
	archive  = "PK\x03\x04"
	compound = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
)

func isArchive(data []byte) bool {
	return bytes.HasPrefix(data, []byte(archive)) || bytes.HasPrefix(data, []byte(compound))
}

// workbooks are the kinds of such files, by what their first bytes hold.
var workbooks = []struct{ begins, holds, name string }{
	{archive, "application/vnd.oasis.opendocument.spreadsheet", "an .ods workbook"},
	{archive, "xl/", "an .xlsx workbook"},
	{archive, "", "a workbook or another archive"},
	{compound, "", "an .xls workbook"},
	{"%PDF", "", "a PDF document"},
	{"<", "", "a web page or another document"},
	{"\x1f\x8b", "", "a compressed file"},
}

// refuseWorkbook says what a file is that is no text.
func refuseWorkbook(data []byte) error {
	for _, w := range workbooks {
		if bytes.HasPrefix(bytes.TrimLeft(data, " \r\n\t"), []byte(w.begins)) && bytes.Contains(data, []byte(w.holds)) {
			return fmt.Errorf("it is %s: open it in your spreadsheet program and save it as CSV", w.name)
		}
	}
	return nil
}

// IsTable tells from its first bytes that a file with bytes that no plain text has is a table all the same: a
// workbook, or a text in UTF-16.
func IsTable(start []byte) bool {
	return isArchive(start) || bytes.HasPrefix(start, []byte(markUTF16LE)) || bytes.HasPrefix(start, []byte(markUTF16BE)) ||
		wide(start[:len(start)&^1]) != nil
}
