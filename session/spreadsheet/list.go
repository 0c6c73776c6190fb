package spreadsheet

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// list takes a text without a header for a plain list, if the layout allows it and each of its lines may be
// the name of a person: a few words without digits or signs, perhaps with a number or a dash in front.
func (t *Table) list(text string, before int) bool {
	if t.layout.List == "" {
		return false
	}
	var rows []Row
	t.at = map[string]int{t.layout.List: 0}
	commas := 0
	for line := range strings.SplitSeq(text, "\n") {
		before++
		name := unlisted(line)
		if name == "" {
			continue
		}
		if !mayBeName(name) {
			return false
		}
		if strings.Contains(name, ",") {
			commas++
		}
		rows = append(rows, Row{before, []string{name}, t.at})
	}
	if commas != 0 && commas != len(rows) {
		return false
	}
	t.Notes = append(t.Notes, "no header: each line was taken for a "+t.layout.List)
	t.rows = func(yield func(Row, error) bool) {
		for _, r := range rows {
			if !yield(r, nil) {
				return
			}
		}
	}
	return true
}

// listMark is what people put before the lines of a list.
var listMark = regexp.MustCompile(`^(\d{1,4}[.)]|[-*•–])\s+`)

// unlisted is a line of a list without its number or dash and without quotation marks around it.
func unlisted(line string) string {
	line = listMark.ReplaceAllString(strings.TrimSpace(line), "")
	if len(line) > 1 && line[0] == '"' && line[len(line)-1] == '"' {
		line = line[1 : len(line)-1]
	}
	return strings.TrimSpace(line)
}

// mayBeName tells whether a line may be the name of a person, and nothing else.
func mayBeName(line string) bool {
	if utf8.RuneCountInString(line) > 80 || len(strings.Fields(line)) > 6 || strings.Count(line, ",") > 1 {
		return false
	}
	letters := false
	for _, r := range line {
		letters = letters || unicode.IsLetter(r)
		if !unicode.IsLetter(r) && !unicode.In(r, unicode.M, unicode.So, unicode.Sk, unicode.Cf) && !strings.ContainsRune(" .,'’-‐()\u00a0", r) {
			return false
		}
	}
	return letters
}
