package phones

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"strconv"
	"strings"
	"sync"

	"club/quadrille/session/public"
)

//go:embed page
var files embed.FS

var pages = template.Must(template.New("").Funcs(template.FuncMap{
	"team":    together,
	"minutes": inMinutes,
	"signed":  func(n int) string { return strings.ReplaceAll(fmt.Sprintf("%+d", n), "-", "−") },
	"state":   inState,
}).ParseFS(files, "page/page.html", "page/court.html"))

// asset is a file as it stands in the program.
func asset(name string) []byte {
	text, err := files.ReadFile("page/" + name)
	if err != nil {
		panic(err) // it is built in
	}
	return text
}

// inState is how it stands on a court.
func inState(c public.Court) string {
	score := ""
	if len(c.Score) == 2 {
		score = strconv.Itoa(c.Score[0]) + "-" + strconv.Itoa(c.Score[1])
	}
	switch c.State {
	case public.Called:
		return "go now"
	case public.Planned:
		return "comes next"
	case public.Over:
		return strings.TrimSpace("over " + score)
	case public.Playing:
		if score != "" {
			score = ", " + score
		}
		return inMinutes(c.Minutes) + score
	}
	return c.State
}

// The parts of the page that change, as the stream and the script call them.
const (
	top  = "top"
	mine = "mine"
	hall = "hall"
)

// state is what the page shows from one moment to the next. It is drawn when the first phone asks, and once for
// all.
type state struct {
	view     *public.View // the newest that was told, nil before the first
	notice   string       // what is to be said before all else
	over     bool         // nothing comes after this
	replaced chan struct{}

	shared sync.Once
	parts  map[string][]byte // top and hall as events
	mines  map[string]*piece // mine by key, once more for nobody and for somebody who is not here
}

// piece is an event that is drawn when the first phone asks for it.
type piece struct {
	once  sync.Once
	event []byte
}

// gone stands for all keys of people who are not in the hall, so that made-up ones take no room.
const gone = "gone"

// What the page says where there is more to say than the view.
const (
	notYet    = "The desk is not open yet. The night stands here as soon as it is."
	noNight   = "No night goes on."
	noDesk    = "The desk is closed at the moment. You see what it showed last."
	nightOver = "The night is over. Thank you for playing!"
)

func newState(v *public.View, notice string) *state {
	return &state{view: v, notice: notice, replaced: make(chan struct{})}
}

// shown is what the templates draw.
type shown struct {
	Title  string
	Night  string
	Notice string
	View   *public.View
	People []public.Person
	Mine   answer
	Again  bool
}

func (s *state) shown(key string) shown {
	out := shown{Night: "Tonight", Notice: s.notice, Mine: answerTo(s.view, key)}
	if s.view != nil && s.view.Open {
		out.View, out.People = s.view, s.view.People
		if s.view.Night != "" {
			out.Night = s.view.Night
		}
	}
	out.Title = out.Night
	if out.Mine.Name != "" {
		out.Title = out.Mine.Head + " – " + out.Night
	}
	return out
}

// page is the whole page for the person with a key, who may want it again by itself.
func (s *state) page(key string, again bool) []byte {
	data := s.shown(key)
	data.Again = again
	return draw("page", data)
}

func draw(name string, data any) []byte {
	var out bytes.Buffer
	if err := pages.ExecuteTemplate(&out, name, data); err != nil {
		panic(err) // the templates fit the data, whatever it holds; a buffer takes everything
	}
	return out.Bytes()
}

// event is a part of the page as an event of the stream.
func (s *state) event(part, key string) []byte {
	s.shared.Do(s.share)
	if part == mine {
		return s.mine(key)
	}
	return s.parts[part]
}

// share draws what is the same for all, and makes room for what is not.
func (s *state) share() {
	data := s.shown("")
	s.parts = map[string][]byte{top: event(top, draw(top, data)), hall: event(hall, draw(hall, data))}
	s.mines = map[string]*piece{"": {}, gone: {}}
	if s.view != nil {
		for _, p := range s.view.People {
			s.mines[p.Key] = &piece{}
		}
	}
}

// mine is drawn once for each person in the hall whom a phone follows. Phones of others do not wait for it.
func (s *state) mine(key string) []byte {
	p, here := s.mines[key]
	if !here {
		p = s.mines[gone]
	}
	p.once.Do(func() { p.event = event(mine, draw(mine, answerTo(s.view, key))) })
	return p.event
}

// event writes an event of a stream. Data has no lines of its own: in HTML a blank does the same.
func event(name string, data []byte) []byte {
	data = bytes.Map(func(r rune) rune {
		if r == '\n' || r == '\r' {
			return ' '
		}
		return r
	}, data)
	return fmt.Appendf(nil, "event: %s\ndata: %s\n\n", name, data)
}
