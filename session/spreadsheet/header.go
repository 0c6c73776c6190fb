package spreadsheet

import (
	"fmt"
	"slices"
	"strings"
)

// Column is a column that a table may have.
type Column struct {
	Name     string
	Words    []string // other headings that people give it
	Required bool
	Instead  []string // columns of which one will do where a required one is missing
}

// heading is a heading as it is compared: in lower case, with single blanks between words.
func heading(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r == ' ' || r == '_' || r == '-' || r == '.' || r == '\u00a0' || r == '\t'
	}), " ")
}

// means is the column that a heading names, by its own name or by another word; empty for none.
func (l Layout) means(text string) string {
	h := heading(text)
	for _, c := range l.Columns {
		if h == heading(c.Name) || slices.Contains(c.Words, h) {
			return c.Name
		}
	}
	return ""
}

// places finds the columns of a header. A heading that is the name of a column goes before other words for
// it. The notes say which words were taken for what, and which columns were not used.
func (l Layout) places(header []string) (at map[string]int, notes []string, err error) {
	at = map[string]int{}
	words := map[string][]int{}
	var unused []string
	for i, text := range header {
		column := l.means(text)
		switch {
		case column == "":
			if h := heading(text); h != "" && !slices.Contains(l.Quiet, h) {
				unused = append(unused, strings.TrimSpace(text))
			}
		case heading(text) != heading(column):
			words[column] = append(words[column], i)
		default:
			if _, twice := at[column]; twice {
				return nil, nil, fmt.Errorf("%s %s the column %s twice", l.The, l.Has, column)
			}
			at[column] = i
		}
	}
	var taken []string
	for _, c := range l.Columns {
		_, named := at[c.Name]
		switch places := words[c.Name]; {
		case len(places) > 0 && named:
			for _, i := range places {
				unused = append(unused, strings.TrimSpace(header[i]))
			}
		case len(places) > 1:
			return nil, nil, fmt.Errorf("both %s and %s could be the column %s: rename one of them to %s",
				strings.TrimSpace(header[places[0]]), strings.TrimSpace(header[places[1]]), c.Name, c.Name)
		case len(places) == 1:
			at[c.Name] = places[0]
			taken = append(taken, fmt.Sprintf("%s for %s", strings.TrimSpace(header[places[0]]), c.Name))
		}
	}
	if len(taken) > 0 {
		notes = append(notes, "taken: the column "+strings.Join(taken, ", "))
	}
	if len(unused) > 0 {
		notes = append(notes, "not used: "+counted(unused))
	}
	return at, notes, l.missing(at)
}

func counted(columns []string) string {
	if len(columns) == 1 {
		return "the column " + columns[0]
	}
	return "the columns " + strings.Join(columns, ", ")
}

// missing names the first column that must be there and is not.
func (l Layout) missing(at map[string]int) error {
	for _, c := range l.Columns {
		_, ok := at[c.Name]
		ok = ok || slices.ContainsFunc(c.Instead, func(other string) bool { _, is := at[other]; return is })
		if c.Required && !ok {
			return fmt.Errorf("%s %s no column %s: the first line must be a header such as %s", l.The, l.Has, c.Name, l.Header)
		}
	}
	return nil
}

// Called is how messages speak of a column: by its name, with the heading that the table has for it.
func (t *Table) Called(column string) string {
	i, ok := t.at[column]
	if !ok || i >= len(t.header) || heading(t.header[i]) == heading(column) {
		return column
	}
	return fmt.Sprintf("%s (the column %s)", column, strings.TrimSpace(t.header[i]))
}
