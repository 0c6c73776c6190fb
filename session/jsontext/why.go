// Package jsontext says in words why a text is not the JSON that was asked for.
package jsontext

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"strings"
	"time"
)

// Why puts an error of encoding/json into words for a person: where it is and what belongs there.
// Errors of our own types, which the decoder hands on, stay as they are.
func Why(err error) string {
	var (
		syntax *json.SyntaxError
		kind   *json.UnmarshalTypeError
		moment *time.ParseError
	)
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF), errors.As(err, &syntax) && endsEarly(syntax):
		return "it ends in the middle"
	case errors.As(err, &syntax):
		return fmt.Sprintf("character %d cannot stand there", syntax.Offset)
	case errors.As(err, &kind):
		return fmt.Sprintf("%s is %s, where %s belongs", field(kind.Field), found(kind.Value), belongs(kind.Type))
	case errors.As(err, &moment):
		return fmt.Sprintf("%s is no time such as 2026-01-08T18:50:00Z", moment.Value)
	}
	return err.Error()
}

func endsEarly(err *json.SyntaxError) bool { return strings.HasPrefix(err.Error(), "unexpected end") }

// goType are the names of embedded Go types in a path, which are no JSON fields.
var goType = regexp.MustCompile(`(^|\.)[A-Z][A-Za-z]*`)

// field names the place of a value: "rounds.games.court", or the whole.
func field(path string) string {
	if path = strings.Trim(goType.ReplaceAllString(path, ""), "."); path == "" {
		return "the whole"
	}
	return path
}

// found names what stands in the place of a value.
func found(value string) string {
	switch value {
	case "array":
		return "a list"
	case "object":
		return "an object"
	case "string":
		return "a text"
	case "bool":
		return "true or false"
	case "number":
		return "a number"
	}
	return "the " + value // number -1
}

// belongs names the JSON of a Go type.
func belongs(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Bool:
		return "true or false"
	case reflect.String:
		return "a text"
	case reflect.Slice, reflect.Array:
		return "a list"
	case reflect.Struct, reflect.Map, reflect.Pointer:
		if t == reflect.TypeFor[time.Time]() {
			return "a time such as 2026-01-08T18:50:00Z"
		}
		return "an object"
	case reflect.Float32, reflect.Float64:
		return "a number"
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		if t.PkgPath() != "" { // a number of ours with a word for each value
			return "a word"
		}
		return "a whole number from 0"
	}
	return "a whole number"
}
