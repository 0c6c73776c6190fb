package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// libraryTexts are pieces of what Go and its libraries say of a wrong value, and nobody else.
var libraryTexts = []string{
	"strconv.", "parsing", "invalid syntax", "value out of range", "cannot unmarshal", "json:", "invalid argument",
	"flag needs an argument", "unknown flag", "unknown shorthand", "unknown command", "required flag", "if any flags in the group",
	"bad flag syntax", "at least one of the flags", "accepts ", "no such file or directory", "panic", "%!", "runtime error", "bbolt",
	"unexpected EOF", "Go struct", "parse error on line", "is a directory", "not a directory", "errno", "nil pointer",
	"in quoted-field", "invalid character", "parsing time", "wrong number of fields", "bad file descriptor", "*os.", "*fs.", "bufio",
}

// enough are flags and arguments with which each command would run, so that a test can add one wrong
// value to them.
var enough = map[string][]string{
	"plan": {"--players=8", "--courts=2", "--rounds=2"}, "simulate": {"--players=8", "--courts=2", "--rounds=1"},
	"audit": {"-"}, "import": {"-"}, "backup": {"new.qdb"}, "restore": {"old.qdb"}, "rescue": {"old.qdb", "new.qdb"}, "forget": {"Ann"},
	"completion": {"bash"}, "export": {"--games"}, "print": {"rotation"},
}

// wrongValues are values that a flag may be given by a slip or by a script that went wrong.
var wrongValues = []string{"-1", "-99999999999999999999", "99999999999999999999999999", "many", "", " ", "1e400", "NaN", "0x10", "\x1b[31mred"}

// Every wrong value of every flag ends with exit code 2 and a sentence that names the flag and says
// what it takes, and never with a text of a library.
func TestEveryWrongValueIsRefusedInWords(t *testing.T) {
	tried := 0
	everyFlag(t, func(t *testing.T, path []string, f *pflag.Flag) {
		for _, value := range wrongValues {
			if right(f, value) {
				continue
			}
			tried++
			args := slices.Concat(path, without(enough[path0(path)], f.Name), []string{"--" + f.Name + "=" + value})
			out, errs, code := quadrille(t, "", args...)
			if code != exitUsage || out != "" || !strings.Contains(errs, "--"+f.Name+" takes ") || !strings.Contains(errs, "see \"quadrille") {
				t.Errorf("%q: exit %d\n%s%s", args, code, out, errs)
			}
			noLibraryText(t, args, errs)
		}
	})
	if tried < 300 {
		t.Errorf("only %d wrong values were tried", tried)
	}
}

// The same where the value is missing, and where the name of a flag has a slip.
func TestEveryMistypedFlagIsUnderstood(t *testing.T) {
	everyFlag(t, func(t *testing.T, path []string, f *pflag.Flag) {
		if f.NoOptDefVal == "" {
			args := append(slices.Clone(path), "--"+f.Name)
			_, errs, code := quadrille(t, "", args...)
			if code != exitUsage || !strings.Contains(errs, "--"+f.Name+" takes ") {
				t.Errorf("%q: exit %d %s", args, code, errs)
			}
			noLibraryText(t, args, errs)
		}
		if len(f.Name) < 4 {
			return
		}
		slip := f.Name[:1] + f.Name[2:3] + f.Name[1:2] + f.Name[3:]
		if slip == f.Name {
			slip = f.Name[:len(f.Name)-1]
		}
		args := append(slices.Clone(path), "--"+slip)
		_, errs, code := quadrille(t, "", args...)
		if code != exitUsage || !strings.Contains(errs, "did you mean ") || !strings.Contains(errs, "--"+f.Name) {
			t.Errorf("%q: exit %d %s", args, code, errs)
		}
		noLibraryText(t, args, errs)
	})
}

func TestEveryMistypedCommandIsUnderstood(t *testing.T) {
	for _, name := range commandNames(newRoot()) {
		for _, slip := range []string{name[1:], name[:len(name)-1], name[:1] + name[2:3] + name[1:2] + name[3:], name + "s"} {
			if slices.Contains(commandNames(newRoot()), slip) || slip == name {
				continue
			}
			for _, args := range [][]string{{slip}, {slip, "--unknown"}, {slip, "--json"}, {"help", slip}} {
				_, errs, code := quadrille(t, "", args...)
				if code != exitUsage || !strings.Contains(errs, "there is no command") || !strings.Contains(errs, name) {
					t.Errorf("%q: exit %d %s", args, code, errs)
				}
			}
		}
	}
	for _, far := range []string{"zzz", "nosuchthing", "x"} {
		if _, errs, code := quadrille(t, "", far); code != exitUsage || strings.Contains(errs, "did you mean") {
			t.Errorf("%s: exit %d %s", far, code, errs)
		}
	}
}

// Arguments that are empty are what a script gives whose variable is not set.
func TestAnEmptyArgumentIsWrongUsage(t *testing.T) {
	for name, args := range enough {
		for i := range args {
			if strings.HasPrefix(args[i], "--") {
				continue
			}
			wrong := append([]string{name}, args...)
			wrong[i+1] = ""
			_, errs, code := quadrille(t, "", wrong...)
			if code != exitUsage || !strings.Contains(errs, name+" takes ") {
				t.Errorf("%q: exit %d %s", wrong, code, errs)
			}
		}
	}
}

// everyFlag visits every flag that a command takes, but for those of cobra's own.
func everyFlag(t *testing.T, visit func(t *testing.T, path []string, f *pflag.Flag)) {
	var walk func(c *cobra.Command, path []string)
	walk = func(c *cobra.Command, path []string) {
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if f.Name != "help" && f.Name != "version" && !f.Hidden {
				t.Run(strings.Join(path, " ")+" --"+f.Name, func(t *testing.T) { visit(t, path, f) })
			}
		})
		for _, sub := range c.Commands() {
			walk(sub, append(slices.Clone(path), sub.Name()))
		}
	}
	walk(newRoot(), nil)
}

// right tells whether a flag may take a value that is wrong for others: the name of a file may be
// nearly anything, and so may the names of a team.
func right(f *pflag.Flag, value string) bool {
	return f.Value.Type() == "text" && f.Name != "night" && strings.TrimSpace(value) != ""
}

func path0(path []string) string {
	if len(path) == 0 {
		return ""
	}
	return path[0]
}

// without leaves out an argument that gives a flag.
func without(args []string, flag string) []string {
	return slices.DeleteFunc(slices.Clone(args), func(arg string) bool { return strings.HasPrefix(arg, "--"+flag+"=") })
}

func noLibraryText(t *testing.T, args []string, errs string) {
	t.Helper()
	for _, text := range libraryTexts {
		if strings.Contains(strings.ToLower(errs), strings.ToLower(text)) {
			t.Errorf("%q tells a person %q: %s", args, text, errs)
		}
	}
	if strings.Contains(errs, "\x1b") {
		t.Errorf("%q lets an escape sequence through", args)
	}
}
