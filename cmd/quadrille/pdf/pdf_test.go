package pdf

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"club/quadrille/session/paper"
)

// made is when all sheets of the tests are made.
var made = time.Date(2026, 11, 20, 18, 30, 0, 0, time.UTC)

// night is a big night with long names, and letters of many languages.
func night(people, courts, rounds int) paper.Night {
	n := paper.Night{Title: "Night 7, 2026-11-20: Zoë’s Łódź ćup"}
	first := []string{"Zoë", "Łukasz", "Šárka", "Ján", "Ġorġ", "Ólafur", "Nguyễn", "Ελένη", "Юрий", "Renée"}
	for i := range people {
		name := fmt.Sprintf("%s Öztürk %02d", first[i%len(first)], i)
		n.People = append(n.People, paper.Person{Name: name, Full: name, Group: "x"})
	}
	for r := range rounds {
		round := paper.Round{Number: r + 1}
		at := func(i int) string { return n.People[(i*7+r*4)%people].Name }
		for c := range courts {
			round.Games = append(round.Games, paper.Game{Court: fmt.Sprint(c + 1), A: []string{at(4 * c), at(4*c + 1)}, B: []string{at(4*c + 2), at(4*c + 3)}})
		}
		for i := 4 * courts; i < people; i++ {
			round.Out = append(round.Out, at(i))
		}
		round.Mark = paper.Mark(round.Games)
		n.Rounds = append(n.Rounds, round)
	}
	return n
}

// write makes a PDF.
func write(t *testing.T, s paper.Sheet, on Size) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, s, on, made); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// textOf is the text of the pages of a PDF as another program reads it, with single blanks.
func textOf(t *testing.T, made []byte) []string {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("poppler is not installed: apt-get install poppler-utils")
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, made, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-layout", "-enc", "UTF-8", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for page := range strings.SplitSeq(strings.TrimSuffix(string(out), "\f"), "\f") {
		pages = append(pages, strings.Join(strings.Fields(page), " "))
	}
	return pages
}

// TestAnotherProgramReadsTheRotation: what stands on the pages are the games of the night, each in its round and on one
// page with it, on both sizes of paper and for nights small and big.
func TestAnotherProgramReadsTheRotation(t *testing.T) {
	for _, size := range []Size{A4, Letter} {
		for _, of := range []struct{ people, courts, rounds int }{{5, 1, 3}, {18, 4, 8}, {60, 14, 10}, {64, 16, 4}} {
			t.Run(fmt.Sprintf("%v/%d", size, of.people), func(t *testing.T) {
				n := night(of.people, of.courts, of.rounds)
				pages := textOf(t, write(t, paper.Rotation(n), size))
				for i, page := range pages {
					if foot := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(page, foot) {
						t.Errorf("page %d does not say %q: %s", i+1, foot, page)
					}
				}
				for _, r := range n.Rounds {
					whole := false
					for _, page := range pages {
						whole = whole || holdsRound(page, r)
					}
					if !whole {
						t.Errorf("no page has all of round %d", r.Number)
					}
				}
				if most := of.rounds + 1; len(pages) > most {
					t.Errorf("%d pages for %d rounds", len(pages), of.rounds)
				}
			})
		}
	}
}

// holdsRound tells whether a page has all of a round, in order.
func holdsRound(page string, r paper.Round) bool {
	_, rest, ok := strings.Cut(page, fmt.Sprintf("Round %d %s", r.Number, r.Mark))
	for _, g := range r.Games {
		var found bool
		_, rest, found = strings.Cut(rest, fmt.Sprintf("%s %s v %s", g.Court, paper.Team(g.A), paper.Team(g.B)))
		ok = ok && found
	}
	return ok && (len(r.Out) == 0 || strings.Contains(rest, "Sits out: "+strings.Join(r.Out, ", ")))
}

// TestEqualSheetsGiveEqualBytes: and the font, which the library is given each time, stays as it was.
func TestEqualSheetsGiveEqualBytes(t *testing.T) {
	n := night(18, 4, 3)
	if !bytes.Equal(write(t, paper.Rotation(n), A4), write(t, paper.Rotation(n), A4)) {
		t.Error("two prints of one rotation differ")
	}
}

// TestWhatTheFontLacksIsNamed: letters that are missing, and those of scripts whose letters join.
func TestWhatTheFontLacksIsNamed(t *testing.T) {
	got := MissingIn([]string{"Zoë Łukasz Ελένη Юрий Nguyễn e\u0301", "李 Wei 李", "עדי", "a🏓b"})
	want := []Missing{{"李 Wei 李", "李"}, {"עדי", "עדי"}, {"a🏓b", "🏓"}}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("missing are %v, want %v", got, want)
	}
	n := night(8, 2, 1)
	n.Rounds[0].Games[0].A[0] = "李 Wei 🏓"
	if pages := textOf(t, write(t, paper.Rotation(n), A4)); !strings.Contains(pages[0], "□ Wei □") {
		t.Errorf("a letter that is missing has no sign in its place: %s", pages[0])
	}
}

// TestNothingIsWiderThanItsRoom: names without a blank, and as long as names may be, are broken.
func TestNothingIsWiderThanItsRoom(t *testing.T) {
	n := night(8, 2, 1)
	long := strings.Repeat("Wolfeschlegel", 6)
	n.Rounds[0].Games[0].A, n.Rounds[0].Games[0].B = []string{long, long}, []string{long, long}
	pages := textOf(t, write(t, paper.Rotation(n), A4))
	if got := strings.Count(strings.ReplaceAll(strings.Join(pages, ""), " ", ""), "W"); got < 24 {
		t.Errorf("%d of 24 beginnings are on the page: %v", got, pages)
	}
}
