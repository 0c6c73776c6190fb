//go:build !windows

package main

import (
	"testing"

	"club/quadrille/cmd/quadrille/phones/browser"
)

// A real browser finds a player's game, and sees a score as soon as it is typed at the desk and what comes next;
// with JavaScript off it sees so when it looks again.
func TestABrowserFollowsTheDesk(t *testing.T) {
	b := browser.Open(t)
	bin, path := build(t), fullHall(t, 2)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	_, url, says := bin.share(t, path)
	lineWith(t, says, "Phones follow the desk.")
	live := b.Tab(360, 780).Go(url).Choose("Person A1").Shows(".mine h2", "Person A1").Shows(".mine .head", "Go to court 1").Shows(".mine", "with Person B1")
	plain := b.Tab(360, 780).WithoutScripts().Go(url).Choose("Person C1").Shows(".mine .head", "Go to court 1").Shows(".mine", "against Person A1. and Person B1.")
	desk.Type("11 7\r").Shows("Saved: court 1: 11-7")
	live.Shows("#hall", "over 11-7").Shows(".mine .head", "Next: court").Shows("table", "Person A1")
	plain.Again().Shows("#hall", "over 11-7").Shows(".mine .head", "Next: court")
	desk.Quit("q")
	live.Shows("#top", "The desk is closed at the moment.")
}
