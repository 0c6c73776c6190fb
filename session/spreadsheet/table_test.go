package spreadsheet

import (
	"strings"
	"testing"
)

// people is a layout as small as one can be.
var people = Layout{The: "the people", Is: "are", Has: "have", Columns: []string{"name", "age"}, Required: []string{"name"}, Header: "name,age"}

func TestRowsAreFoundByTheirHeader(t *testing.T) {
	for name, text := range map[string]string{
		"commas":           "name,age\nAda,30\n\nBen,\n",
		"semicolons":       "name;age\nAda;30\nBen\n",
		"a mark, a column": "\xef\xbb\xbfshoe, AGE ,Name\n7,30,Ada\n8,,Ben\n",
	} {
		var got []string
		for row, err := range people.Rows(strings.NewReader(text)) {
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			got = append(got, row.Cell("name")+"="+row.Cell("age")+row.Cell("shoe"))
		}
		if strings.Join(got, " ") != "Ada=30 Ben=" {
			t.Errorf("%s: %q", name, got)
		}
	}
}

func TestWhatIsNoTableSaysSo(t *testing.T) {
	for text, want := range map[string]string{
		"":                 "the people are empty: the first line must be a header such as name,age",
		"age\n3\n":         "the people have no column name",
		"name,name\nA,B\n": "the people have the column name twice",
		"name\n\"Ada\n":    "the people are no CSV",
	} {
		rows := 0
		var last error
		for _, err := range people.Rows(strings.NewReader(text)) {
			if last = err; err == nil {
				rows++
			}
		}
		if last == nil || !strings.Contains(last.Error(), want) || rows > 0 {
			t.Errorf("%q gives %d rows and %v, want %q", text, rows, last, want)
		}
	}
}
