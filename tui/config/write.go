package config

import (
	"cmp"
	"fmt"
	"strings"
)

// Text is a config as desk.toml has it, with what is allowed beside each setting. Parse reads it back.
func (c Config) Text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "theme = %q    # auto, dark, light, quiet or contrast\n", cmp.Or(string(c.Theme), "auto"))
	if c.Glyphs == "" {
		b.WriteString("# glyphs = \"ascii\"    # unicode or ascii; without this line the locale says it\n")
	} else {
		fmt.Fprintf(&b, "glyphs = %q    # unicode or ascii\n", c.Glyphs)
	}
	fmt.Fprintf(&b, "bell = %v    # a sound for a complete round, a time limit and a hold\n", c.Bell)
	b.WriteString("\n# On every screen. A letter works where letters are free, ctrl and a letter or f1 to f12 everywhere.\n[keys]\n")
	for _, k := range c.Keys {
		var keys []string
		for _, key := range append(k.Letters[:len(k.Letters):len(k.Letters)], k.Always...) {
			if letter(key) || other(key) { // ctrl+c always quits
				keys = append(keys, fmt.Sprintf("%q", key))
			}
		}
		fmt.Fprintf(&b, "%s = [%s]\n", k.Name, strings.Join(keys, ", "))
	}
	return b.String()
}
