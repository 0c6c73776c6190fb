package phones

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"club/quadrille/session/public"
)

// element is an element of a page with all that it holds.
type element struct {
	name  string
	attrs map[string]string
	text  string // of it and of all below
	kids  []*element
}

// parsed reads a page, which must be well nested.
func parsed(t *testing.T, page []byte) *element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(page)))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &element{}
	open := []*element{root}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, page)
		}
		last := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			last.kids = append(last.kids, e)
			open = append(open, e)
		case xml.EndElement:
			if last.name != token.Name.Local {
				t.Fatalf("</%s> ends <%s>\n%s", token.Name.Local, last.name, page)
			}
			open = open[:len(open)-1]
		case xml.CharData:
			for _, e := range open {
				e.text += string(token)
			}
		}
	}
	if len(open) != 1 {
		t.Fatalf("<%s> has no end\n%s", open[len(open)-1].name, page)
	}
	return root
}

// all are the elements of these names, in the order of the page.
func (e *element) all(names ...string) (found []*element) {
	for _, k := range e.kids {
		if slices.Contains(names, k.name) {
			found = append(found, k)
		}
		found = append(found, k.all(names...)...)
	}
	return found
}

// moments are pages of every kind.
func moments() map[string][]byte {
	held := evening()
	held.Hold = &public.Hold{Why: "lightning"}
	out := map[string][]byte{
		"before the desk": newState(nil, notYet).page("", false),
		"no night":        newState(&public.View{}, noNight).page("", false),
		"the desk closed": newState(evening(), noDesk).page(keyOf(1), false),
		"held":            newState(held, "").page(keyOf(5), false),
		"choosing":        newState(evening(), "").page("", false),
		"gone":            newState(evening(), "").page(keyOf(4), true),
		"over":            newState(evening(), nightOver).page(keyOf(1), true),
	}
	for _, p := range evening().People {
		out[p.Name] = newState(evening(), "").page(p.Key, false)
	}
	return out
}

// The page can be read by whoever cannot see it, as far as its HTML says (WCAG 2.2: 1.3.1, 2.4.1, 2.4.2, 2.4.6, 3.1.1,
// 4.1.2, 4.1.3).
func TestThePageIsAccessible(t *testing.T) {
	for name, page := range moments() {
		t.Run(name, func(t *testing.T) {
			root := parsed(t, page)
			if html := root.all("html"); len(html) != 1 || html[0].attrs["lang"] != "en" {
				t.Error("the page has no language")
			}
			if title := root.all("title"); len(title) != 1 || strings.TrimSpace(title[0].text) == "" {
				t.Error("the page has no title")
			}
			for _, landmark := range []string{"header", "main", "footer", "h1"} {
				if n := len(root.all(landmark)); n != 1 {
					t.Errorf("%d elements %s", n, landmark)
				}
			}
			level := 0
			for _, h := range root.all("h1", "h2", "h3", "h4") {
				now := int(h.name[1] - '0')
				if now > level+1 || strings.TrimSpace(h.text) == "" {
					t.Errorf("the heading %s %q follows one of level %d", h.name, h.text, level)
				}
				level = now
			}
			checkNames(t, root)
			viewport := slices.IndexFunc(root.all("meta"), func(m *element) bool { return m.attrs["name"] == "viewport" })
			if at := root.all("meta")[viewport].attrs["content"]; strings.Contains(at, "maximum-scale") || strings.Contains(at, "user-scalable") {
				t.Error("the page cannot be made larger") // 1.4.4
			}
		})
	}
}

// checkNames checks that all that is named or referred to is there, once, and has a text.
func checkNames(t *testing.T, root *element) {
	t.Helper()
	ids := map[string]*element{}
	var everything func(e *element)
	everything = func(e *element) {
		if id := e.attrs["id"]; id != "" {
			if ids[id] != nil {
				t.Errorf("two elements are %q", id)
			}
			ids[id] = e
		}
		for _, k := range e.kids {
			everything(k)
		}
	}
	everything(root)
	for _, s := range root.all("section") {
		if by := ids[s.attrs["aria-labelledby"]]; by == nil || strings.TrimSpace(by.text) == "" {
			t.Errorf("a section has no name: %q", s.text)
		}
	}
	labelled := map[string]bool{}
	for _, l := range root.all("label") {
		labelled[l.attrs["for"]] = strings.TrimSpace(l.text) != ""
	}
	for _, f := range root.all("select", "input", "textarea") {
		if !labelled[f.attrs["id"]] {
			t.Errorf("a field has no label: %v", f.attrs)
		}
	}
	for _, a := range root.all("a", "button") {
		if strings.TrimSpace(a.text) == "" {
			t.Errorf("a target has no text: %v", a.attrs)
		}
	}
	for _, table := range root.all("table") {
		for _, th := range table.all("th") {
			if th.attrs["scope"] == "" {
				t.Errorf("the heading %q is of neither column nor row", th.text)
			}
		}
	}
	for _, id := range []string{"said", "lost"} {
		if ids[id] == nil || ids[id].attrs["role"] != "status" {
			t.Errorf("nothing announces %s", id)
		}
	}
}

