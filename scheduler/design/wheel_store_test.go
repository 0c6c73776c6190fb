package design

import (
	"reflect"
	"strings"
	"testing"
)

// TestStoredTextIsReadAsWritten writes what was read, and refuses what no wheel is.
func TestStoredTextIsReadAsWritten(t *testing.T) {
	for _, w := range Wheels() {
		got, err := ParseWheel(w.Text())
		if err != nil || !reflect.DeepEqual(got, w) {
			t.Errorf("%q is read as %+v (%v)", w.Text(), got, err)
		}
	}
	good := Wheels()[0].Text()
	for name, bad := range map[string]string{
		"no head":     strings.Replace(good, "people", "persons", 1),
		"bad circle":  strings.Replace(good, "circles 2", "circles x", 1),
		"three seats": strings.Replace(good, "A708", "A70", 1),
		"a stranger":  strings.Replace(good, "A708", "Z708", 1),
	} {
		if bad == good {
			t.Fatalf("%s: nothing changed", name)
		}
		if w, err := ParseWheel(bad); err == nil {
			t.Errorf("%s: read as %+v", name, w)
		}
	}
}
