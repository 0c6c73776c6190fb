//go:build !windows

package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a screen may take to show what it must. It is far more than a desk needs,
// since a loaded machine must not fail a test that is about words.
const patience = 30 * time.Second

// keys are the bytes that a terminal sends for keys that are no letters.
var keys = map[string]string{
	"enter": "\r", "esc": "\x1b", "tab": "\t", "backspace": "\x7f", "home": "\x1b[H", "end": "\x1b[F",
	"up": "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D",
	"ctrl+b": "\x02", "ctrl+c": "\x03", "ctrl+r": "\x12", "ctrl+f": "\x06", "ctrl+n": "\x0e", "ctrl+o": "\x0f", "ctrl+u": "\x15",
}

// program is the real binary, built for the tests.
type program string

// build makes the binary as the README installs it, also when the tests run with the race detector: the tests
// of the screens run the same code inside the test.
func build(t testing.TB) program {
	t.Helper()
	path, err := installed()
	if err != nil {
		t.Fatal(err)
	}
	return program(path)
}

// installed makes the binary once for all tests; TestMain removes its folder.
var installed = sync.OnceValues(func() (string, error) {
	cmd := exec.Command("go", "install", "./cmd/quadrille")
	cmd.Dir, cmd.Env = filepath.Join("..", ".."), append(os.Environ(), "GOBIN="+binaries)
	if out, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("installing the program: %w\n%s", err, out)
	}
	return filepath.Join(binaries, "quadrille"), nil
})

// terminal is the program on a pseudo-terminal with somebody in front of it. The terminal answers
// no query of the program, as serial lines and many test runners do not.
type terminal struct {
	t      testing.TB
	cmd    *exec.Cmd
	line   *os.File
	exited chan struct{} // closed when the program is gone

	mu    sync.Mutex // guards what follows: x/vt has no lock of its own that covers reading
	vt    *vt.Emulator
	raw   []byte        // all that the program has written
	fresh chan struct{} // closed at the next output

	restless [2]int // the size that the terminal keeps; before each key it has had another one. Zero: nobody changes it
}

// open starts the program on a terminal of some size. Env comes on top of a small environment that
// has nothing of the developer's own.
func (p program) open(t testing.TB, width, height int, env []string, args ...string) *terminal {
	t.Helper()
	cmd := exec.Command(string(p), args...)
	home := t.TempDir()
	cmd.Env = append([]string{"TERM=xterm-256color", "HOME=" + home, "XDG_DATA_HOME=" + home, "TMPDIR=" + home, "PATH=" + os.Getenv("PATH")}, env...)
	line, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: uint16(height), Cols: uint16(width)})
	if err != nil {
		t.Fatalf("starting %s: %v", p, err)
	}
	s := &terminal{
		t: t, cmd: cmd, line: line, exited: make(chan struct{}),
		vt: vt.NewEmulator(width, height), fresh: make(chan struct{}),
	}
	var readers sync.WaitGroup
	readers.Go(s.watch)
	readers.Go(func() { _, _ = io.Copy(io.Discard, s.vt) }) // answers that nobody gets
	t.Cleanup(func() {
		if s.running() {
			_ = cmd.Process.Kill() // a test failed half way
		}
		<-s.exited
		_ = s.vt.InputPipe().(io.Closer).Close() // ends the reader of answers
		_ = line.Close()
		readers.Wait()
	})
	return s
}

// watch draws what the program writes, until it is gone.
func (s *terminal) watch() {
	buffer := make([]byte, 32<<10)
	for {
		n, err := s.line.Read(buffer)
		s.mu.Lock()
		s.raw = append(s.raw, buffer[:n]...)
		_, _ = s.vt.Write(buffer[:n])
		close(s.fresh)
		s.fresh = make(chan struct{})
		s.mu.Unlock()
		if err != nil {
			break
		}
	}
	_ = s.cmd.Wait() // the exit code is asked for by Code
	close(s.exited)
}

func (s *terminal) running() bool {
	select {
	case <-s.exited:
		return false
	default:
		return true
	}
}

// Screen is what the terminal shows, line by line.
func (s *terminal) Screen() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.vt.String()
}

