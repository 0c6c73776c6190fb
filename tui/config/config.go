// Package config reads how somebody wants the desk to look, sound and be typed: the file desk.toml. It is pure:
// the text of the file is passed in. Whatever is wrong with it is said with its line, and the rest holds.
package config

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"club/quadrille/tui/theme"
)

// Key is what keys do one thing on every screen: letters where letters are free, and always keys that are no
// text. Each has at least one.
type Key struct {
	Name    string
	Letters []string
	Always  []string
}

// Config is what the file says; what it does not say is as it is without a file.
type Config struct {
	Theme  theme.Name
	Glyphs string // unicode or ascii, empty for what the locale says
	Bell   bool   // sound for a complete round, a time limit and a hold
	Keys   []Key
}

// Look is what the terminal was found to show, as the file wants it. The environment, which is nearer to the
// terminal, has the last word: QUADRILLE_GLYPHS and QUADRILLE_BACKGROUND.
func (c Config) Look(found theme.Choice, getenv func(string) string) theme.Choice {
	found.Name = c.Theme
	if (c.Theme == theme.Dark || c.Theme == theme.Light) && getenv("QUADRILLE_BACKGROUND") != "" {
		found.Name = theme.Auto
	}
	if c.Glyphs != "" && getenv("QUADRILLE_GLYPHS") == "" {
		found.ASCII = c.Glyphs == "ascii"
	}
	return found
}

// Parse reads the text of desk.toml. Desk are the keys as they are without one. The errors name the line and
// what is allowed there; everything else that the file says is taken all the same.
func Parse(text []byte, desk []Key) (Config, []error) {
	c := Config{Theme: theme.Auto, Keys: clone(desk)}
	var all map[string]any
	if _, err := toml.NewDecoder(bytes.NewReader(text)).Decode(&all); err != nil {
		var p toml.ParseError
		if errors.As(err, &p) {
			return c, []error{fmt.Errorf("line %d: %s", p.Position.Line, p.Message)}
		}
		return c, []error{err}
	}
	r := reader{text: text, c: &c}
	for _, name := range r.inOrder("", all) {
		r.setting(name, all[name])
	}
	return c, r.wrong
}

func clone(keys []Key) []Key {
	out := slices.Clone(keys)
	for i := range out {
		out[i].Letters, out[i].Always = slices.Clone(out[i].Letters), slices.Clone(out[i].Always)
	}
	return out
}

// reader takes settings over one by one and keeps what is wrong with them.
type reader struct {
	text  []byte
	c     *Config
	wrong []error
}

func (r *reader) refuse(section, name, format string, args ...any) {
	where := name
	if section != "" {
		where = section + "." + name
	}
	r.wrong = append(r.wrong, fmt.Errorf("line %d, %s: %s", r.line(section, name), where, fmt.Sprintf(format, args...)))
}

// setting takes over a setting at the top of the file.
func (r *reader) setting(name string, value any) {
	text, isText := value.(string)
	switch name {
	case "theme":
		n, err := theme.ParseName(text)
		if !isText || err != nil || text == "" {
			r.refuse("", name, "%v is no theme: write \"auto\", \"dark\", \"light\", \"quiet\" or \"contrast\"", shown(value))
			return
		}
		r.c.Theme = n
	case "glyphs":
		if text != "unicode" && text != "ascii" {
			r.refuse("", name, "%v is not known: write \"unicode\" or \"ascii\"", shown(value))
			return
		}
		r.c.Glyphs = text
	case "bell":
		on, ok := value.(bool)
		if !ok {
			r.refuse("", name, "%v is neither true nor false", shown(value))
			return
		}
		r.c.Bell = on
	case "keys":
		table, ok := value.(map[string]any)
		if !ok {
			r.refuse("", name, "write [keys] on a line of its own, and a key a line below it")
			return
		}
		for _, name := range r.inOrder("keys", table) {
			r.key(name, table[name])
		}
	default:
		r.refuse("", name, "there is no such setting: write theme, glyphs, bell or [keys]")
	}
}

