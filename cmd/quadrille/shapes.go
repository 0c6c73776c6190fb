package main

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strings"
	"time"
	"unicode"

	"club/quadrille/scoring"
)

// shape is a JSON object as the help describes it: its name and its fields.
type shape struct {
	name    string
	based   string // the shape all of whose fields it has too, "" for none
	members []member
}

// member is one field of a shape.
type member struct {
	name     string
	kind     string // "number", "list of game"
	optional bool   // left out where it says nothing
}

// shapesOf lists the shapes of some types and, each once, of what they hold.
func shapesOf(types ...reflect.Type) []shape {
	var out []shape
	seen := map[reflect.Type]bool{}
	for len(types) > 0 {
		t := types[0]
		types = types[1:]
		if seen[t] {
			continue
		}
		seen[t] = true
		s, inner := shapeOf(t)
		out = append(out, s)
		types = append(inner, types...) // what a shape holds comes right behind it
	}
	return out
}

// shapeOf reads one type, and lists the types of the objects in it.
func shapeOf(t reflect.Type) (s shape, inner []reflect.Type) {
	s.name = shapeName(t)
	if own, ok := ownShapes[t]; ok {
		s.members = own
		return s, nil
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" {
			s.based, inner = shapeName(f.Type), append(inner, f.Type)
			continue
		}
		if !f.IsExported() || name == "-" || name == "" {
			continue
		}
		kind, object := kindOf(f.Type)
		if object != nil {
			inner = append(inner, object)
		}
		optional := strings.Contains(options, "omitempty") || strings.Contains(options, "omitzero")
		s.members = append(s.members, member{name, kind, optional})
	}
	return s, inner
}

var texts = reflect.TypeFor[encoding.TextMarshaler]()

// kindOf says in a word what JSON a type is, and which object it holds.
func kindOf(t reflect.Type) (kind string, object reflect.Type) {
	switch {
	case t == reflect.TypeFor[time.Time]():
		return "time", nil
	case t == reflect.TypeFor[json.RawMessage]():
		return "object", nil
	case t.Implements(texts):
		return "text", nil
	}
	switch t.Kind() {
	case reflect.Pointer:
		return kindOf(t.Elem())
	case reflect.Slice, reflect.Array:
		kind, object = kindOf(t.Elem())
		return "list of " + kind, object
	case reflect.Struct:
		return shapeName(t), t
	case reflect.String:
		return "text", nil
	case reflect.Bool:
		return "true or false", nil
	}
	return "number", nil
}

// ownShapes are the fields of types that write their JSON themselves.
var ownShapes = map[reflect.Type][]member{
	reflect.TypeFor[scoring.Final](): {{"a", "number", false}, {"b", "number", false}, {"how", "text", false}, {"won", "text", true}},
}

// shapeName turns the name of a type into words.
func shapeName(t reflect.Type) string {
	if name, ok := shapeNames[t]; ok {
		return name
	}
	var out strings.Builder
	for i, r := range t.Name() {
		if i > 0 && unicode.IsUpper(r) {
			out.WriteByte(' ')
		}
		out.WriteRune(unicode.ToLower(r))
	}
	return out.String()
}
