package config

import (
	"reflect"
	"strings"
	"testing"

	"club/quadrille/tui/theme"
)

// desk are some keys as they are without a file.
func desk() []Key {
	return []Key{
		{"next-step", []string{"n"}, []string{"ctrl+n"}},
		{"undo", []string{"u"}, []string{"ctrl+z"}},
		{"quit", []string{"q"}, []string{"ctrl+c"}},
	}
}

func TestParse(t *testing.T) {
	c, wrong := Parse([]byte("theme = \"quiet\"\nglyphs = \"ascii\"\nbell = true\n[keys]\nundo = \"y\"\nnext-step = [\"u\", \"f5\"]\n"), desk())
	want := Config{theme.Quiet, "ascii", true, []Key{
		{"next-step", []string{"u"}, []string{"f5"}}, {"undo", []string{"y"}, []string{"ctrl+z"}}, {"quit", []string{"q"}, []string{"ctrl+c"}},
	}}
	if len(wrong) > 0 || !reflect.DeepEqual(c, want) {
		t.Errorf("got %+v, %v, want %+v", c, wrong, want)
	}
	c, wrong = Parse(nil, desk())
	if len(wrong) > 0 || !reflect.DeepEqual(c, Config{Theme: theme.Auto, Keys: desk()}) {
		t.Errorf("an empty file gives %+v, %v", c, wrong)
	}
}

// TestWhatIsWrongIsSaidWithItsLine, its name and what is allowed, and the rest holds.
func TestWhatIsWrongIsSaidWithItsLine(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"# mine\ntheme = \"blue\"\n", `line 2, theme: "blue" is no theme: write "auto", "dark", "light", "quiet" or "contrast"`},
		{"theme = 3\n", `line 1, theme: 3 is no theme`},
		{"\n\nglyphs = \"emoji\"\n", `line 3, glyphs: "emoji" is not known: write "unicode" or "ascii"`},
		{"bell = \"yes\"\n", `line 1, bell: "yes" is neither true nor false`},
		{"bell = true\ncolour = 1\n", `line 2, colour: there is no such setting: write theme, glyphs, bell or [keys]`},
		{"keys = 1\n", `line 1, keys: write [keys] on a line of its own`},
		{"bell = true\n[keys]\nundo = \"u\"\nundone = \"y\"\n", `line 4, keys.undone: nothing is called that: write one of next-step, undo, quit`},
		{"[keys]\nundo = \"ctrl+c\"\n", `line 2, keys.undo: "ctrl+c" is no key for it: write a letter`},
		{"[keys]\nundo = \"7\"\n", `line 2, keys.undo: "7" is no key for it`},
		{"[keys]\nundo = \"d\"\n", `line 2, keys.undo: "d" is no key for it`},
		{"[keys]\nundo = 7\n", `line 2, keys.undo: 7 is no key for it`},
		{"[keys]\nundo = []\n", `line 2, keys.undo: write a key`},
		{"keys.undo = \"n\"\n", `line 1, keys.undo: "n" is already the key of next-step: give that one another key in a line above`},
		{"bell = true\ntheme = dark\n", `line 2: `},
		{"bell = true\nbell = false\n", `line 2: `},
	} {
		got, wrong := Parse([]byte(c.text), desk())
		if len(wrong) != 1 || !strings.HasPrefix(wrong[0].Error(), c.want) {
			t.Errorf("%q gives %q, want %q", c.text, wrong, c.want)
		}
		if !reflect.DeepEqual(got.Keys, desk()) {
			t.Errorf("%q changes keys: %v", c.text, got.Keys)
		}
	}
}

// TestTextIsReadBack: what is printed as an example says what holds.
func TestTextIsReadBack(t *testing.T) {
	for _, text := range []string{"", "theme = \"contrast\"\nbell = true\nglyphs = \"unicode\"\n[keys]\nundo = [\"y\", \"Y\", \"f3\"]\n"} {
		c, _ := Parse([]byte(text), desk())
		again, wrong := Parse([]byte(c.Text()), desk())
		if len(wrong) > 0 || !reflect.DeepEqual(c, again) {
			t.Errorf("%s\ngives %+v, %v, want %+v", c.Text(), again, wrong, c)
		}
	}
}

// FuzzParse: no file makes the desk fall over, and no key is ever left without a key.
func FuzzParse(f *testing.F) {
	f.Add("theme = \"quiet\"\n[keys]\nundo = [\"y\", 3]\n")
	f.Add("[keys.undo]\nx = 1\n[[keys]]\n")
	f.Add("\"keys\".\"undo\" = 'x'\n")
	f.Fuzz(func(t *testing.T, text string) {
		c, wrong := Parse([]byte(text), desk())
		for _, k := range c.Keys {
			if len(k.Letters) == 0 || len(k.Always) == 0 {
				t.Errorf("%s has no key", k.Name)
			}
		}
		for _, err := range wrong {
			if !strings.HasPrefix(err.Error(), "line ") {
				t.Errorf("%q names no line", err)
			}
		}
	})
}
