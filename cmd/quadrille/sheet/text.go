// Package sheet reads and writes what spreadsheets understand.
package sheet

import "strings"

// Text keeps a spreadsheet from taking text for a formula: text that begins as one gets an
// apostrophe in front.
func Text(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}

// Plain undoes [Text].
func Plain(text string) string {
	if len(text) > 1 && text[0] == '\'' && Text(text[1:]) != text[1:] {
		return text[1:]
	}
	return text
}
