package phones

import (
	"context"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"club/quadrille/session/public"
)

// Listen opens the one port at which the page is found: of the address that was chosen, and no other.
func Listen(at netip.AddrPort) (net.Listener, error) { return net.Listen("tcp", at.String()) }

// Server shows the page. Its methods may be called from any goroutine, and none waits for a phone.
type Server struct {
	limits  Limits
	host    string // as browsers name it
	http    *http.Server
	pacer   *pacer
	streams *counter
	ended   chan error // by which the server of the library tells that it has ended
	closing func() error
	ctx     context.Context // ends the streams
	cancel  context.CancelFunc

	telling sync.Mutex // keeps the order of what is told
	state   atomic.Pointer[state]

	courts  atomic.Pointer[courts] // nil where courts have no pages
	tries   *pacer                 // of wrong codes, by address
	sends   *pacer                 // of scores, of all
	sending chan struct{}          // has room for the scores that the desk is asked about
}

// Serve shows the page at a listener, which it takes over, until it is closed.
func Serve(l net.Listener, limits Limits) *Server {
	s := &Server{
		limits: limits, host: l.Addr().String(), ended: make(chan error, 1),
		pacer: newPacer(limits.Burst, limits.Every, time.Now), streams: newCounter(limits.Streams, limits.StreamsEach),
		tries: newPacer(limits.Tries, limits.TryEvery, time.Now), sends: newPacer(10, 100*time.Millisecond, time.Now),
		sending: make(chan struct{}, sendsAtOnce),
	}
	s.closing = sync.OnceValue(s.end)
	s.ctx, s.cancel = context.WithCancel(context.Background())
	s.state.Store(newState(nil, notYet))
	s.http = &http.Server{
		Handler:                      s,
		ReadHeaderTimeout:            limits.Head,
		ReadTimeout:                  limits.Head,
		WriteTimeout:                 limits.Head + limits.Write,
		IdleTimeout:                  limits.Idle,
		MaxHeaderBytes:               8 << 10,
		DisableGeneralOptionsHandler: true,
		ErrorLog:                     log.New(io.Discard, "", 0), // what strangers send is no news
		Protocols:                    new(http.Protocols),
	}
	s.http.Protocols.SetHTTP1(true)
	go func() { s.ended <- s.http.Serve(gate{l, newCounter(limits.Conns, limits.ConnsEach)}) }()
	return s
}

// URL is where the page is found.
func (s *Server) URL() string { return "http://" + s.host + "/" }

// Tell makes a view the newest; nil says that the desk is closed, and leaves what it showed last.
func (s *Server) Tell(v *public.View) {
	s.telling.Lock()
	defer s.telling.Unlock()
	before := s.state.Load()
	next := newState(v, "")
	switch {
	case before.over:
		return
	case v == nil && (before.view == nil || !before.view.Open):
		next = newState(nil, notYet)
	case v == nil:
		next = newState(before.view, noDesk)
	case !v.Open:
		next.notice = noNight
	}
	s.replace(before, next)
}

// Over says that the night is over, and ends the streams. The standings stay until the server is closed.
func (s *Server) Over() {
	s.telling.Lock()
	defer s.telling.Unlock()
	before := s.state.Load()
	next := newState(before.view, nightOver)
	next.over = true
	s.replace(before, next)
}

func (s *Server) replace(before, next *state) {
	s.state.Store(next)
	close(before.replaced)
}

// Close ends everything: the port is closed, and no phone is answered any more, when it returns.
func (s *Server) Close() error { return s.closing() }

func (s *Server) end() error {
	s.cancel()
	patience, stop := context.WithTimeout(context.Background(), time.Second)
	defer stop()
	err := s.http.Shutdown(patience)
	if errors.Is(err, context.DeadlineExceeded) {
		err = s.http.Close() // who does not read is cut off
	}
	if ended := <-s.ended; !errors.Is(ended, http.ErrServerClosed) {
		err = errors.Join(err, ended)
	}
	return err
}

// headers go with every answer. Scripts and styles come from this server only, no other page may frame this one
// or read it, and nothing of it stays in a browser.
var headers = map[string]string{
	"Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
		"form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
	"X-Content-Type-Options":       "nosniff",
	"X-Frame-Options":              "DENY",
	"Referrer-Policy":              "no-referrer",
	"Cache-Control":                "no-store",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), geolocation=(), microphone=()",
}

// ServeHTTP implements http.Handler.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	for name, value := range headers {
		w.Header().Set(name, value)
	}
	from := addressOf(r.RemoteAddr)
	switch {
	case r.Host != s.host:
		// A name that leads here would let a page of that name read this one.
		s.refuse(w, http.StatusMisdirectedRequest, "This page is at "+s.URL()+" only.")
	case strings.HasPrefix(r.URL.EscapedPath(), courtPath):
		if s.paced(w, from) {
			s.court(w, r, from)
		}
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		w.Header().Set("Allow", "GET, HEAD")
		s.refuse(w, http.StatusMethodNotAllowed, "This page can only be looked at.")
	case r.ContentLength != 0 || len(r.TransferEncoding) > 0:
		s.refuse(w, http.StatusRequestEntityTooLarge, "This page takes no data.")
	case s.paced(w, from):
		s.answer(w, r, from)
	}
}

// paced tells whether an address may ask once more, and answers where it may not.
func (s *Server) paced(w http.ResponseWriter, from netip.Addr) bool {
	ok := s.pacer.take(from)
	if !ok {
		w.Header().Set("Retry-After", "10")
		s.refuse(w, http.StatusTooManyRequests, "Too many requests: wait ten seconds, then look again.")
	}
	return ok
}

// refuse says why, and closes the connection, so that nothing else of what was sent is read.
func (s *Server) refuse(w http.ResponseWriter, status int, why string) {
	w.Header().Set("Connection", "close")
	s.plain(w, status, why)
}

// plain answers with a line of text.
func (s *Server) plain(w http.ResponseWriter, status int, text string) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.WriteHeader(status)
	_, _ = io.WriteString(w, text+"\n")
}

// aKey is what keys look like. Anything else chooses nobody.
var aKey = regexp.MustCompile(`^[0-9a-f]{16}$`)

// key is the person whom a request is about, empty for none.
func key(query url.Values) string {
	if me := query.Get("me"); aKey.MatchString(me) {
		return me
	}
	return ""
}

// answer looks a path up exactly as it was written: nothing is unescaped, cleaned or redirected.
func (s *Server) answer(w http.ResponseWriter, r *http.Request, from netip.Addr) {
	query := r.URL.Query()
	switch r.URL.EscapedPath() {
	case "/":
		send(w, "text/html; charset=utf-8", s.state.Load().page(key(query), query.Get("again") == "1"))
	case "/live":
		s.stream(w, r, from, key(query))
	case "/look.css":
		send(w, "text/css; charset=utf-8", asset("look.css"))
	case "/live.js":
		send(w, "text/javascript; charset=utf-8", asset("live.js"))
	case "/icon.svg":
		send(w, "image/svg+xml", asset("icon.svg"))
	default:
		s.refuse(w, http.StatusNotFound, "There is nothing here. The page is at "+s.URL())
	}
}

// send answers with some bytes. That they do not arrive is the matter of who asked.
func send(w http.ResponseWriter, kind string, body []byte) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(body)))
	_, _ = w.Write(body)
}