// Nothing stands in the page that its security policy would refuse, and nothing comes from elsewhere.
func TestThePageHasNothingInlineAndNothingFromElsewhere(t *testing.T) {
	for name, page := range moments() {
		root := parsed(t, page)
		if len(root.all("style")) > 0 || regexp.MustCompile(`(?i)\son[a-z]+=|\sstyle=|javascript:`).Match(page) {
			t.Errorf("%s: something is inline:\n%s", name, page)
		}
		for _, e := range root.all("a", "link", "script", "img", "form") {
			if e.name == "script" && strings.TrimSpace(e.text) != "" {
				t.Errorf("%s: a script is inline", name)
			}
			for _, attr := range []string{"href", "src", "action"} {
				if to, ok := e.attrs[attr]; ok && (!strings.HasPrefix(to, "/") || strings.HasPrefix(to, "//")) {
					t.Errorf("%s: %s leads to %s", name, e.name, to)
				}
			}
		}
	}
}

// Whoever is asked for a name finds everybody, chooses, and looks again by a link: without JavaScript.
func TestThePageWorksWithoutJavaScript(t *testing.T) {
	s := newState(evening(), "")
	form := parsed(t, s.page("", false)).all("form")
	if len(form) != 1 || form[0].attrs["method"] != "get" || form[0].attrs["action"] != "/" {
		t.Fatal("no form asks for the name")
	}
	options := form[0].all("option")
	if field := form[0].all("select"); field[0].attrs["name"] != "me" || len(options) != 1+len(evening().People) || options[1].attrs["value"] != keyOf(1) {
		t.Errorf("the form offers %d names", len(options))
	}
	page := parsed(t, s.page(keyOf(9), false))
	if len(page.all("form")) != 0 || !strings.Contains(page.all("section")[0].text, "Next: court 1") {
		t.Errorf("Iris reads %q", page.text)
	}
	links := page.all("noscript")[0].all("a")
	if len(links) != 2 || links[0].attrs["href"] != "/?me="+keyOf(9) || links[1].attrs["href"] != "/?me="+keyOf(9)+"&again=1" {
		t.Fatalf("%+v", links)
	}
	if strings.Contains(string(s.page(keyOf(9), false)), "http-equiv") {
		t.Error("the page looks again by itself, although nobody asked (WCAG 2.2.1)")
	}
	again := parsed(t, s.page(keyOf(9), true)).all("noscript")
	if len(again) != 2 || again[0].all("meta")[0].attrs["http-equiv"] != "refresh" || again[1].all("a")[1].attrs["href"] != "/?me="+keyOf(9) {
		t.Error("the page does not look again by itself, or cannot be stopped")
	}
}

// What people are called, and what the organiser writes, is text, whatever it looks like.
func TestNamesAndMessagesAreText(t *testing.T) {
	v := evening()
	bad := `</p><script>alert(1)</script>"'<img src=x onerror=alert(1)>` + "\ndata: x\r\n\r\nevent: over"
	v.Night, v.Messages[0].Text, v.People[0].Name, v.Courts[0].A[0], v.Standings[0].Names[0], v.Next.Games[0].A[1] = bad, bad, bad, bad, bad, bad
	v.Hold = &public.Hold{Why: bad}
	s := newState(v, "")
	root := parsed(t, s.page(keyOf(1), false))
	if n := len(root.all("script", "img")); n != 1 {
		t.Errorf("%d scripts and pictures", n)
	}
	for _, part := range []string{top, mine, hall} {
		e := string(s.event(part, keyOf(1)))
		if strings.Contains(e, "<script") || strings.Count(e, "\n") != 3 || strings.Contains(e, "\r") {
			t.Errorf("%q", e)
		}
	}
}

// The page has nothing that the view has not: it is drawn from that alone, and says all of it.
func TestThePageHasTheWholeHall(t *testing.T) {
	text := strings.Join(strings.Fields(parsed(t, newState(evening(), "").page("", false)).text), " ")
	for _, want := range []string{
		"Autumn night", "pizza at 20:30 until 20:45", "Round 3 of 8 · 11 here · play ends at 21:30 · as of 19:42",
		"Court 1 6 minutes, 4-7 Ada A. and Ben B. v Cora C. and somebody", "Court 2 go now", "Court 3 closed", "Court 4 free",
		"Round 4 comes next", "Court 1: Iris I. and Ada A. v Jonas J. and Edda E.", "Sit out: Ben B., Greta G.",
		"Iris I. waits 1 minute, plays in about 6 minutes", "Jonas J. waits 12 minutes", "1Ada A.22+9", "2Ben B.12−3",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

// Made-up keys take no room.
func TestUnknownKeysShareOneAnswer(t *testing.T) {
	s := newState(evening(), "")
	for i := range 1000 {
		s.event(mine, keyOf(5000+i))
	}
	s.event(mine, "")
	s.event(mine, keyOf(1))
	drawn := 0
	for _, p := range s.mines {
		if p.event != nil {
			drawn++
		}
	}
	if drawn != 3 || len(s.mines) != len(s.view.People)+2 {
		t.Errorf("%d answers are drawn, and there is room for %d", drawn, len(s.mines))
	}
}
