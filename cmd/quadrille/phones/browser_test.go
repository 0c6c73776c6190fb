package phones

import (
	"fmt"
	"net/http"
	"os"
	"slices"
	"strings"
	"testing"

	"club/quadrille/cmd/quadrille/phones/browser"
	"club/quadrille/session/public"
)

// afterScore is the evening when the game on court 1 is over and Ada is called to court 3 with Iris.
func afterScore() *public.View {
	v := evening()
	v.Courts[0].State, v.Courts[0].Score = public.Over, []int{4, 11}
	v.Courts[2] = public.Court{Name: "3", State: public.Called, A: []string{"Iris I.", "Ada A."}, B: []string{"Jonas J.", "Kaya K."}}
	v.People[0].Court = "3"
	return v
}

// A real browser finds somebody's game, keeps the name, follows the desk and tells a call, with JavaScript and, by
// looking again, without.
func TestABrowserFollowsTheHall(t *testing.T) {
	s := serving(t, open)
	b := browser.Open(t)
	tab := b.Tab(360, 780).Go(s.URL()).Choose("Ada A.")
	tab.Shows(".mine", "You are on court 1").Shows(".mine", "It stands 4-7.")
	s.Tell(afterScore())
	tab.Shows(".mine .head", "Go to court 3").Shows(".mine", "with Iris I.").Shows("#hall", "over 4-11").Shows("#said", "Go to court 3, with Iris I., against Jonas J. and Kaya K.")
	tab.Go(s.URL()).Shows(".mine h2", "Ada A.") // the name is kept
	s.Tell(nil)
	tab.Shows("#top", noDesk)
	s.Tell(evening())

	plain := b.Tab(360, 780).WithoutScripts().Go(s.URL()).Choose("Ada A.")
	plain.Shows(".mine", "You are on court 1").Shows("main", "Look again")
	s.Tell(afterScore())
	if plain.Again().Shows(".mine .head", "Go to court 3"); plain.Text("#said") != "" {
		t.Error("a script ran")
	}
	http.DefaultClient.CloseIdleConnections()
}

// Whatever stands on it, on a phone, an old one and a tablet, in light and dark: texts stand out from what is really
// behind them, fingers find their targets, nothing is wider than the screen, and a screen reader finds its way.
func TestABrowserFindsNoFaults(t *testing.T) {
	s := serving(t, open)
	b := browser.Open(t)
	long := evening()
	for i := range long.People {
		long.People[i].Name = strings.Repeat("Wolfeschlegelsteinhausen", 2) + fmt.Sprint(i)
	}
	long.Courts[0].A = []string{long.People[0].Name, long.People[1].Name}
	held := evening()
	held.Hold = &public.Hold{Why: "lightning", Minutes: 4}
	views := []struct {
		name, key string
		view      *public.View
	}{{"choose", "", evening()}, {"called", keyOf(5), evening()}, {"held", keyOf(9), held}, {"plays", keyOf(1), long}}
	sizes := [][2]int64{{360, 780}, {320, 560}, {768, 1024}}
	if os.Getenv("QUADRILLE_LONG") != "1" {
		sizes = sizes[:1]
	}
	for _, scheme := range []string{"light", "dark"} {
		for _, size := range sizes {
			tab := b.Tab(size[0], size[1]).Prefers("prefers-color-scheme", scheme)
			for _, v := range views {
				s.Tell(v.view)
				tab.Go(s.URL()+"?me="+v.key).Picture(os.Getenv("QUADRILLE_PICTURES"), fmt.Sprintf("%s-%s-%dx%d", v.name, scheme, size[0], size[1]))
				for _, fault := range tab.Faults() {
					t.Errorf("%s, %s, %v: %s", v.name, scheme, size, fault)
				}
				said := tab.Said()
				if bad := browser.Unnamed(said); len(bad) > 0 {
					t.Errorf("%s: no name for %v", v.name, bad)
				}
				wants := []string{"banner", "main", "contentinfo", "region Courts", "region Standings", "status", "heading Autumn night"}
				if v.key == "" {
					wants = append(wants, "combobox Who are you?", "button Show my courts")
				} else {
					wants = append(wants, "link I am somebody else")
				}
				for _, want := range wants {
					if !slices.Contains(said, want) {
						t.Errorf("%s: a screen reader finds no %q among %q", v.name, want, said)
					}
				}
			}
		}
	}
}
