package phones

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"club/quadrille/cmd/quadrille/phones/browser"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/courtside"
	"club/quadrille/session/sessiontest"
)

// courtsHall is a desk whose two courts may send scores to it, by a server.
type courtsHall struct {
	*sessiontest.Desk
	s  *Server
	mu sync.Mutex // the server sends from goroutines of its own
}

func newCourts(t testing.TB, s *Server, pass session.Passing) *courtsHall {
	t.Helper()
	h := &courtsHall{Desk: sessiontest.Open(t, sessiontest.Flow(session.Rounds), 2, 9), s: s}
	h.Must(session.CallRound{}, session.ChooseCourtScores{On: true, Pass: pass, Secret: "000102030405060708090a0b0c0d0e0f"})
	h.tell()
	return h
}

func (h *courtsHall) tell() { h.s.Courts(courtside.Of(h.Ledger(), h.Clock), h.send) }

func (h *courtsHall) send(_ context.Context, c session.ProposeScore) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	_, err := h.Do(c)
	h.tell()
	return err
}

func (h *courtsHall) path(court session.CourtID) string {
	return courtPath + h.Night().CourtCode(court)
}

// form is the form of a court's page, filled in.
func (h *courtsHall) form(court session.CourtID, by string, a, b string) url.Values {
	return url.Values{"game": {gameNumber(h.On(court).ID)}, "a": {a}, "b": {b}, "by": {by}}
}

// post sends a form as a browser does, unless change makes another request of it.
func (h *courtsHall) post(path string, form url.Values, change func(*http.Request)) *http.Response {
	r := httptest.NewRequest("POST", h.s.URL()+strings.TrimPrefix(path, "/"), strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Origin", "http://"+h.s.host)
	if change != nil {
		change(r)
	}
	w := httptest.NewRecorder()
	h.s.ServeHTTP(w, r)
	return w.Result()
}

func body(t testing.TB, r *http.Response) string {
	t.Helper()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A score that a court's page sends arrives at the desk as a proposal, and the page says so.
func TestACourtSendsItsScore(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AskFirst)
	path := h.path("2")
	page := body(t, s.ask("GET", path, s.host, nil))
	for _, want := range []string{"<h1>Court 2</h1>", "The game on this court", `action="` + path + `"`, "A score counts once the organiser takes it."} {
		if !strings.Contains(page, want) {
			t.Errorf("the page has no %q:\n%s", want, page)
		}
	}
	got := h.post(path, h.form("2", "b", "7", "11"), nil)
	if got.StatusCode != http.StatusSeeOther || got.Header.Get("Location") != path+"?sent=1" {
		t.Fatalf("%d, to %q: %s", got.StatusCode, got.Header.Get("Location"), body(t, got))
	}
	p := h.Night().Proposals
	if len(p) != 1 || p[0].By != scoring.B || p[0].Final.Score() != (scoring.Score{A: 7, B: 11}) || h.On("2") == nil {
		t.Fatalf("the desk has %+v", p)
	}
	if page = body(t, s.ask("GET", path+"?sent=1", s.host, nil)); !strings.Contains(page, "Thank you") || !strings.Contains(page, ": 7-11. It waits for the desk.") {
		t.Errorf("after it is sent:\n%s", page)
	}
	if again := h.post(path, h.form("2", "b", "7", "11"), nil); again.StatusCode != http.StatusSeeOther || len(h.Night().Proposals) != 1 {
		t.Errorf("the same once more: %d", again.StatusCode)
	}
	late := h.form("2", "b", "7", "11")
	h.Finish(h.On("2"), 9, 11, scoring.Played)
	h.tell()
	got = h.post(path, late, nil)
	if page = body(t, got); got.StatusCode != http.StatusConflict || !strings.Contains(page, "This game is over at the desk, 9-11") || !strings.Contains(page, "No game goes on here now") {
		t.Errorf("too late: %d\n%s", got.StatusCode, page)
	}
}

// What is no score of a game is refused in words, and stays in the form.
func TestWrongScoresStayInTheForm(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AskFirst)
	for _, c := range []struct{ by, a, b, want string }{
		{"a", "11", "10", "11-10"},
		{"a", "5", "3", ""},
		{"", "11", "7", "say which team you are"},
		{"c", "11", "7", "say which team you are"},
		{"a", "", "7", "in numbers"},
		{"a", "11", "-7", "in numbers"},
		{"a", "111", "7", "in numbers"},
		{"a", "eleven", `"><script>`, "in numbers"},
	} {
		got := h.post(h.path("1"), h.form("1", c.by, c.a, c.b), nil)
		page := body(t, got)
		if got.StatusCode != http.StatusConflict || !strings.Contains(page, c.want) || !strings.Contains(page, `class="notice"`) || strings.Contains(page, "<script>") {
			t.Errorf("%+v: %d\n%s", c, got.StatusCode, page)
		}
		if c.a == "11" && !strings.Contains(page, `value="11"`) {
			t.Errorf("%+v: the form is empty", c)
		}
		parsed(t, []byte(page))
	}
	if len(h.Night().Proposals) != 0 {
		t.Errorf("the desk has %+v", h.Night().Proposals)
	}
}

