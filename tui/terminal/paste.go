package terminal

import (
	"time"

	"github.com/charmbracelet/x/term"
)

// The marks that a terminal puts around what is pasted (bracketed paste mode of xterm's control
// sequences).
const (
	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
)

// PastePause is how long nothing comes in the middle of a paste that has lost its end.
const PastePause = 300 * time.Millisecond

// Pastes ends a paste whose end mark was lost, on a connection that broke for a moment for example, with
// the first key after a pause. Without it the program would take all keys for text that is still being
// pasted, and wait for ever.
type Pastes struct {
	term.File
	now   func() time.Time
	open  bool
	last  time.Time // something of the open paste came
	marks [2]int    // how much of the start mark and of the end mark was read
}

// NewPastes reads keys from a terminal.
func NewPastes(in term.File, now func() time.Time) *Pastes { return &Pastes{File: in, now: now} }

// Name is the name of the file, which is needed to wait for keys.
func (p *Pastes) Name() string {
	if n, ok := p.File.(interface{ Name() string }); ok {
		return n.Name()
	}
	return ""
}

// Read reads keys. An end mark may come before them, so less is read than there is room for.
func (p *Pastes) Read(b []byte) (int, error) {
	n, err := p.File.Read(b[:max(1, len(b)-len(pasteEnd))])
	if n <= 0 {
		return n, err
	}
	now := p.now()
	if lost := p.open && now.Sub(p.last) >= PastePause; lost && n+len(pasteEnd) <= len(b) {
		copy(b[len(pasteEnd):], b[:n])
		copy(b, pasteEnd)
		n += len(pasteEnd)
	}
	for _, c := range b[:n] {
		p.follow(c)
	}
	p.last = now
	return n, err
}

// follow takes note of marks.
func (p *Pastes) follow(c byte) {
	for i, mark := range []string{pasteStart, pasteEnd} {
		switch {
		case c == mark[p.marks[i]]:
			p.marks[i]++
		case c == mark[0]:
			p.marks[i] = 1
		default:
			p.marks[i] = 0
		}
		if p.marks[i] == len(mark) {
			p.marks[i], p.open = 0, mark == pasteStart
		}
	}
}
