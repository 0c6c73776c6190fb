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
}).ParseFS(files, "page/page.html"))

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

	mu    sync.Mutex
	mines map[string][]byte // mine as an event by key, "" for all whose key is unknown
}

// What the page says where there is more to say than the view.
const (
	notYet    = "The desk is not open yet. The night stands here as soon as it is."
	noNight   = "No night goes on."
	noDesk    = "The desk is closed at the moment. You see what it showed last."
	nightOver = "The night is over. Thank you for playing!"
)

func newState(v *public.View, notice string) *state {
	return &state{view: v, notice: notice, replaced: make(chan struct{}), mines: map[string][]byte{}}
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
	if part == mine {
		return s.mine(key)
	}
	s.shared.Do(func() {
		data := s.shown("")
		s.parts = map[string][]byte{top: event(top, draw(top, data)), hall: event(hall, draw(hall, data))}
	})
	return s.parts[part]
}

// mine is drawn once for each person in the hall, and once for everybody else, so that made-up keys take no
// room.
func (s *state) mine(key string) []byte {
	a := answerTo(s.view, key)
	at := key
	if a.Name == "" && key != "" {
		at = "gone"
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	out, drawn := s.mines[at]
	if !drawn {
		out = event(mine, draw(mine, a))
		s.mines[at] = out
	}
	return out
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
