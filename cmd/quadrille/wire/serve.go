package wire

import (
	"errors"
	"io"
	"net"
	"sync"
	"time"
)

// MaxBoards is how many boards may follow a desk.
const MaxBoards = 16

// maxGreeting is how many may be about to say hello.
const maxGreeting = 16

// pace are the times that a server keeps.
type pace struct {
	hello time.Duration // for a hello to come
	write time.Duration // for a frame to go out
	beat  time.Duration // between two frames, at most
}

// usualPace is that of a desk. A board takes a frame in far less than a millisecond.
var usualPace = pace{hello: 2 * time.Second, write: 5 * time.Second, beat: 10 * time.Second}

// Server is a desk's side of the socket. Its methods may be called from any goroutine, and none waits for a
// board.
type Server struct {
	listener net.Listener
	program  string
	pace     pace
	running  sync.WaitGroup

	mu     sync.Mutex
	closed bool
	conns  map[net.Conn]*board // with nil for who has not said hello yet
	newest *state
}

// state is what the hall may see, made into a frame when the first board wants it, and for all of them.
type state struct {
	make  func() ([]byte, error)
	once  sync.Once
	frame []byte
}

func (s *state) bytes() []byte {
	s.once.Do(func() {
		if body, err := s.make(); err == nil {
			s.frame = frame(body)
		}
	})
	return s.frame
}

// board is who follows.
type board struct {
	page  string        // address at which it shows the views on, "" for a board that hangs on a wall
	fresh chan struct{} // has room for one: there is a newer state
}

// Serve lets boards follow what is shown from now on. It takes the listener over.
func Serve(l net.Listener, program string) *Server { return serve(l, program, usualPace) }

func serve(l net.Listener, program string, p pace) *Server {
	s := &Server{listener: l, program: program, pace: p, conns: map[net.Conn]*board{}}
	s.running.Go(s.accept)
	return s
}

// Show makes something the newest state. Make gives it as JSON; it is called in another goroutine, once, and
// only if a board follows.
func (s *Server) Show(make func() ([]byte, error)) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.newest = &state{make: make}
	for _, b := range s.conns {
		b.wake()
	}
}

func (b *board) wake() {
	if b == nil {
		return
	}
	select {
	case b.fresh <- struct{}{}:
	default: // it knows already
	}
}

// Close cuts all boards off and returns when nothing of the server runs any more.
func (s *Server) Close() error {
	s.mu.Lock()
	s.closed = true
	for c := range s.conns {
		_ = c.Close()
	}
	s.mu.Unlock()
	err := s.listener.Close()
	s.running.Wait()
	return err
}

// accept takes connections until the listener is closed.
func (s *Server) accept() {
	const rest = 50 * time.Millisecond // after a failure, such as too many open files
	for {
		c, err := s.listener.Accept()
		switch {
		case errors.Is(err, net.ErrClosed):
			return
		case err != nil:
			time.Sleep(rest)
		case !s.admit(c):
			_ = c.Close()
		default:
			s.running.Go(func() {
				defer s.drop(c)
				s.greet(c)
			})
		}
	}
}

// admit takes note of a connection, if there is room for one that has not said hello.
func (s *Server) admit(c net.Conn) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed || len(s.conns)-s.following() >= maxGreeting {
		return false
	}
	s.conns[c] = nil
	return true
}

// following counts the boards.
func (s *Server) following() (k int) {
	for _, b := range s.conns {
		if b != nil {
			k++
		}
	}
	return k
}

func (s *Server) drop(c net.Conn) {
	_ = c.Close()
	s.mu.Lock()
	defer s.mu.Unlock()
	gone := s.conns[c]
	delete(s.conns, c)
	s.tellPage(gone)
}

// greet hears the hello of a board, answers it, and lets the board follow unless it cannot.
func (s *Server) greet(c net.Conn) {
	_ = c.SetReadDeadline(time.Now().Add(s.pace.hello))
	theirs, err := readHello(c, isBoard)
	if err != nil {
		return
	}
	ours := newHello(isDesk, s.program)
	ours.Refused = fits(theirs, ours)
	var b *board
	if ours.Refused == "" {
		if b = s.join(c, theirs.page()); b == nil {
			ours.Refused = "This desk has as many boards as it can have. Close one of them."
		}
	}
	answer, err := frameOf(ours)
	if err != nil || !s.write(c, answer) || b == nil {
		return
	}
	s.feed(c, b)
}

// join makes a connection that of a board, if there is room for one; else it gives nil.
func (s *Server) join(c net.Conn, page string) *board {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed || s.following() >= MaxBoards {
		return nil
	}
	b := &board{fresh: make(chan struct{}, 1), page: page}
	b.wake() // what is shown already is new to it
	s.conns[c] = b
	s.tellPage(b)
	return b
}

// tellPage makes the newest state anew where a page has come or gone, since its address is shown.
func (s *Server) tellPage(b *board) {
	if b == nil || b.page == "" || s.newest == nil {
		return
	}
	s.newest = &state{make: s.newest.make}
	for _, b := range s.conns {
		b.wake()
	}
}

// Page is the address at which one of those who follow shows the views on to phones, "" where nobody does.
func (s *Server) Page() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	least := ""
	for _, b := range s.conns {
		if b != nil && b.page != "" && (least == "" || b.page < least) {
			least = b.page
		}
	}
	return least
}

// feed sends the newest state whenever there is one, until the board is gone or says something.
func (s *Server) feed(c net.Conn, b *board) {
	gone := make(chan struct{})
	s.running.Go(func() {
		defer close(gone)
		_ = c.SetReadDeadline(time.Time{})
		_, _ = io.ReadFull(c, make([]byte, 1)) // a board has nothing more to say
		_ = c.Close()                          // which ends a write that goes on, too
	})
	beat := time.NewTimer(s.pace.beat)
	defer beat.Stop()
	var sent string
	for {
		out := alive
		select {
		case <-gone:
			return
		case <-b.fresh:
			out = s.state()
			if out == nil || string(out) == sent {
				continue
			}
			sent = string(out)
		case <-beat.C:
		}
		if !s.write(c, out) {
			return
		}
		beat.Reset(s.pace.beat)
	}
}

// alive is the frame that only says that the desk lives.
var alive = frame([]byte("{}"))

// state is the newest one as a frame, nil where there is none.
func (s *Server) state() []byte {
	s.mu.Lock()
	newest := s.newest
	s.mu.Unlock()
	if newest == nil {
		return nil
	}
	return newest.bytes()
}

// write sends a frame, if the other side takes it in time.
func (s *Server) write(c net.Conn, out []byte) bool {
	_ = c.SetWriteDeadline(time.Now().Add(s.pace.write))
	_, err := c.Write(out)
	return err == nil
}