// Nothing but a form of the court's own page is taken, whatever it says, and nothing at all without the code.
func TestOnlyACourtsOwnPageSendsScores(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AllPass)
	good := h.form("1", "a", "11", "7")
	set := func(name, value string) func(*http.Request) {
		return func(r *http.Request) { r.Header.Set(name, value) }
	}
	for name, c := range map[string]struct {
		change func(*http.Request)
		status int
	}{
		"another page":       {set("Origin", "http://evil.example"), http.StatusForbidden},
		"an opaque origin":   {set("Origin", "null"), http.StatusForbidden},
		"no origin":          {func(r *http.Request) { r.Header.Del("Origin") }, http.StatusForbidden},
		"another site":       {set("Sec-Fetch-Site", "cross-site"), http.StatusForbidden},
		"the same site":      {set("Sec-Fetch-Site", "same-site"), http.StatusForbidden},
		"another host":       {func(r *http.Request) { r.Host = "evil.example" }, http.StatusMisdirectedRequest},
		"text":               {set("Content-Type", "text/plain"), http.StatusRequestEntityTooLarge},
		"JSON":               {set("Content-Type", "application/json"), http.StatusRequestEntityTooLarge},
		"a long body":        {func(r *http.Request) { r.ContentLength = maxForm + 1 }, http.StatusRequestEntityTooLarge},
		"no length":          {func(r *http.Request) { r.ContentLength = -1 }, http.StatusRequestEntityTooLarge},
		"more than it says":  {func(r *http.Request) { r.Body = io.NopCloser(strings.NewReader(strings.Repeat("a", 9999))) }, http.StatusBadRequest},
		"another method":     {func(r *http.Request) { r.Method = "PUT" }, http.StatusMethodNotAllowed},
		"a look with a body": {func(r *http.Request) { r.Method = "GET" }, http.StatusRequestEntityTooLarge},
		"half a form":        {func(r *http.Request) { r.Body = io.NopCloser(strings.NewReader("a=%zz")) }, http.StatusBadRequest},
	} {
		if got := h.post(h.path("1"), good, c.change); got.StatusCode != c.status || !h.On("1").Running() {
			t.Errorf("%s: %d, want %d", name, got.StatusCode, c.status)
		}
	}
	code := h.Night().CourtCode("1")
	for _, path := range []string{courtPath, courtPath + "1", "/c/" + code, courtPath + strings.ToLower(code), courtPath + code + "/", courtPath + code[1:], "/", "/live", courtPath + "../C/" + code, courtPath + code + "%00"} {
		if got := h.post(path, good, nil); got.StatusCode < 400 || !h.On("1").Running() {
			t.Errorf("%s: %d", path, got.StatusCode)
		}
	}
	twice := h.form("1", "a", "11", "7")
	twice["a"] = []string{"11", "0"}
	if got := h.post(h.path("1"), twice, nil); got.StatusCode != http.StatusConflict || !h.On("1").Running() {
		t.Errorf("a field twice: %d", got.StatusCode)
	}
	other := h.form("2", "a", "11", "7")
	if got := h.post(h.path("1"), other, nil); got.StatusCode != http.StatusConflict || !h.On("2").Running() {
		t.Errorf("another court's game: %d", got.StatusCode)
	}
	if got := h.post(h.path("1"), good, set("Sec-Fetch-Site", "same-origin")); got.StatusCode != http.StatusSeeOther || h.Night().Court("1").Game != 0 {
		t.Errorf("a browser's own form: %d", got.StatusCode)
	}
}

