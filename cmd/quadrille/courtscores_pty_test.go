//go:build linux

package main

import (
	"io"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// A phone at a court sends the score of its game to the real desk, which takes it with one key; nothing but the code of
// the court, which the desk shows, opens that page.
func TestACourtSendsItsScoreToTheDesk(t *testing.T) {
	desk, host := shareAtDesk(t, fullHall(t, 2), 120, 40)
	desk.Type("o").Shows("scores from the courts: now off").Type("c").Shows("on: they wait for the desk").Type("1").Shows("Saved: scores from the courts wait for the desk")
	desk.Type("c").Type("m").Shows("show the code").Type("q").Shows("Court 1: send the score")
	found := regexp.MustCompile(`HTTP://[0-9.:]+/C/[A-Z2-7]{26}`).FindString(desk.Screen())
	if found == "" {
		t.Fatalf("the desk shows no address of court 1:\n%s", desk.Screen())
	}
	page := fetch(t, found)
	if !strings.Contains(page, "<h1>Court 1</h1>") {
		t.Fatalf("the page of court 1 is\n%s", page)
	}
	game := regexp.MustCompile(`name="game" value="([0-9]+)"`).FindStringSubmatch(page)
	if game == nil {
		t.Fatalf("no game goes on at court 1:\n%s", page)
	}
	desk.Press("esc")
	post := func(origin string) *http.Response {
		t.Helper()
		form := url.Values{"game": {game[1]}, "a": {"11"}, "b": {"6"}, "by": {"b"}}
		r, err := http.NewRequest(http.MethodPost, found, strings.NewReader(form.Encode()))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Origin", origin)
		got, err := http.DefaultClient.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	if got := post("http://evil.example"); got.StatusCode != http.StatusForbidden {
		t.Errorf("another page's form is answered with %d", got.StatusCode)
	}
	got := post("http://" + host)
	text, _ := io.ReadAll(got.Body)
	if got.StatusCode != http.StatusOK || !strings.Contains(string(text), "Thank you") || !strings.Contains(string(text), ": 11-6. It waits for the desk.") {
		t.Fatalf("%d\n%s", got.StatusCode, text)
	}
	desk.Shows("sent 11-6", "Court 1: a score was sent").Type("y").Shows("Saved: court 1: 11-6", "as the court sent it")
	if page = fetch(t, found); !strings.Contains(page, "No game goes on here now") || !strings.Contains(page, "11-6") {
		t.Errorf("after it is taken:\n%s", page)
	}
	desk.Quit("q")
}
