// Package terminal asks the terminal for its background without ever waiting for it.
//
// The question goes out behind the first frame, so that it delays nothing. The answer comes back among
// the keys: it is taken out of them, whenever it comes and however it is cut into pieces, and counts only
// when it is quick, since colours that change in the middle of work are worse than the wrong ones.
package terminal

import (
	"bytes"
	"io"
	"strings"
	"sync"
	"time"

	"github.com/charmbracelet/x/term"
)

// Limit is how long an answer counts.
const Limit = 100 * time.Millisecond

// question asks for the background colour (OSC 11 of xterm's control sequences); answers begin like it.
const (
	question = "\x1b]11;?\x1b\\"
	opening  = "\x1b]11;"
)

// Terminal stands between a program and its terminal. Input and Output are what the program uses.
type Terminal struct {
	in  term.File
	out term.File
	now func() time.Time

	mu     sync.Mutex
	armed  bool      // the question goes out behind the next frame
	asked  time.Time // when it went out, zero before
	seen   int       // how much of the opening of an answer was read
	held   []byte    // that much, but an escape that went through as the key that it may be
	body   []byte    // the answer behind the opening, as far as it was read
	answer func(light bool)
}

// Wrap stands between a program and its terminal. Answer is called once, from the goroutine that reads
// keys, when the terminal has told its background within the limit.
func Wrap(in, out term.File, now func() time.Time, answer func(light bool)) *Terminal {
	return &Terminal{in: in, out: out, now: now, answer: answer}
}

// Ask lets the question go out behind the next frame. Only the first call does anything.
func (t *Terminal) Ask() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.armed = t.asked.IsZero()
}

// Input is where keys come from, without answers.
func (t *Terminal) Input() io.Reader { return input{t.in, t} }

// Output is where frames go to.
func (t *Terminal) Output() io.Writer { return output{t.out, t} }

// output and input stay files, since the program sets the terminal's mode through them.
type output struct {
	term.File
	t *Terminal
}

func (o output) Write(p []byte) (int, error) {
	n, err := o.File.Write(p)
	o.t.mu.Lock()
	defer o.t.mu.Unlock()
	if err == nil && o.t.armed && bytes.IndexByte(p, '\n') >= 0 { // a frame has lines; modes are set before it without any
		o.t.armed = false
		if _, err := io.WriteString(o.File, question); err == nil {
			o.t.asked = o.t.now()
		}
	}
	return n, err
}

type input struct {
	term.File
	t *Terminal
}

// Name is the name of the file, which is needed to wait for keys.
func (i input) Name() string {
	if n, ok := i.File.(interface{ Name() string }); ok {
		return n.Name()
	}
	return ""
}

// Read reads keys. What was held before comes with what follows it, so less is read than there is room for.
func (i input) Read(p []byte) (int, error) {
	n, err := i.File.Read(p[:max(1, len(p)-len(opening)-longest)])
	if n <= 0 {
		return n, err
	}
	return copy(p, i.t.filter(p[:n])), err
}

// filter takes answers out of what was read.
func (t *Terminal) filter(read []byte) []byte {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.asked.IsZero() {
		return read
	}
	var keys []byte
	for i, b := range read {
		keys = t.sift(keys, b, i == len(read)-1)
	}
	return keys
}

// sift takes the next byte: a key, or a part of an answer. What may be the beginning of an answer is held
// until more comes. An escape at the end of what was read is never held, since it is a key, and who
// presses it must not wait.
func (t *Terminal) sift(keys []byte, b byte, last bool) []byte {
	switch {
	case t.seen < len(opening) && b == opening[t.seen]:
		t.seen++
		if t.seen == 1 && last {
			return append(keys, b)
		}
		t.held = append(t.held, b)
		return keys
	case t.seen == len(opening) && len(t.body) < longest:
		t.body = append(t.body, b)
		if colour, whole := answered(t.body); whole {
			t.take(colour)
			t.held, t.body, t.seen = nil, nil, 0
		}
		return keys
	case t.seen == 0:
		return append(keys, b)
	}
	// what was held is no answer: it goes through as the keys that it is
	keys = append(append(keys, t.held...), t.body...)
	t.held, t.body, t.seen = nil, nil, 0
	return t.sift(keys, b, last)
}

// longest is more than the colour of any answer has.
const longest = 40

// answered tells whether an answer is whole: it ends with BEL, or with ESC and a backslash.
func answered(body []byte) (colour string, whole bool) {
	for _, end := range []string{"\a", "\x1b\\"} {
		if colour, ok := strings.CutSuffix(string(body), end); ok {
			return colour, true
		}
	}
	return "", false
}

// take tells the program what the answer was, if it was quick enough and can be read.
func (t *Terminal) take(colour string) {
	light, ok := Light(colour)
	if !ok || t.answer == nil || t.now().Sub(t.asked) > Limit {
		return
	}
	t.answer(light)
	t.answer = nil
}
