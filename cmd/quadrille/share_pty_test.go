//go:build !windows

package main

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// share starts the page as a program of its own, and gives its address and what it prints after that.
func (p program) share(t *testing.T, path string) (cmd *exec.Cmd, url string, says *bufio.Reader) {
	t.Helper()
	cmd = exec.Command(string(p), "share", "--address", "127.0.0.1", "--port", "0", "--data", path)
	cmd.Env = append(os.Environ(), "TMPDIR="+filepath.Dir(path))
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if cmd.ProcessState == nil {
			_ = cmd.Process.Kill()
			_ = cmd.Wait()
		}
	})
	says = bufio.NewReader(out)
	return cmd, strings.TrimSpace(lineWith(t, says, "http://")), says
}

// lineWith reads on to a line that has a text.
func lineWith(t *testing.T, in *bufio.Reader, text string) string {
	t.Helper()
	for {
		line, err := in.ReadString('\n')
		if strings.Contains(line, text) {
			return line
		}
		if err != nil {
			t.Fatalf("no line has %q: %v", text, err)
		}
	}
}

// fetch is a page as a browser without JavaScript has it.
func fetch(t *testing.T, url string) string {
	t.Helper()
	got, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	text, err := io.ReadAll(got.Body)
	if err != nil || got.StatusCode != http.StatusOK {
		t.Fatalf("%s: %d, %v", url, got.StatusCode, err)
	}
	return string(text)
}

// A phone finds its person, sees a score as soon as it is typed at the desk, with JavaScript and without, stays while
// the desk is closed and opened again, and is told when the night is over. Then no port is open any more.
func TestPhonesFollowTheDesk(t *testing.T) {
	bin, path := build(t), fullHall(t, 2)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	cmd, url, says := bin.share(t, path)
	lineWith(t, says, "Phones follow the desk.")
	choice := regexp.MustCompile(`<option value="([0-9a-f]{16})">([^<]+)</option>`).FindStringSubmatch(fetch(t, url))
	if choice == nil {
		t.Fatal("nobody can be chosen")
	}
	me := url + "?me=" + choice[1]
	if page := fetch(t, me); !strings.Contains(page, `<h2 id="you">`+choice[2]+"</h2>") || !strings.Contains(page, "Go to court 1") {
		t.Errorf("%s reads\n%s", choice[2], page)
	}
	stream, err := http.Get(url + "live?me=" + choice[1])
	if err != nil {
		t.Fatal(err)
	}
	defer stream.Body.Close()
	live := bufio.NewReader(stream.Body)
	lineWith(t, live, "Go to court 1")
	desk.Type("11 7\r").Shows("Saved: court 1: 11-7")
	lineWith(t, live, "over 11-7")
	if page := fetch(t, me); !strings.Contains(page, "over 11-7") || strings.Contains(page, "Go to court 1") {
		t.Errorf("after the score:\n%s", page)
	}
	desk.Quit("q")
	lineWith(t, live, "The desk is closed at the moment.")
	lineWith(t, says, "The desk is not open")
	again := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	lineWith(t, says, "Phones follow the desk.")
	again.Press("c").Type("g").Type("2").Type("11 3\r").Shows("Saved: court 2: 11-3")
	lineWith(t, live, "over 11-3")
	again.Press("home").Type("o").Shows(" x  end the night").Type("x").Shows("7 of 8 rounds are left.").Type("e").Shows("Saved: night ended")
	lineWith(t, live, "The night is over.")
	lineWith(t, live, "event: over")
	lineWith(t, says, "The night is over: the page is closed.")
	if err := cmd.Wait(); err != nil {
		t.Error(err)
	}
	if _, err := http.Get(url); err == nil {
		t.Error("the page can still be opened")
	}
	again.Quit("q")
}
