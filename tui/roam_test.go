package tui

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/muesli/termenv"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// anyScript are first names in scripts that take other cells than Latin letters, and the longest ones that a list
// meets.
var anyScript = []string{
	"李雷", "👩‍👩‍👧", "é", "שרה", "Zoë", "Bartholomew-Maximilian", "Ng", "e\u0301va", "王小明", "Ågot", "Łucja", "محمد", "Agnes", "Bo",
}

// rooms are the keys that lead to each screen, page, list and box from the courts.
var rooms = [][]string{
	{"d"},
	{"d", "ag"},
	{"d", "down", "right"},
	{"d", "ctrl+o"},
	{"c"},
	{"c", "117"},
	{"c", "m"},
	{"c", "enter"},
	{"c", "enter", "aab"},
	{"c", "enter", "m"},
	{"c", "v"},
	{"c", "g"},
	{"c", "x"},
	{"b"},
	{"b", "y"},
	{"b", "enter"},
	{"b", "enter", "w"},
	{"r"},
	{"r", "v"},
	{"r", "v", "v"},
	{"r", "enter"},
	{"r", "x"},
	{"r", "+", "a"},
	{"r", "m"},
	{"r", "p"},
	{"s"},
	{"s", "v"},
	{"s", "v", "v"},
	{"h"},
	{"h", "enter"},
	{"h", "t"},
	{"h", "y"},
	{"f"},
	{"f", "bo"},
	{":"},
	{":", "court"},
	{"?"},
	{"?", "/", "co"},
	{"k"},
	{"a"},
	{"M"},
	{"!"},
	{"!", "l"},
	{"o"},
	{"o", "e"},
	{"E"},
	{"E", "enter"},
	{"E", "enter", "h"},
	{"E", "enter", "h", "t"},
	{"E", "enter", "r"},
	{"t"},
	{"t", "d"},
	{"t", "c"},
	{"t", "w"},
	{"n"},
	{"u"},
}

// looks are the themes that frames are drawn in.
func looks() []*theme.Theme {
	return []*theme.Theme{
		theme.Plain(),
		theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true}),
		theme.Of(theme.Choice{Profile: termenv.TrueColor}),
		theme.Of(theme.Choice{Profile: termenv.TrueColor, Hueless: true, ASCII: true}),
	}
}

// TestRoaming goes through all screens by random keys on terminals from 20 by 5 to 300 by 100 cells, in both flows,
// in small and large halls, with names in any script: nothing panics, no frame is wider or taller than the terminal
// on a virtual one, and whatever is moved by the arrows shows where they are. QUADRILLE_LONG presses 20,000 keys, and
// QUADRILLE_SEED=1 and so on other ones.
func TestRoaming(t *testing.T) {
	keys := 600
	if os.Getenv("QUADRILLE_LONG") != "" {
		keys = 20_000
	}
	seed, _ := strconv.ParseUint(os.Getenv("QUADRILLE_SEED"), 10, 64) // 0 where it is no number
	halls := []struct{ courts, people int }{{3, 8}, {12, 37}, {24, 200}}
	for i, hall := range halls {
		for j, flow := range []session.Flow{session.Rounds, session.Rolling} {
			t.Run(fmt.Sprintf("%s/%d courts, %d people", flow, hall.courts, hall.people), func(t *testing.T) {
				w := &roamer{
					dice: rand.New(rand.NewPCG(uint64(i), 2*seed+uint64(j))), looks: looks(),
					base: secondNight(t, flow, hall.courts, hall.people).log,
				}
				w.fresh(t)
				for w.pressed < keys/6 {
					w.visit(t)
				}
				checkReplay(t, w.s)
			})
		}
	}
}

// secondNight is a night under way in a hall, of people with names in any script, after one that is over.
func secondNight(t *testing.T, flow session.Flow, courts, people int) *stage {
	t.Helper()
	s := newStage(t)
	settings := session.DefaultSettings(7)
	var known []session.PersonID
	do := func(c session.Command) {
		t.Helper()
		if _, err := s.desk.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
	for _, night := range []string{"Club night", "Second night of the club with the longest name that somebody gave it"} {
		do(session.OpenNight{Name: night, Settings: settings, Courts: courts})
		for i := range people {
			if i < len(known) {
				do(session.CheckIn{Person: known[i]})
				continue
			}
			do(session.AddGuest{Name: fmt.Sprintf("%s %s%03d", anyScript[i%len(anyScript)], lastNames[i%len(lastNames)], i)})
			known = append(known, s.night().Roll[i].Person)
		}
		s.m.take(s.desk.Ledger())
		s.plan()
		s.press("c", "n").pass(11).press("home", "117", "enter", "right", "911", "enter")
		if night == "Club night" {
			for _, g := range s.night().Running() {
				do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, 6)})
			}
			do(session.EndNight{})
			s.pass(7 * 24 * 60)
			settings.Flow = flow
		}
	}
	return s
}

// roamer walks through the desk and looks at each frame.
type roamer struct {
	dice    *rand.Rand
	looks   []*theme.Theme
	base    *session.MemoryLog
	s       *stage
	pressed int
	trail   []string // what was pressed since the desk was opened
}

// fresh opens the desk on the night as it was at first.
func (w *roamer) fresh(t *testing.T) {
	t.Helper()
	s := newStage(t)
	var records []session.Record
	for r, err := range w.base.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		records = append(records, r)
	}
	if err := s.log.Append(records); err != nil {
		t.Fatal(err)
	}
	s.now = records[len(records)-1].Time
	added := 0
	desk, err := session.NewDesk(s.log, func() time.Time { return s.now }, func() session.PersonID {
		added++
		return session.PersonID(fmt.Sprintf("q%03d", added))
	})
	if err != nil {
		t.Fatal(err)
	}
	s.desk = desk
	w.s, w.trail = s.reopen(), nil
}

