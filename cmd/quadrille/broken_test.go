package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// brokenFiles writes files that no command can take as they are, and names them.
func brokenFiles(t *testing.T) map[string]string {
	t.Helper()
	folder := t.TempDir()
	club, err := os.ReadFile(fileWithANight(t))
	if err != nil {
		t.Fatal(err)
	}
	damaged := bytes.ReplaceAll(club, []byte(`{"round":3,`), []byte(`{"round":8,`))
	pages := bytes.Clone(club)
	copy(pages[4096*3:], bytes.Repeat([]byte{0xa5}, 4096*2))
	heads := bytes.Clone(club)
	copy(heads, bytes.Repeat([]byte{0}, 4096*2))
	named := map[string][]byte{
		"empty":           nil,
		"a picture":       []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x01\x00"),
		"zeros":           make([]byte, 64<<10),
		"half":            club[:len(club)/2],
		"a page short":    club[:len(club)-4096],
		"one page":        club[:4096],
		"damaged":         damaged,
		"pages lost":      pages,
		"heads lost":      heads,
		"a brace":         []byte("{"),
		"json of another": []byte(`{"rounds":[{"games":[{"court":1,"a":"Ann"}]}],"players":{"a":1}}`),
		"half an export":  []byte("{\"quadrille\":\"events\",\"format\":1}\n{\"seq\":1,\"action\":1,\"ti"),
		"a wrong export":  []byte("{\"quadrille\":\"events\",\"format\":1}\n{\"seq\":\"one\"}\n"),
		"a wrong payload": []byte("{\"quadrille\":\"events\",\"format\":1}\n" + `{"seq":1,"action":1,"time":"2026-01-08T18:50:00Z","night":1,"kind":"NightOpened","version":1,"payload":{"courts":3}}` + "\n"),
		"open quotes":     []byte("name,group\n\"Ann,x\nBen,y\n"),
		"stray quotes":    []byte("a1,b1,score_a,score_b\nAn\"n,Ben,11,7\n"),
		"ragged":          []byte("a1,b1,score_a,score_b\nAnn,Ben\n,,,\nAnn,Ben,11,7,8,9\n"),
		"wrong score":     []byte("a1,b1,score_a,score_b\nAnn,Ben,eleven,99999999999999999999\n"),
		"wrong times":     []byte("name,arrive,leave,level\nAnn,25:99,-1,1e400\n"),
	}
	paths := map[string]string{
		"a folder": folder, "nothing": filepath.Join(folder, "none"), "below a file": filepath.Join(folder, "empty", "club.qdb"),
	}
	for name, text := range named {
		paths[name] = filepath.Join(folder, name)
		if err := os.WriteFile(paths[name], text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := os.Stat("/dev/null"); err == nil {
		paths["a device"] = "/dev/null"
	}
	return paths
}

// What is typed or piped is no better: a line without an end, and a folder in place of text.
func TestNoBrokenInputAnswersInWordsOfALibrary(t *testing.T) {
	endless := strings.Repeat("x", 9<<20)
	for _, args := range [][]string{{"drill"}, {"call"}, {"import", "-"}, {"audit", "-"}, {"rate", "-"}, {"standings", "--games", "-"}} {
		for _, in := range []string{endless, "{" + endless, "{\"quadrille\":\"events\",\"format\":1}\n" + endless} {
			out, errs, code := quadrille(t, in, args...)
			if code == exitFine {
				t.Errorf("%q takes a line without an end", args)
			}
			noLibraryText(t, args, cut(out, 1000)+cut(errs, 1000))
		}
	}
	if err := command(t, "call").Run(); err != nil {
		t.Fatal(err)
	}
	folder, err := os.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer folder.Close()
	for _, args := range [][]string{{"drill"}, {"call"}, {"import", "-"}, {"audit", "-"}, {"rate", "-"}} {
		var out bytes.Buffer
		if code := run(args, folder, &out, &out); code == exitFine {
			t.Errorf("%q reads a folder", args)
		}
		noLibraryText(t, args, out.String())
	}
}

// Whatever stands in a file, a command that reads it answers in words of its own: no text of Go or of a
// library reaches a person, and nothing ends the program.
func TestNoBrokenFileAnswersInWordsOfALibrary(t *testing.T) {
	commands := [][]string{
		{"audit", "FILE"},
		{"import", "FILE"},
		{"rate", "FILE"},
		{"standings", "--games", "FILE"},
		{"standings", "--games", "FILE", "--league"},
		{"plan", "--roster", "FILE", "--courts", "1", "--rounds", "1"},
		{"simulate", "--roster", "FILE", "--courts", "1"},
		{"check", "FILE"},
		{"rescue", "FILE", "NEW"},
		{"restore", "FILE"},
		{"standings", "--data", "FILE"},
		{"export", "--data", "FILE"},
		{"rate", "--data", "FILE"},
		{"backup", "NEW", "--data", "FILE"},
		{"compact", "--data", "FILE"},
		{"forget", "Ann", "--data", "FILE"},
		{"export", "--out", "FILE/below/x"},
	}
	t.Setenv("XDG_DATA_HOME", t.TempDir()) // set before the program reads it: --data is what counts below
	for name, path := range brokenFiles(t) {
		for i, command := range commands {
			args := make([]string, len(command))
			for j, arg := range command {
				args[j] = strings.NewReplacer("FILE", path, "NEW", filepath.Join(t.TempDir(), fmt.Sprint("new", i))).Replace(arg)
			}
			if !strings.Contains(strings.Join(args, " "), "--data") && (command[0] == "import" || command[0] == "restore" || command[0] == "export") {
				args = append(args, "--data", filepath.Join(t.TempDir(), "club.qdb"))
			}
			out, errs, code := quadrille(t, "", args...)
			if code == exitFine && errs == "" && command[0] != "check" && command[0] != "simulate" && out == "" {
				t.Errorf("%s: %q says nothing", name, args)
			}
			noLibraryText(t, append([]string{name}, args...), out+errs)
		}
	}
}
