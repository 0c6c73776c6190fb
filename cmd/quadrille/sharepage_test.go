//go:build !windows

package main

import (
	"context"
	"io"
	"strings"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/session/public"
	"club/quadrille/tui/line"
)

// The desk gives the address of the page away to boards while it is open, and print puts it on the wall sheet of that
// night.
func TestTheAddressGoesToBoardsAndPaper(t *testing.T) {
	path := fullHall(t, 1)
	desk, err := openBoards(path)
	if err != nil {
		t.Fatal(err)
	}
	defer desk.close()
	desk.show(func() public.View { return public.View{Version: public.Version, Open: true} })
	printed := func() string {
		out, errs, code := quadrille(t, "", "print", "rotation", "--text", "--data", path)
		if code != 0 {
			t.Fatalf("%d: %s", code, errs)
		}
		return out
	}
	if got := printed(); strings.Contains(got, "http") {
		t.Errorf("an address is printed before there is one:\n%s", got)
	}
	page := openTestPage(t)
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan error)
	go func() { done <- usualSharing(page, io.Discard).follow(ctx, path) }()
	shown := func() string {
		if v := wire.Ask(t.Context(), path, "test"); v != nil {
			return v.Phones
		}
		return ""
	}
	for end := time.Now().Add(patience); shown() != page.URL(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("boards are told %q, want %q", shown(), page.URL())
		}
	}
	if got := printed(); !strings.Contains(got, "Tonight on your phone, in the Wi-Fi of the desk: "+page.URL()) {
		t.Errorf("the wall sheet has no address:\n%s", got)
	}
	stop()
	if err := <-done; err != nil {
		t.Error(err)
	}
	for end := time.Now().Add(patience); shown() != ""; time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("boards are told of a page that is closed")
		}
	}
}

// Codes on the wall are as large as there is room for, and none is cut.
func TestCodesOnTheWallAreAsLargeAsTheyFit(t *testing.T) {
	draw := codeFor(phones.Ink{})
	for _, c := range []struct{ width, height, lines int }{{80, 24, 17}, {70, 60, 33}, {200, 60, 50}, {32, 60, 0}, {80, 16, 0}} {
		got := draw("http://192.168.1.20:8470/", c.width, c.height)
		if len(got) != c.lines || len(got) > 0 && line.Width(got[0]) > c.width {
			t.Errorf("%d by %d: %d lines, want %d", c.width, c.height, len(got), c.lines)
		}
	}
}