// Raw is all that the program has written so far, with its escape sequences.
func (s *terminal) Raw() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return string(s.raw)
}

// Type writes text in one piece, as a paste, a fast typist or a slow connection deliver it.
func (s *terminal) Type(text string) *terminal {
	s.t.Helper()
	if _, err := s.line.WriteString(text); err != nil {
		s.t.Fatalf("typing %q: %v\n%s", text, err, s.Screen())
	}
	return s
}

// Press presses keys one after the other, each named as in keys or a letter. Around an escape it waits for the
// screen: a letter that follows at once would be taken for alt and the letter, and what is still being drawn
// is no answer to it.
func (s *terminal) Press(names ...string) *terminal {
	s.t.Helper()
	for _, name := range names {
		text, ok := keys[name]
		if !ok {
			text = name
		}
		if w, h := s.restless[0], s.restless[1]; w > 0 {
			s.Resize(w+20+len(text), h+6).Resize(w, h)
		}
		if name == "esc" {
			s.quiet()
		}
		s.mu.Lock()
		fresh := s.fresh
		s.mu.Unlock()
		s.Type(text)
		if name == "esc" {
			s.wait(fresh, "an answer to esc")
			s.quiet() // it may have been the answer to a size before it
		}
	}
	return s
}

// Shows waits until the screen shows all of the texts.
func (s *terminal) Shows(texts ...string) *terminal {
	s.t.Helper()
	return s.until(strings.Join(texts, " and "), func(screen string) bool {
		return !slices.ContainsFunc(texts, func(text string) bool { return !strings.Contains(screen, text) })
	})
}

// Hides waits until the screen no longer shows a text.
func (s *terminal) Hides(text string) *terminal {
	s.t.Helper()
	return s.until("no "+text, func(screen string) bool { return !strings.Contains(screen, text) })
}

// until waits until the screen is as it must be.
func (s *terminal) until(what string, ok func(screen string) bool) *terminal {
	s.t.Helper()
	for deadline := time.Now().Add(patience); ; {
		s.mu.Lock()
		screen, fresh := s.vt.String(), s.fresh
		s.mu.Unlock()
		if ok(screen) {
			return s
		}
		if time.Now().After(deadline) || !s.running() {
			s.t.Fatalf("the screen does not show %q:\n%s", what, screen)
		}
		s.wait(fresh, what)
	}
}

// wait returns at the next output or when the program is gone.
func (s *terminal) wait(fresh <-chan struct{}, what string) {
	s.t.Helper()
	select {
	case <-fresh:
	case <-s.exited:
	case <-time.After(patience):
		s.t.Fatalf("the program is silent while %q is awaited:\n%s", what, s.Screen())
	}
}

// quiet returns when the program has written nothing for a while: a large frame comes in parts.
func (s *terminal) quiet() {
	for {
		s.mu.Lock()
		fresh := s.fresh
		s.mu.Unlock()
		select {
		case <-fresh:
		case <-s.exited:
			return
		case <-time.After(50 * time.Millisecond):
			return
		}
	}
}

// Resize gives the terminal another size.
func (s *terminal) Resize(width, height int) *terminal {
	s.t.Helper()
	s.mu.Lock()
	s.vt.Resize(width, height)
	s.mu.Unlock()
	if err := pty.Setsize(s.line, &pty.Winsize{Rows: uint16(height), Cols: uint16(width)}); err != nil {
		s.t.Fatal(err)
	}
	return s
}

// Quit presses a key that quits and gives the exit code.
func (s *terminal) Quit(key string) int {
	s.t.Helper()
	return s.Press(key).Code()
}

// Signal sends the program a signal.
func (s *terminal) Signal(sig os.Signal) *terminal {
	s.t.Helper()
	if err := s.cmd.Process.Signal(sig); err != nil && !errors.Is(err, os.ErrProcessDone) {
		s.t.Fatal(err)
	}
	return s
}

// Code waits for the program to end and gives its exit code.
func (s *terminal) Code() int {
	s.t.Helper()
	select {
	case <-s.exited:
	case <-time.After(patience):
		s.t.Fatalf("the program does not end:\n%s", s.Screen())
	}
	return s.cmd.ProcessState.ExitCode()
}
