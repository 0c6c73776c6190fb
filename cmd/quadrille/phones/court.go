package phones

import (
	"context"
	"errors"
	"mime"
	"net/http"
	"net/netip"
	"net/url"
	"strconv"
	"strings"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/courtside"
)

// Send takes a score that a court's page sends to the desk, and says what became of it. It may wait, until ctx ends.
type Send func(ctx context.Context, score session.ProposeScore) error

// Courts says what the pages of courts show from now on, and who takes what they send; pages that somebody has open
// show it when they are opened anew. A server that was never told has no such pages.
func (s *Server) Courts(h courtside.Hall, send Send) { s.courts.Store(&courts{h, send}) }

// courts are the pages of courts.
type courts struct {
	hall courtside.Hall
	send Send
}

// courtPath is where the pages of courts lie, before the code. With capitals the codes for cameras get smaller
// (ISO/IEC 18004, alphanumeric mode).
const courtPath = "/C/"

// CourtURL is the address of the page of a court, in the letters that make the smallest code for cameras.
func (s *Server) CourtURL(code string) string { return CourtURL(s.URL(), code) }

// CourtURL is the address of the page of a court below the address of a server's page.
func CourtURL(page, code string) string {
	return strings.ToUpper(strings.TrimSuffix(page, "/")) + courtPath + code
}

const (
	maxForm      = 1 << 10         // bytes of a form: a tenth of that is used
	sendPatience = 5 * time.Second // with the desk, before who sends is told to go there
	sendsAtOnce  = 4               // scores that the desk is asked about at once
)

// courtHeaders are those of a court's page that differ. A browser names the origin of a form only where a referrer may
// go to the same origin (Fetch standard, 3.2).
const courtReferrer = "same-origin"

// court answers what is asked about the court of a code.
func (s *Server) court(w http.ResponseWriter, r *http.Request, from netip.Addr) {
	w.Header().Set("Referrer-Policy", courtReferrer)
	code := strings.TrimPrefix(r.URL.EscapedPath(), courtPath)
	if s.tries.spent(from) {
		w.Header().Set("Retry-After", "60")
		s.refuse(w, http.StatusTooManyRequests, "Too many wrong codes: wait a minute.")
		return
	}
	var c courtside.Court
	ok := false
	at := s.courts.Load()
	if at != nil {
		c, ok = at.hall.Court(code)
	}
	if !ok {
		s.tries.take(from)
		s.refuse(w, http.StatusNotFound, "This is no court's page of tonight: scan the code on the court's slip, or ask at the desk.")
		return
	}
	p := courtPage{Court: c, Path: courtPath + code}
	switch r.Method {
	case http.MethodGet, http.MethodHead:
		if r.ContentLength != 0 || len(r.TransferEncoding) > 0 {
			s.refuse(w, http.StatusRequestEntityTooLarge, "This page takes a form only.")
			return
		}
		p.tap(r.URL.Query())
		send(w, "text/html; charset=utf-8", draw("court", p))
	case http.MethodPost:
		s.score(w, r, p, at.send)
	default:
		w.Header().Set("Allow", "GET, HEAD, POST")
		s.refuse(w, http.StatusMethodNotAllowed, "This page can be looked at, and takes a score.")
	}
}

// courtPage is what the template of a court's page draws.
type courtPage struct {
	Court   courtside.Court
	Path    string
	Notice  string
	Tapping bool
	Board   courtside.Board
	A, B    string // what stands in the form
	By      string
}

// Before are the rallies of the board without the last.
func (p courtPage) Before() string { return p.Board.Rallies[:max(0, len(p.Board.Rallies)-1)] }

// Passes says how a score comes to count.
func (p courtPage) Passes() string {
	switch p.Court.Pass {
	case session.BothSent:
		return "A score counts once both teams have sent the same, or the organiser takes it."
	case session.AllPass:
		return "A score counts as soon as you send it."
	}
	return "A score counts once the organiser takes it."
}

