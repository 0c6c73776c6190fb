package main

import (
	"bytes"
	"fmt"
	"net/netip"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/phones/crowd"
)

// TestMain lets the test binary be the command itself when it is called as quadrille, so that
// scripts and tests of processes run what users run.
func TestMain(m *testing.M) {
	crowd.Main()
	testscript.Main(tidy{m}, map[string]func(){"quadrille": main, sharesWithItself: func() { hallPlaces = itself; main() }})
}

// sharesWithItself is the name under which the test binary is a desk that offers its page to this computer only, so
// that tests can ask it whatever networks there are.
const sharesWithItself = "quadrille-here"

func itself() ([]phones.Place, error) {
	return []phones.Place{{Addr: netip.MustParseAddr("127.0.0.1"), Interface: "itself"}}, nil
}

// binaries is the folder of what tests build, in a name of its own for each run.
var binaries = filepath.Join(os.TempDir(), fmt.Sprintf("quadrille-test-%d", os.Getpid()))

// tidy removes what tests built.
type tidy struct{ *testing.M }

// Run implements testscript.TestingM.
func (m tidy) Run() int {
	defer os.RemoveAll(binaries)
	return m.M.Run()
}

// TestScripts runs what a user could have typed; each file holds its own input.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("TZ", "UTC")
			env.Setenv("XDG_DATA_HOME", env.WorkDir+"/share")
			env.Setenv("XDG_CONFIG_HOME", env.WorkDir+"/config")
			env.Setenv("QUADRILLE_DATA", "")
			for _, roster := range []string{"roster18.csv", "roster37.csv"} {
				text, err := os.ReadFile("../../testdata/" + roster)
				if err != nil {
					return err
				}
				if err := os.WriteFile(env.WorkDir+"/"+roster, text, 0o600); err != nil {
					return err
				}
			}
			return nil
		},
	})
}

// quadrille carries out a command line within the test and returns what it wrote.
func quadrille(t *testing.T, in string, args ...string) (out, errs string, code int) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code = run(args, strings.NewReader(in), &stdout, &stderr)
	return stdout.String(), stderr.String(), code
}

// command is a command line as a process of its own.
func command(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	return exec.CommandContext(t.Context(), "quadrille", args...)
}
