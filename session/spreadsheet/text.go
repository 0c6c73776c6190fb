// Package spreadsheet reads the tables that spreadsheets save, and makes text safe for their cells.
package spreadsheet

import "strings"

// formula is what the first character of a cell may be for a spreadsheet to take the cell for a
// formula (OWASP, "CSV Injection").
const formula = "=+-@\t\r\n"

// Text keeps a spreadsheet from taking text for a formula: text that begins as one gets an
// apostrophe in front, and so does text that would be mistaken for such text.
func Text(text string) string {
	if quoted(text) {
		return "'" + text
	}
	return text
}

// Plain undoes [Text]: what Text made of any text, Plain turns back into it.
func Plain(text string) string {
	if rest, ok := strings.CutPrefix(text, "'"); ok && quoted(rest) {
		return rest
	}
	return text
}

// quoted tells whether text begins as a formula, behind any number of apostrophes.
func quoted(text string) bool {
	rest := strings.TrimLeft(text, "'")
	return rest != "" && strings.IndexByte(formula, rest[0]) >= 0
}