// shown is a value as it stands in the file.
func shown(value any) string {
	if text, ok := value.(string); ok {
		return fmt.Sprintf("%q", text)
	}
	return fmt.Sprint(value)
}

// key gives something other keys: letters in place of its letters, others in place of the others.
func (r *reader) key(name string, value any) {
	i := slices.IndexFunc(r.c.Keys, func(k Key) bool { return k.Name == name })
	if i < 0 {
		r.refuse("keys", name, "nothing is called that: write one of %s", strings.Join(names(r.c.Keys), ", "))
		return
	}
	var letters, always []string
	for _, v := range list(value) {
		text, ok := v.(string)
		if !ok || !letter(text) && !other(text) {
			r.refuse("keys", name, "%v is no key for it: write a letter or a sign that moves nothing and is no screen's (%s), ctrl+ and a letter, or f1 to f12", shown(v), strings.Join(screens, " "))
			return
		}
		if k := holder(r.c.Keys, text); k != "" && k != name {
			r.refuse("keys", name, "%q is already the key of %s: give that one another key in a line above", text, k)
			return
		}
		if letter(text) {
			letters = append(letters, text)
		} else {
			always = append(always, text)
		}
	}
	if len(letters)+len(always) == 0 {
		r.refuse("keys", name, "write a key, such as \"j\", or several: [\"j\", \"ctrl+j\"]")
		return
	}
	k := &r.c.Keys[i]
	if len(letters) > 0 {
		k.Letters = letters
	}
	if len(always) > 0 {
		k.Always = always
	}
}

// holder is who has a key, empty for nobody.
func holder(keys []Key, key string) string {
	for _, k := range keys {
		if slices.Contains(k.Letters, key) || slices.Contains(k.Always, key) {
			return k.Name
		}
	}
	return ""
}

func list(value any) []any {
	if many, ok := value.([]any); ok {
		return many
	}
	return []any{value}
}

func names(keys []Key) []string {
	var out []string
	for _, k := range keys {
		out = append(out, k.Name)
	}
	return out
}

// screens are the letters that show a screen, wherever letters are free.
var screens = []string{"d", "c", "b", "r", "s", "h"}

// letter tells whether a key is one letter or sign that is free where letters are: digits are scores.
func letter(key string) bool {
	return len(key) == 1 && key[0] > ' ' && key[0] <= '~' && (key[0] < '0' || key[0] > '9') && !slices.Contains(screens, key)
}

// other tells whether a key is none of the letters and may mean something everywhere. What terminals send for
// tab, enter, esc, backspace and the end of a program is no such key; nor are those that save what the disk
// would not take.
func other(key string) bool { return others.MatchString(key) }

var others = regexp.MustCompile(`^(ctrl\+[adefgklnopqtuvwxyz]|f([1-9]|1[0-2]))$`)

// inOrder lists the names of a table as they stand in the file.
func (r *reader) inOrder(section string, table map[string]any) []string {
	out := slices.Collect(maps.Keys(table))
	slices.SortFunc(out, func(a, b string) int {
		if d := r.line(section, a) - r.line(section, b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	return out
}

var (
	header = regexp.MustCompile(`^\s*\[\s*"?([^\]"]*?)"?\s*\]`)
	entry  = regexp.MustCompile(`^\s*["']?([^="']+?)["']?\s*=`)
)

// line is where a name of a section stands in the file, from 1; the first line where it is not found.
func (r *reader) line(section, name string) int {
	in, at := "", 0
	for text := range strings.Lines(string(r.text)) {
		at++
		if h := header.FindStringSubmatch(text); h != nil && !entry.MatchString(text) {
			in = h[1]
			if section == "" && in == name {
				return at
			}
			continue
		}
		e := entry.FindStringSubmatch(text)
		if e == nil {
			continue
		}
		if in == section && e[1] == name || in == "" && section != "" && e[1] == section+"."+name {
			return at
		}
	}
	return 1
}
