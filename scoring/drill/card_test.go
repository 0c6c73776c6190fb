package drill_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
)

func TestTheCardFitsTheSmallestTerminal(t *testing.T) {
	card := drill.Card()
	if len(card) > 23 {
		t.Errorf("%d rows, want at most 23", len(card))
	}
	text := strings.Join(card, "\n")
	for i, row := range card {
		if len(row) > 80 {
			t.Errorf("row %d has %d columns", i+1, len(row))
		}
	}
	for _, c := range text {
		if c > '~' || c < ' ' && c != '\n' {
			t.Errorf("%q is no plain character", c)
		}
	}
	for _, l := range drill.Lines() {
		if !strings.Contains(text, l.Name) {
			t.Errorf("the %s is not named", l.Name)
		}
	}
	for _, s := range drill.Sections() {
		if !strings.Contains(text, s.Title+":") || s.Rule == "" {
			t.Errorf("the section %q is missing or has no source", s.Title)
		}
	}
	if card[len(card)-1] != drill.Closing {
		t.Errorf("the card ends with %q", card[len(card)-1])
	}
}

// The published sizes, 2.A and 2.B, and the diagonal that referees measure a court by: 14.73 m.
func TestTheCourtHasItsPublishedSize(t *testing.T) {
	const foot = 0.3048
	for _, c := range []struct {
		name      string
		feet      float64
		metres    float64
		tolerance float64
	}{
		{"length", drill.Length, 13.41, 0.005},
		{"width", drill.Width, 6.10, 0.005},
		{"kitchen", drill.Kitchen, 2.13, 0.005},
		{"net at the side", drill.NetSide / 12.0, 0.914, 0.0005},
		{"net in the middle", drill.NetCentre / 12.0, 0.864, 0.0005},
		{"diagonal", math.Hypot(drill.Length, drill.Width), 14.73, 0.005},
	} {
		if got := c.feet * foot; math.Abs(got-c.metres) > c.tolerance {
			t.Errorf("the %s is %.3f m, want %.2f", c.name, got, c.metres)
		}
	}
	for _, l := range drill.Lines() {
		for _, x := range []int{l.X1, l.X2} {
			if mirrored := drill.Length - x; l.Name == "kitchen line" && min(x, mirrored) != 15 {
				t.Errorf("the kitchen line is %d ft from a baseline, want 15", min(x, mirrored))
			}
		}
	}
}

func TestPictureBeforeAServe(t *testing.T) {
	s := scoring.Fold(toEleven, scoring.A, []scoring.Rally{{Won: scoring.A}, {Won: scoring.B}})
	want := `
    +--------------+------#------+--------------+
    |              |      #      |              |
    |              |      #      |              |
    |          A1  |      #      |              | <B1
    |              |      #      |              |
    +--------------+      #      +--------------+
    |              |      #      |              |
    |  (A2)        |      #      |         B2   |
    |              |      #      |              |
    |              |      #      |              |
    +--------------+------#------+--------------+`
	if got := "\n" + strings.Join(drill.Picture(s), "\n"); got != want {
		t.Errorf("before %s the picture is%s", s.Call(), got)
	}
}

func TestPicturesShowEverybodyOnce(t *testing.T) {
	for _, r := range []scoring.Rules{toEleven, {Scoring: scoring.RallyScoring, To: 5, WinBy: 1}, {Singles: true, To: 5, WinBy: 1}} {
		s := scoring.Start(r, scoring.B)
		rng := rand.New(rand.NewPCG(1, 1))
		for {
			picture := strings.Join(drill.Picture(s), "\n")
			for _, p := range s.Positions() {
				if strings.Count(picture, p.Seat.String()) != 1 {
					t.Fatalf("%v is not there once:\n%s", p.Seat, picture)
				}
			}
			serving := strings.Count(picture, s.Server.String()+">") + strings.Count(picture, "<"+s.Server.String())
			if want := map[bool]int{true: 0, false: 1}[s.Done]; serving != want {
				t.Fatalf("%v serves in %d places, want %d:\n%s", s.Server, serving, want, picture)
			}
			if s.Done {
				break
			}
			s = s.After(scoring.Rally{Won: scoring.Side(rng.IntN(2))})
		}
	}
}
