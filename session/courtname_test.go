package session

import (
	"strings"
	"testing"
)

func TestCourtNamed(t *testing.T) {
	n := &Night{Courts: []Court{{ID: "1"}, {ID: "12"}, {ID: "Centre"}, {ID: "Corner"}}}
	for _, c := range []struct{ text, want, wrong string }{
		{"1", "1", ""},
		{"12", "12", ""},
		{" centre ", "Centre", ""},
		{"ce", "Centre", ""},
		{"c", "", "more than one"},
		{"2", "", "no court"},
		{"", "", "type the number"},
	} {
		got, err := n.CourtNamed(c.text)
		if string(got) != c.want || (err != nil) != (c.wrong != "") || err != nil && !strings.Contains(err.Error(), c.wrong) {
			t.Errorf("%q is court %q, %v", c.text, got, err)
		}
	}
	for text, want := range map[string]CourtID{"12": "12", "1": "", "ce": "Centre", "c": "", "9": "", "": ""} {
		if got, ok := n.CourtMeant(text); got != want || ok != (want != "") {
			t.Errorf("%q can only mean court %q, %v", text, got, ok)
		}
	}
}