// Wrong codes are tried ten times a minute by one address, and not more: then its right ones do not help either.
func TestCodesCannotBeGuessed(t *testing.T) {
	limits := open
	limits.Tries, limits.TryEvery = UsualLimits.Tries, UsualLimits.TryEvery
	if UsualLimits.Tries != 10 || time.Duration(limits.Tries)*limits.TryEvery < time.Minute {
		t.Errorf("%d tries, one more every %v", limits.Tries, limits.TryEvery)
	}
	s := serving(t, limits)
	h := newCourts(t, s, session.AskFirst)
	now := time.Date(2026, time.November, 20, 19, 0, 0, 0, time.UTC)
	s.tries.now = func() time.Time { return now }
	status := func(path string) int { return s.ask("GET", path, s.host, nil).StatusCode }
	for range 40 {
		if got := status(h.path("1")); got != http.StatusOK {
			t.Fatalf("the right code: %d", got)
		}
	}
	for i := range 30 {
		want := http.StatusNotFound
		if i >= 10 {
			want = http.StatusTooManyRequests
		}
		if got := status(fmt.Sprintf("%sWRONG%d", courtPath, i)); got != want {
			t.Fatalf("try %d: %d, want %d", i+1, got, want)
		}
	}
	if got := status(h.path("1")); got != http.StatusTooManyRequests {
		t.Errorf("the right code of a guesser: %d", got)
	}
	if got := status("/"); got != http.StatusOK {
		t.Errorf("the hall's page of a guesser: %d", got)
	}
	now = now.Add(time.Minute)
	if got := status(h.path("1")); got != http.StatusOK {
		t.Errorf("a minute later: %d", got)
	}
}

// Nothing of the pages of courts is there unless the desk wants it, and the page of the hall knows no code.
func TestCourtsHaveNoPagesUnlessTheDeskWantsThem(t *testing.T) {
	s := serving(t, open)
	if got := s.ask("GET", courtPath+strings.Repeat("A", 26), s.host, nil); got.StatusCode != http.StatusNotFound {
		t.Errorf("%d", got.StatusCode)
	}
	h := newCourts(t, s, session.AskFirst)
	path, good := h.path("1"), h.form("1", "a", "11", "7")
	if page := body(t, s.ask("GET", "/", s.host, nil)); strings.Contains(page, courtPath) {
		t.Errorf("the page of the hall leads to a court's:\n%s", page)
	}
	h.Must(session.ChooseCourtScores{})
	h.tell()
	if got := h.post(path, good, nil); got.StatusCode != http.StatusNotFound {
		t.Errorf("after it is over: %d", got.StatusCode)
	}
}

// A desk that does not answer, or is asked too often, is not waited for.
func TestABusyDeskIsNotWaitedFor(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AskFirst)
	s.Courts(courtside.Of(h.Ledger(), h.Clock), nil)
	if page := body(t, h.post(h.path("1"), h.form("1", "a", "11", "7"), nil)); !strings.Contains(page, "The desk does not answer: tell your score there.") {
		t.Errorf("nobody takes scores:\n%s", page)
	}
	asked := 0
	s.Courts(courtside.Of(h.Ledger(), h.Clock), func(context.Context, session.ProposeScore) error {
		asked++
		return errors.New("no")
	})
	s.sends = newPacer(3, time.Hour, time.Now)
	for range 9 {
		h.post(h.path("1"), h.form("1", "a", "11", "7"), nil)
	}
	if asked != 3 {
		t.Errorf("the desk was asked %d times", asked)
	}
	s.sends = newPacer(9, time.Nanosecond, time.Now)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	for range sendsAtOnce {
		s.sending <- struct{}{}
	}
	if err := s.offer(ctx, session.ProposeScore{}, h.send); !errors.Is(err, errDesk) {
		t.Errorf("a desk that is asked about %d scores: %v", sendsAtOnce, err)
	}
}

