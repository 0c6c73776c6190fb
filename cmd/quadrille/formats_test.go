package main

import (
	"encoding/json"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Every field of every JSON object that the program writes is told of, in its order, and nothing else
// is: the help cannot promise what is not there, nor hide what is.
func TestFormatsTellOfEveryJSONField(t *testing.T) {
	parts := described()
	check := func(part string, members []member) {
		t.Helper()
		var have, told []string
		for _, m := range members {
			have = append(have, m.name)
		}
		for _, d := range parts[part] {
			told = append(told, d[0])
			if d[1] == "" {
				t.Errorf("%s.%s has no meaning", part, d[0])
			}
		}
		if !slices.Equal(have, told) {
			t.Errorf("formats.txt, # %s: the fields are %v, told of are %v", part, have, told)
		}
		delete(parts, part)
	}
	var types, payloads []reflect.Type
	for _, f := range jsonForms {
		types = append(types, f.kind)
	}
	for _, l := range session.Layouts() {
		s, inner := shapeOf(l.Payload)
		check(l.Kind, s.members)
		payloads = append(payloads, inner...)
	}
	names := map[string]bool{}
	for _, s := range shapesOf(append(types, payloads...)...) {
		if names[s.name] {
			t.Errorf("two objects are called %s", s.name)
		}
		names[s.name] = true
		check(s.name, s.members)
	}
	for _, f := range csvForms {
		delete(parts, f.name)
	}
	check("desk.toml", []member{{name: "theme"}, {name: "glyphs"}, {name: "bell"}, {name: "keys"}})
	for part := range parts {
		t.Errorf("formats.txt tells of %s, which is neither a table nor an object", part)
	}
}

// What writes its JSON itself is compared with what it writes.
func TestFormatsKnowWhatAResultWrites(t *testing.T) {
	final, err := scoring.Rules{To: 11, WinBy: 2}.Retire(9, 4, scoring.A)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(final)
	if err != nil {
		t.Fatal(err)
	}
	var fields map[string]any
	if err := json.Unmarshal(text, &fields); err != nil {
		t.Fatal(err)
	}
	s, _ := shapeOf(reflect.TypeFor[scoring.Final]())
	for _, m := range s.members {
		if _, ok := fields[m.name]; !ok {
			t.Errorf("%s has no field %s", text, m.name)
		}
		delete(fields, m.name)
	}
	if len(fields) > 0 {
		t.Errorf("%s has the fields %v too", text, fields)
	}
}

// The columns are those that commands write and read.
func TestFormatsTellOfEveryColumn(t *testing.T) {
	data := filepath.Join(t.TempDir(), "night.qdb")
	header := func(args ...string) string {
		t.Helper()
		out, errs, code := quadrille(t, "", args...)
		if code != exitFine {
			t.Fatalf("%v: %s", args, errs)
		}
		line, _, _ := strings.Cut(out, "\n")
		return line
	}
	header("simulate", "--players", "8", "--courts", "2", "--rounds", "1", "--data", data)
	written := map[string]string{
		"games.csv":     header("export", "--games", "--data", data),
		"people.csv":    header("export", "--people", "--data", data),
		"plan.csv":      header("plan", "--players", "8", "--courts", "2", "--rounds", "1", "--csv"),
		"standings.csv": header("standings", "--csv", "--data", data),
		"partners.csv":  header("partners", "--csv", "--data", data),
		"league.csv":    header("standings", "--league", "--csv", "--data", data),
	}
	_, errs, _ := quadrille(t, "zzz,yyy\nq,1\n", "plan", "--roster", "-", "--courts", "1", "--rounds", "1")
	written["roster.csv"] = errs // names the header that belongs there
	for _, f := range csvForms {
		var columns []string
		for _, d := range described()[f.name] {
			columns = append(columns, d[0])
		}
		if want := strings.Join(columns, ","); f.name == "roster.csv" && !strings.Contains(written[f.name], want) ||
			f.name != "roster.csv" && written[f.name] != want {
			t.Errorf("%s: told of are %s, there is %q", f.name, want, written[f.name])
		}
	}
}

func TestFormatsFitTheColumns(t *testing.T) {
	out, errs, code := quadrille(t, "", "help", "formats")
	if code != exitFine || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	for line := range strings.Lines(out) {
		if w := width(strings.TrimRight(line, "\n")); w > columns || strings.HasSuffix(line, " \n") {
			t.Errorf("%d columns: %q", w, line)
		}
	}
	for _, want := range []string{"What stands here is stable", "partner_with", "plan --json", "PersonAdded, version 1"} {
		if !strings.Contains(out, want) {
			t.Errorf("the help does not say %q", want)
		}
	}
}