// visit goes to a room and presses some keys there.
func (w *roamer) visit(t *testing.T) {
	t.Helper()
	if w.s.night() == nil || w.dice.IntN(8) == 0 {
		w.fresh(t)
	}
	look := w.looks[w.dice.IntN(len(w.looks))]
	w.s.theme, w.s.m.options.Theme = look, look
	for _, key := range slices.Concat([]string{"esc", "esc", "esc", "esc", "c"}, rooms[w.dice.IntN(len(rooms))]) {
		w.press(t, key)
	}
	for range w.dice.IntN(12) {
		switch w.dice.IntN(6) {
		case 0:
			w.resize(t, 20+w.dice.IntN(281), 5+w.dice.IntN(96))
		case 1:
			w.press(t, []string{"down", "down", "up", "end", "pgdown", "right"}[w.dice.IntN(6)])
		default:
			w.press(t, strokes[w.dice.IntN(len(strokes))])
		}
		if w.dice.IntN(20) == 0 {
			w.s.pass(w.dice.IntN(30)).send(tickMsg{})
			w.look(t)
		}
	}
}

func (w *roamer) press(t *testing.T, key string) {
	t.Helper()
	w.pressed++
	w.trail = append(w.trail, key)
	defer w.caught(t)
	if w.s.press(key); w.s.quit {
		w.s.quit = false
		w.s.reopen()
	}
	w.look(t)
}

func (w *roamer) resize(t *testing.T, width, height int) {
	t.Helper()
	w.trail = append(w.trail, fmt.Sprintf("%dx%d", width, height))
	defer w.caught(t)
	w.s.resize(width, height)
	w.look(t)
}

// caught says which keys led to a panic.
func (w *roamer) caught(t *testing.T) {
	t.Helper()
	if p := recover(); p != nil {
		t.Errorf("a panic after %q", w.trail)
		panic(p)
	}
}

// look checks the frame that stands there now.
func (w *roamer) look(t *testing.T) {
	t.Helper()
	m := w.s.m
	frame := m.View()
	lines := strings.Split(frame, "\n")
	switch widest := slices.MaxFunc(lines, func(a, b string) int { return ansi.StringWidth(a) - ansi.StringWidth(b) }); {
	case len(lines) > m.height:
		t.Fatalf("%d lines on a terminal of %d, after %q", len(lines), m.height, w.trail)
	case ansi.StringWidth(widest) > m.width:
		t.Fatalf("%d cells on a terminal of %d, after %q:\n%s", ansi.StringWidth(widest), m.width, w.trail, widest)
	}
	w.draw(t, lines)
	if m.width >= minWidth && m.height >= 24 && w.hasCursor() && !showsCursor(lines) {
		t.Fatalf("no row is marked at %dx%d, after %q:\n%s", m.width, m.height, w.trail, frame)
	}
}

// draw writes the frame on a virtual terminal: it must not scroll, and its first line must stand at the top.
func (w *roamer) draw(t *testing.T, lines []string) {
	t.Helper()
	terminal := vt.NewEmulator(w.s.m.width, w.s.m.height)
	if _, err := io.WriteString(terminal, strings.Join(lines, "\r\n")); err != nil {
		t.Fatal(err)
	}
	if at := terminal.CursorPosition(); at.Y != len(lines)-1 {
		t.Fatalf("%d lines end on row %d of a terminal of %dx%d, after %q", len(lines), at.Y+1, w.s.m.width, w.s.m.height, w.trail)
	}
	top, _, _ := strings.Cut(terminal.String(), "\n")
	if got, want := strings.TrimRight(ansi.Strip(top), " "), strings.TrimRight(ansi.Strip(lines[0]), " "); !strings.HasPrefix(got, want[:min(9, len(want))]) {
		t.Fatalf("the first line is %q on the terminal, want %q, after %q: too wide is %q", got, want, w.trail, tooWide(lines, w.s.m.width))
	}
}

// tooWide is the first line that takes more than one row of a terminal.
func tooWide(lines []string, width int) string {
	for _, l := range lines {
		terminal := vt.NewEmulator(width, 9)
		if _, err := io.WriteString(terminal, l+"\r\n"); err != nil || terminal.CursorPosition().Y > 1 {
			return l
		}
	}
	return ""
}

// hasCursor tells whether what is shown has rows that the arrows go through.
func (w *roamer) hasCursor() bool {
	m := w.s.m
	switch d := m.dialog().(type) {
	case nil:
	case *dialog.Form:
		return true
	case *matters:
		return len(m.mind.open()) > 0
	case *palette.Palette:
		_, some := d.Actions(m.dialogContext(d))[1].Do("enter").(ui.Close)
		return some
	default:
		return false
	}
	c := m.context()
	n := c.Night()
	if n == nil || m.past != nil {
		return false
	}
	switch m.active {
	case ui.Courts:
		return !m.courts.Typing() // which the page of a single court is
	case ui.Bench:
		return len(n.Bench()) > 0
	case ui.History:
		return len(m.ledger.Actions()) > 0
	case ui.TimelinePage:
		return len(n.Courts) > 0
	}
	return false
}

// markedCourt is the mark before a court of two digits.
var markedCourt = regexp.MustCompile(`>[0-9]{2} `)

// showsCursor tells whether a row is marked.
func showsCursor(lines []string) bool {
	return slices.ContainsFunc(lines, func(l string) bool {
		l = ansi.Strip(l)
		return strings.Contains(l, "▌") || strings.Contains(l, "> ") || strings.HasPrefix(l, ">") || strings.Contains(l, ">│") || markedCourt.MatchString(l)
	})
}
