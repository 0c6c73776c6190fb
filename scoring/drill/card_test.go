package drill_test

import (
	"math"
	"math/rand/v2"
	"slices"
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

// TestTheNamesStandAtTheirParts: each box is on its own left or right of somebody who faces the net.
func TestTheNamesStandAtTheirParts(t *testing.T) {
	want := []string{
		"baseline             net             baseline",
		"+--------------+sideline-----+--------------+",
		"|              |      #      |              |",
		"|   left box   |      #      |  right box   |",
		"|              |      #      |              |",
		"|              | kit- # kit- |              |",
		"+-centre line--+ chen # chen +-centre line--+",
		"|              |      #      |              |",
		"|              |      #      |              |",
		"|   right box  |      #      |  left box    |",
		"|              |      #      |              |",
		"+--------------+------#------+--------------+",
		"         kitchen line  kitchen line",
	}
	card := drill.Card()
	top := slices.IndexFunc(card, func(row string) bool { return strings.HasPrefix(row, "baseline") })
	for i, row := range want {
		if !strings.HasPrefix(card[top+i], row) {
			t.Errorf("row %d of the court is\n%s\nwant\n%s", i+1, card[top+i], row)
		}
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
			s = s.After(scoring.Rally{Won: scoring.Team(rng.IntN(2))})
		}
	}
}

// What the card says and where it stands: numbers of the USA Pickleball Official Rulebook 2025 (the 2026 book
// is numbered anew), looked up in public digests of both.
func TestTheCardSaysWhatTheRulebookSays(t *testing.T) {
	text := strings.Join(strings.Fields(strings.Join(drill.Card(), " ")), " ")
	said := map[string]string{}
	for _, s := range drill.Sections() {
		said[s.Title] = s.Text
	}
	for _, c := range []struct{ section, says, source string }{
		{"Lines", "All are in", "2.A: measured to the outside of the lines; 7.D: a ball that lands out is a fault"},
		{"Lines", "a serve on the kitchen line is out", "4.M; 2026: 7.E.1-4: a serve into the kitchen or on its line is a fault"},
		{"Serve", "The ball may touch the net", "no service let since 2021: a serve that touches the net and lands good is live"},
		{"Two bounces", "Serve and return bounce first", "7.A; 2026: 10.A.1, 10.A.2"},
		{"Two bounces", "A volley is a hit before the bounce", "section 3, definitions"},
		{"Kitchen (non-volley zone)", "No volley in it or on its line", "9.B, 9.D; 2026: 11.A.1, 11.A.3; 2.B: its lines belong to it"},
		{"Kitchen (non-volley zone)", "nor carried into it", "9.C; 2026: 11.A.2"},
		{"Fault", "you touching the net", "7.G; 2026: 13.G.1, 13.H.1"},
		{"Fault", "bounced twice", "7.E; 2026: 10.B.1"},
		{"Fault", "on your body", "7.H; 2026: 10.C.3"},
		{"Point", "Only the serving team scores", "2026: 4.A"},
		{"Start", "0-0-2", "4.B.6; 2026: 5.B, 5.B.2"},
		{"Boxes", "Own score even: your starting server stands right", "4.B.4; 2026: 5.B.3"},
		{"Side out", "first whoever stands in its right box", "2026: 5.B.2"},
		{"Game", "To 11, ahead by 2. At 6 the teams switch ends", "12.B, 12.B.1.a; 2026: 15.C.1, 21.B"},
	} {
		if !strings.Contains(said[c.section], c.says) {
			t.Errorf("%s does not say %q (%s): %q", c.section, c.says, c.source, said[c.section])
		}
	}
	if n := strings.Count(text, "non-volley zone"); n != 1 {
		t.Errorf("the kitchen's full name stands on the card %d times", n)
	}
}
