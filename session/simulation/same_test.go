package simulation

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/session"
)

// TestSimulatedNightsGoAsTheyWent holds the reports of nights of each kind and of a short season, and a digest of their
// records: what a seed gave, it gives. Whoever changes rules, searches or how people play on purpose writes the file
// anew with -update.
func TestSimulatedNightsGoAsTheyWent(t *testing.T) {
	if runtime.GOARCH != "amd64" {
		t.Skip("the nights were noted on another kind of machine, and fractions may be rounded otherwise")
	}
	var out strings.Builder
	of := nights(7)
	for k, hall := range Halls()[:2] {
		of[fmt.Sprint("hall ", k)] = hall.At(3, session.Rolling)
	}
	var names []string
	for name := range of {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		log, r := play(t, of[name])
		h := fnv.New64a()
		for _, rec := range recordsOf(t, log) {
			fmt.Fprintln(h, rec.Kind, rec.Time, string(rec.Payload))
		}
		text, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s: %08x %s\n", name, h.Sum64()>>32, text)
	}
	for _, s := range []Season{
		{People: 18, Each: 12, Courts: 2, Rounds: 4, Nights: 3, Flow: session.Rounds, Rated: true, Spread: 0.6, Seed: 5},
		{People: 16, Each: 10, Courts: 2, Rounds: 4, Nights: 2, Flow: session.Rolling, Seed: 6},
	} {
		played, err := s.Play()
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range played {
			text, _ := json.Marshal(p.Certificate)
			fmt.Fprintf(&out, "season %d, night %d: %d pairs, the stronger team %.6f, %s\n", s.Seed, i+1, len(p.Partners), p.Stronger, text)
		}
		fmt.Fprintf(&out, "season %d: %d again\n", s.Seed, Again(played))
	}
	golden.RequireEqual(t, []byte(out.String()))
}