// The rallies of a game are tapped by links, and the form has its score.
func TestRalliesAreTapped(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AskFirst)
	tap := regexp.MustCompile(`<p class="taps"><a href="([^"]+)a">`)
	page := body(t, s.ask("GET", h.path("1")+"?g="+gameNumber(h.On("1").ID)+"&r=", s.host, nil))
	for i := range 11 {
		if i == 3 && (!strings.Contains(page, "3 – 0") || !strings.Contains(page, "3-0-2") || !strings.Contains(page, "Take the last rally back")) {
			t.Fatalf("after three rallies:\n%s", page)
		}
		link := tap.FindStringSubmatch(page)
		if link == nil {
			t.Fatalf("no rally can be tapped:\n%s", page)
		}
		if strings.Contains(page, "Send the score") {
			t.Fatalf("a score can be sent that is none yet:\n%s", page)
		}
		page = body(t, s.ask("GET", strings.ReplaceAll(link[1], "&amp;", "&")+"a", s.host, nil))
	}
	if !strings.Contains(page, "The game is over") || tap.MatchString(page) || !strings.Contains(page, `value="11"`) || !strings.Contains(page, `value="0"`) {
		t.Errorf("at the end:\n%s", page)
	}
	for query, want := range map[string]string{
		"g=99&r=aa": "Another game goes on here now",
		"g=" + gameNumber(h.On("1").ID) + "&r=abc": "These are no rallies of a game",
	} {
		if page := body(t, s.ask("GET", h.path("1")+"?"+query, s.host, nil)); !strings.Contains(page, want) || strings.Contains(page, "Who won the rally?") {
			t.Errorf("%s:\n%s", query, page)
		}
	}
	if len(h.Night().Proposals) != 0 {
		t.Error("a tap reached the desk")
	}
}

// The pages of courts have all headers but one: without a referrer a browser would not say where a form comes from.
func TestCourtPagesHaveTheHeaders(t *testing.T) {
	s := serving(t, open)
	h := newCourts(t, s, session.AskFirst)
	for _, got := range []*http.Response{s.ask("GET", h.path("1"), s.host, nil), s.ask("GET", courtPath+"X", s.host, nil), h.post(h.path("1"), nil, nil)} {
		for name, value := range headers {
			if name == "Referrer-Policy" {
				value = "same-origin"
			}
			if got.Header.Get(name) != value {
				t.Errorf("%d: %s is %q", got.StatusCode, name, got.Header.Get(name))
			}
		}
	}
}

// A real browser sends a score and taps a game, with JavaScript and without, and finds no faults on any of the pages.
func TestABrowserSendsAScore(t *testing.T) {
	s := serving(t, open)
	b := browser.Open(t)
	for _, scripts := range []bool{true, false} {
		h := newCourts(t, s, session.BothSent)
		url := strings.ToUpper(strings.TrimSuffix(s.URL(), "/")) + h.path("1")
		if s.CourtURL(h.Night().CourtCode("1")) != url {
			t.Fatalf("the address of court 1 is %s, want %s", s.CourtURL(h.Night().CourtCode("1")), url)
		}
		tab := b.Tab(360, 780)
		if !scripts {
			tab = b.Tab(360, 780).Prefers("prefers-color-scheme", "dark").WithoutScripts()
		}
		look := func(moment string) {
			t.Helper()
			tab.Picture(os.Getenv("QUADRILLE_PICTURES"), fmt.Sprintf("court-%s-%v", moment, scripts))
			for _, fault := range tab.Faults() {
				t.Errorf("%s: %s", moment, fault)
			}
			said := tab.Said()
			if bad := browser.Unnamed(said); len(bad) > 0 {
				t.Errorf("%s: no name for %v", moment, bad)
			}
			for _, want := range []string{"banner", "main", "contentinfo", "heading Court 1"} {
				if !slices.Contains(said, want) {
					t.Errorf("%s: a screen reader finds no %q among %q", moment, want, said)
				}
			}
		}
		tab.Go(url).Shows("h1", "Court 1").Shows("main", "The game on this court")
		look("game")
		tab.Type("#a", "11").Type("#b", "0").Press("#by-a").Press("button").Shows(".notice", "Thank you").Shows(".message", "11-0. It waits for the desk.")
		look("sent")
		if p := h.Night().ProposalsOf(h.On("1").ID); len(p) != 1 || p[0].Final.String() != "11-0" || p[0].By != scoring.A {
			t.Fatalf("the desk has %+v", p)
		}
		tab.Go(url+"?g="+gameNumber(h.On("1").ID)+"&r="+strings.Repeat("a", 10)).Shows(".head", "10 – 0")
		look("tapping")
		tab.Press(".taps a").Shows("#now", "The game is over")
		look("over")
		tab.Press("#by-b").Press("button").Shows("main", "No game goes on here now").Shows("main", "11-0")
		look("none")
		if g := h.Night().Games[0]; g.Final == nil || g.Final.String() != "11-0" {
			t.Errorf("both sent 11-0, and the game has %v", g.Final)
		}
	}
	http.DefaultClient.CloseIdleConnections()
}
