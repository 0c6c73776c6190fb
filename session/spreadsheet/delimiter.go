package spreadsheet

import (
	"encoding/csv"
	"strings"
	"unicode/utf8"
)

// delimiters are what may part the columns of a table.
var delimiters = []rune{',', ';', '\t'}

// announced reads the first line "sep=;" by which some spreadsheets say what parts the columns. It gives the
// rest of the text, and how many lines it took.
func announced(text string) (delimiter rune, rest string, lines int) {
	line, rest, _ := strings.Cut(text, "\n")
	line = strings.Trim(line, `" `)
	if len(line) < 5 || !strings.EqualFold(line[:4], "sep=") {
		return 0, text, 0
	}
	delimiter, size := utf8.DecodeRuneInString(line[4:])
	if strings.TrimSpace(line[4+size:]) != "" || delimiter == '"' || delimiter == utf8.RuneError {
		return 0, text, 0
	}
	return delimiter, rest, 1
}

// delimiter is what parts the columns of a table with this header: that by which most of them are known, and
// of several the one that makes most columns. Most is how many are known.
func (l Layout) delimiter(header string) (best rune, most int) {
	best, most = delimiters[0], -1
	columns := 0
	for _, d := range delimiters {
		cells, err := cellsOf(header, d)
		if err != nil {
			continue
		}
		known := 0
		for _, c := range cells {
			if l.means(c) != "" {
				known++
			}
		}
		if known > most || known == most && len(cells) > columns {
			best, most, columns = d, known, len(cells)
		}
	}
	return best, most
}

// cellsOf are the cells of one line.
func cellsOf(line string, delimiter rune) ([]string, error) {
	return newReader(line, delimiter).Read()
}

// newReader parts text into cells.
func newReader(text string, delimiter rune) *csv.Reader {
	in := csv.NewReader(strings.NewReader(text))
	in.Comma = delimiter
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = delimiter != '\t' // a tab is a leading space too, and would take empty cells along
	return in
}
