package board

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"club/quadrille/session/public"
	"club/quadrille/tui/theme"
)

// people are invented; among them are letters with accents, a very long name, and one of another script.
var people = []string{
	"Agnes V.", "Bram O.", "Cleo H.", "Dario F.", "Edda N.", "Finn N.", "Greta U.", "Hugo P.", "Iris L.", "Jonas M.", "Kaya S.", "Lio T.",
	"Maud E.", "Nils R.", "Oona B.", "Pavel D.", "Øyvind Å.", "Zoë Q.", "Bartholomew-Alexander K.", "李雷", "Quinn J.", "Rosa C.", "Sven G.", "Tilda W.",
}

func person(i int) string {
	if k := i / len(people); k > 0 {
		return fmt.Sprintf("%s%d", people[i%len(people)], k+1)
	}
	return people[i]
}

// hall is a night in rounds on so many courts, with four people on each and some on the bench.
func hall(courts, bench int) *public.View {
	v := &public.View{Version: 1, Clock: "19:48", Open: true, Night: "Thursday night", Round: 3, Rounds: 8, Here: 4*courts + bench, Closing: "21:30", Left: 102}
	at := 0
	who := func(k int) (out []string) {
		for range k {
			out = append(out, person(at))
			at++
		}
		return out
	}
	for i := range courts {
		c := public.Court{Name: fmt.Sprint(i + 1), State: public.Playing, Minutes: 7, A: who(2), B: who(2)}
		switch i % 4 {
		case 1:
			c.State, c.Score, c.Winner = public.Over, []int{11, 7}, "a"
		case 2:
			c.Score = []int{8, 9}
		}
		v.Courts = append(v.Courts, c)
	}
	for _, name := range who(bench) {
		v.Bench = append(v.Bench, public.Waiting{Name: name, Minutes: 7, Until: 6})
	}
	v.Next.Round = 4
	for i := range courts {
		v.Next.Games = append(v.Next.Games, public.Game{
			Court: fmt.Sprint(i + 1), A: []string{person(4*i + 2), person(4 * i)}, B: []string{person(4*i + 1), person(4*i + 3)},
		})
	}
	v.Next.Out = []string{"Agnes V.", "Hugo P."}[:min(2, bench)]
	for i := range v.Here {
		v.Standings = append(v.Standings, public.Place{Rank: i + 1, Names: []string{person(i)}, Games: 2, Wins: (2*v.Here - 2*i) / v.Here})
		v.People = append(v.People, public.Person{Name: person(i)})
	}
	return v
}

// sizes are those of a narrow window, of a large font, and of a wall.
var sizes = [][2]int{{40, 12}, {80, 24}, {213, 60}}

// frame draws a board of some size after some time.
func frame(v *public.View, size [2]int, passed time.Duration, change func(*Board)) string {
	b := &Board{view: v, theme: theme.Plain(), pen: newPen(false), width: size[0], height: size[1], passed: passed}
	if change != nil {
		change(b)
	}
	return strings.Join(b.Lines(), "\n")
}

// TestGoldenBoards are boards as they were looked at from afar and found good.
func TestGoldenBoards(t *testing.T) {
	called := hall(4, 2)
	for i := range called.Courts {
		called.Courts[i] = public.Court{Name: fmt.Sprint(i + 1), State: public.Called, A: called.Courts[i].A, B: called.Courts[i].B}
	}
	message := hall(4, 2)
	message.Messages = []public.Message{{Text: "Pizza at 20:30", Until: "20:30"}}
	held := hall(4, 2)
	held.Hold = &public.Hold{Why: "lightning or thunder", Minutes: 5}
	rolling := hall(4, 9)
	rolling.Round, rolling.Rounds, rolling.Next = 0, 0, public.Next{Games: []public.Game{{A: []string{"Maud E.", "Zoë Q."}, B: []string{"Nils R.", "李雷"}}}}
	shared := hall(4, 2)
	shared.Phones = "http://192.168.1.20:8470/"
	code := func(b *Board) {
		b.code = func(_ string, width, height int) []string {
			if width < 10 || height < 5 {
				return nil
			}
			return slices.Repeat([]string{"▀▄ squares"}, 5)
		}
	}
	ascii := func(b *Board) {
		b.theme, b.pen = theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true}), newPen(true)
	}
	for _, c := range []struct {
		name   string
		view   *public.View
		passed time.Duration
		change func(*Board)
	}{
		{"1 court", hall(1, 0), 0, nil},
		{"4 courts", hall(4, 2), 0, nil},
		{"4 courts, next", hall(4, 2), 16 * time.Second, nil},
		{"4 courts, out", hall(4, 2), 32 * time.Second, nil},
		{"4 courts, standings", hall(4, 2), 72 * time.Second, nil},
		{"4 courts called", called, 30 * time.Second, nil},
		{"4 courts and a message", message, 0, nil},
		{"4 courts rolling", rolling, 16 * time.Second, nil},
		{"9 courts", hall(9, 3), 0, nil},
		{"16 courts", hall(16, 0), 0, nil},
		{"held", held, 0, nil},
		{"no night", &public.View{Version: 1, Clock: "19:48"}, 0, nil},
		{"waiting", nil, 0, func(b *Board) { b.away, b.file = true, "/home/ann/club.qdb" }},
		{"away", hall(4, 2), 0, func(b *Board) { b.away = true }},
		{"refused", nil, 0, func(b *Board) { b.away, b.why = true, "This board is of an older Quadrille (v1) than the desk (v2)." }},
		{"4 courts, phones", shared, 94 * time.Second, code},
		{"ascii", hall(2, 2), 0, ascii},
	} {
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s/%dx%d", c.name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, frame(c.view, size, c.passed, c.change))
			})
		}
	}
}