// tap shows the board of the rallies that were tapped, and whether a score was sent.
func (p *courtPage) tap(query url.Values) {
	if query.Get("sent") == "1" {
		p.Notice = "Thank you: the desk has your score."
	}
	if !query.Has("r") || p.Court.Game == 0 {
		return
	}
	if query.Get("g") != gameNumber(p.Court.Game) {
		p.Notice = "Another game goes on here now: what was tapped before is not about it."
		return
	}
	b, err := p.Court.Board(query.Get("r"))
	if err != nil {
		p.Notice = sentence(err)
		return
	}
	p.Tapping, p.Board = true, b
	if b.Rallies != "" {
		p.A, p.B = strconv.Itoa(b.Score.A), strconv.Itoa(b.Score.B)
	}
}

func gameNumber(id session.GameID) string { return strconv.FormatUint(uint64(id), 10) }

// sentence makes a sentence of an error.
func sentence(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// errForm is told of a form that did not come from the page as it is.
var errForm = errors.New("give both scores in numbers, and say which team you are")

// score takes a score that was sent. What comes from another page than this one is refused (cross-site request
// forgery): a browser says with a form where it comes from.
func (s *Server) score(w http.ResponseWriter, r *http.Request, p courtPage, send Send) {
	site := r.Header.Get("Sec-Fetch-Site")
	if r.Header.Get("Origin") != "http://"+s.host || site != "" && site != "same-origin" {
		s.refuse(w, http.StatusForbidden, "A score is sent from the court's own page only: open it, and send the score there.")
		return
	}
	kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if kind != "application/x-www-form-urlencoded" || r.ContentLength < 0 || r.ContentLength > maxForm {
		s.refuse(w, http.StatusRequestEntityTooLarge, "This page takes a form only.")
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, maxForm)
	if err := r.ParseForm(); err != nil {
		s.refuse(w, http.StatusBadRequest, sentence(errForm))
		return
	}
	score, err := proposed(r.PostForm, p.Court.Code)
	if err == nil {
		err = s.offer(r.Context(), score, send)
	}
	if err == nil || errors.Is(err, session.ErrSentAlready) {
		w.Header().Set("Location", p.Path+"?sent=1")
		s.plain(w, http.StatusSeeOther, "Sent.")
		return
	}
	if at := s.courts.Load(); at != nil { // the desk may have another game there by now
		p.Court, _ = at.hall.Court(p.Court.Code)
	}
	p.Notice, p.A, p.B, p.By = sentence(err), r.PostForm.Get("a"), r.PostForm.Get("b"), r.PostForm.Get("by")
	page := draw("court", p)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(http.StatusConflict)
	_, _ = w.Write(page)
}

// proposed reads a form.
func proposed(form url.Values, code string) (score session.ProposeScore, err error) {
	number := func(name string, digits int) int {
		text := form.Get(name)
		n, bad := strconv.Atoi(text)
		if bad != nil || len(text) > digits || n < 0 || len(form[name]) != 1 {
			err = errForm
		}
		return n
	}
	score = session.ProposeScore{Code: code, Game: session.GameID(number("game", 9)), A: number("a", 2), B: number("b", 2)}
	var by scoring.Team
	if wrong := by.UnmarshalText([]byte(form.Get("by"))); wrong != nil {
		err = errForm
	}
	score.By = by
	return score, err
}

// errDesk is told where the desk does not answer in time.
var errDesk = errors.New("the desk does not answer: tell your score there")

// offer hands the desk a score, if it is not asked about too many already.
func (s *Server) offer(ctx context.Context, score session.ProposeScore, send Send) error {
	if send == nil || !s.sends.take(netip.Addr{}) {
		return errDesk
	}
	ctx, enough := context.WithTimeout(ctx, sendPatience)
	defer enough()
	select {
	case s.sending <- struct{}{}:
		defer func() { <-s.sending }()
	case <-ctx.Done():
		return errDesk
	}
	err := send(ctx, score)
	if ctx.Err() != nil {
		return errDesk
	}
	return err
}
