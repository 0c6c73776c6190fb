// Package attention says what of a night wants somebody's attention, the most urgent first. Whatever shows or
// rings it decides nothing. It is a pure function of the ledger, the hall, the file's state and the time.
package attention

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/calling"
	"club/quadrille/session/care"
	"club/quadrille/session/hall"
)

// Kind is what a matter is about.
type Kind uint8

// The kinds of matters, the most urgent first.
const (
	File      Kind = iota // the last action is not saved, or the club file is not in its place
	Hold                  // play is held
	Hurt                  // a game stands because somebody is hurt, and what becomes of it is to be decided
	Heat                  // it feels so hot that people must take care
	Clock                 // the laptop's clock was set
	Sent                  // a court has sent a score, which waits to be taken or refused
	TimeUp                // the time limit of a game is over
	Complete              // all scores of the round are in, and the next one can be called
	Overlong              // a game goes on for longer than nine of ten do
	RoundLate             // the round should be over by now
	Unread                // a fresh call was not read out whole
	Waiting               // somebody waits for much longer than the others
	Closing               // less can be played by closing time than is planned
	Missing               // people who were expected have not come
	Posted                // a message stands in the hall
)

// Matter is one thing that wants attention.
type Matter struct {
	Kind   Kind
	Court  session.CourtID    // of Hurt, Sent, TimeUp and Overlong
	People []session.PersonID // of Hurt, Waiting and Missing
	Text   string             // in words
	// ID is the same as long as nothing about the matter has changed but the minutes that pass: who was told
	// once need not be told again. Heat is another matter whenever it should be measured again.
	ID string
}

// Rings tells whether a matter is worth a sound: people stand about until somebody acts.
func (m Matter) Rings() bool {
	return m.Kind == Hold || m.Kind == Hurt || m.Kind == Sent || m.Kind == TimeUp || m.Kind == Complete
}

// FileState is what is wrong with the club file.
type FileState struct {
	Unsaved   string // the action that waits to be saved, in words; empty for none
	Displaced bool   // the file is not in its place
}

// Of lists what wants attention now. The hall is that of the same ledger and time; unread are the games of a fresh call
// that were not read out yet, for whoever reads calls out.
func Of(l *session.Ledger, h hall.Hall, f FileState, unread []calling.Call, now time.Time) []Matter {
	out := file(f)
	n := l.Night()
	if n == nil {
		return out
	}
	s := survey{l.Club(), n, h, now}
	out = append(out, s.hold()...)
	out = append(out, s.hurt()...)
	out = append(out, s.heat()...)
	out = append(out, s.clock(l)...)
	out = append(out, s.sent()...)
	out = append(out, s.courts()...)
	out = append(out, s.complete(l)...)
	out = append(out, s.roundLate()...)
	out = append(out, s.unread(unread)...)
	out = append(out, s.waiting()...)
	out = append(out, s.closing()...)
	out = append(out, s.missing()...)
	out = append(out, s.posted()...)
	slices.SortStableFunc(out, func(a, b Matter) int { return int(a.Kind) - int(b.Kind) })
	return out
}

func file(f FileState) []Matter {
	switch {
	case f.Unsaved != "":
		return []Matter{{Kind: File, Text: "not saved: " + f.Unsaved, ID: "unsaved " + f.Unsaved}}
	case f.Displaced:
		return []Matter{{Kind: File, Text: "the club file is not in its place", ID: "displaced"}}
	}
	return nil
}

// survey is a night at a moment.
type survey struct {
	club *session.Club
	n    *session.Night
	h    hall.Hall
	now  time.Time
}

func (s survey) hold() []Matter {
	if s.n.Hold == nil {
		return nil
	}
	h := s.n.Hold
	text := fmt.Sprintf("play is held: %s, for %d min", h.Why, minutes(s.now.Sub(h.Since)))
	id := fmt.Sprintf("hold %s %d", h.Why, h.Since.Unix())
	switch left := h.ThunderLeft(s.now); {
	case !h.Lightning():
	case left > 0:
		text += fmt.Sprintf("; %d min since the last thunder", minutes(s.now.Sub(h.LastThunder())))
	default: // a matter of its own, since somebody waits for it; it ends nothing
		text = fmt.Sprintf("play is held: %s; 30 min without thunder are over, and your venue decides", h.Why)
		id += fmt.Sprintf(" quiet since %d", h.LastThunder().Unix())
	}
	return []Matter{{Kind: Hold, Text: text, ID: id}}
}

// hurt tells of the games in which somebody is hurt and nobody has decided yet what becomes of them.
func (s survey) hurt() []Matter {
	var out []Matter
	for _, g := range s.n.Running() {
		x, ok := s.n.Unsettled(g)
		if !ok {
			continue
		}
		text := fmt.Sprintf("court %s: %s is hurt, %d min ago: substitute, retire, void or play on", g.Court, s.name(x.Person), minutes(s.now.Sub(x.At)))
		if x.Head && x.Cleared == "" {
			text = fmt.Sprintf("court %s: %s is out for tonight: substitute, retire or void", g.Court, s.name(x.Person))
		}
		id := fmt.Sprintf("hurt %d %s %d", g.ID, x.Person, x.At.Unix())
		out = append(out, Matter{Kind: Hurt, Court: g.Court, People: []session.PersonID{x.Person}, Text: text, ID: id})
	}
	return out
}

// heat tells how hot it feels where that wants care, and reminds everybody to measure it again.
func (s survey) heat() []Matter {
	h := s.n.Heat
	if h == nil {
		return nil
	}
	band := care.BandOf(h.Index())
	if band == care.NoBand {
		return nil
	}
	overdue := h.Overdue(s.now)
	text := fmt.Sprintf("heat: %s at %s; rest, shade and water", band, h.At.In(s.now.Location()).Format("15:04"))
	if band >= care.Danger {
		text = fmt.Sprintf("heat: %s at %s; stop, unless a qualified person decides otherwise", band, h.At.In(s.now.Location()).Format("15:04"))
	}
	if overdue > 0 {
		text += fmt.Sprintf("; measure again (our rule: every %d min)", minutes(session.MeasureAgain))
	}
	return []Matter{{Kind: Heat, Text: text, ID: fmt.Sprintf("heat %d %d", h.At.Unix(), overdue)}}
}

// clock tells of the newest time that the clock was set by so much that somebody could notice.
func (s survey) clock(l *session.Ledger) []Matter {
	for _, a := range slices.Backward(l.Actions()) {
		if e, ok := a.Events[0].(session.ClockMoved); ok && e.Noticeable() {
			return []Matter{{Kind: Clock, Text: e.Words(), ID: fmt.Sprintf("clock %d", a.ID)}}
		}
	}
	return nil
}

// sent tells of scores that courts sent.
func (s survey) sent() []Matter {
	var out []Matter
	for _, c := range s.h.Courts {
		if len(c.Sent) == 0 {
			continue
		}
		var scores []string
		for _, p := range c.Sent {
			if text := p.Final.String(); !slices.Contains(scores, text) {
				scores = append(scores, text)
			}
		}
		text := fmt.Sprintf("court %s sent %s: take it, or refuse it", c.ID, scores[0])
		if len(scores) > 1 {
			text = fmt.Sprintf("court %s sent two scores, %s: take one, or refuse both", c.ID, strings.Join(scores, " and "))
		}
		out = append(out, Matter{Kind: Sent, Court: c.ID, Text: text, ID: fmt.Sprintf("sent %d %s", c.Game, strings.Join(scores, " "))})
	}
	return out
}

func (s survey) courts() []Matter {
	var out []Matter
	for _, c := range s.h.Courts {
		on := c.State == hall.Playing || c.State == hall.Called
		switch {
		case !on || c.Held:
		case c.TimeUp:
			text := fmt.Sprintf("time is up on court %s: stop the game, and type its score", c.ID)
			out = append(out, Matter{Kind: TimeUp, Court: c.ID, Text: text, ID: fmt.Sprintf("time %d", c.Game)})
		case c.Late:
			text := fmt.Sprintf("court %s has played for %d min, usual is about %d", c.ID, minutes(c.Played), minutes(c.Expected))
			out = append(out, Matter{Kind: Overlong, Court: c.ID, Text: text, ID: fmt.Sprintf("long %d", c.Game)})
		}
	}
	return out
}

func (s survey) complete(l *session.Ledger) []Matter {
	a := l.NextStep(s.now)
	if s.n.Settings.Flow != session.Rounds || a.Step != session.StepCall || len(s.n.Rounds) == 0 {
		return nil
	}
	text := fmt.Sprintf("round %d is complete: round %d can be called", a.Round-1, a.Round)
	return []Matter{{Kind: Complete, Text: text, ID: fmt.Sprintf("complete %d", a.Round)}}
}

// roundLate tells of a round that goes on for longer than it should, and of the courts that play on.
func (s survey) roundLate() []Matter {
	c := s.h.Clock
	if !s.h.Clocked || !c.Over() || c.Limited || s.n.Hold != nil { // a time limit is told court by court
		return nil
	}
	var courts []string
	for _, k := range s.h.Courts {
		if k.State == hall.Playing || k.State == hall.Called {
			courts = append(courts, string(k.ID))
		}
	}
	if len(courts) < 2 { // one court alone is told by itself
		return nil
	}
	still := "courts " + strings.Join(courts, ", ") + " still play"
	text := fmt.Sprintf("round %d should have been over by %s: %s", c.Round, s.now.Add(c.Target-c.Played).In(s.now.Location()).Format("15:04"), still)
	return []Matter{{Kind: RoundLate, Text: text, ID: fmt.Sprintf("round late %d", c.Round)}}
}

// unread tells of courts whose people may not know yet that they are called.
func (s survey) unread(calls []calling.Call) []Matter {
	if len(calls) == 0 || s.n.Hold != nil {
		return nil
	}
	var courts []string
	newest := uint64(0)
	for _, c := range calls {
		courts, newest = append(courts, string(c.Court)), max(newest, c.Action)
	}
	what := "courts "
	if len(courts) == 1 {
		what = "court "
	}
	return []Matter{{Kind: Unread, Text: "called and not read out yet: " + what + strings.Join(courts, ", "), ID: fmt.Sprintf("unread %d", newest)}}
}

// shortWait is a wait that nobody minds, however short games are. Common practice, no source.
const shortWait = 5 * time.Minute

// waiting tells of people who wait for twice a game's time or more, and half as long again as the others on
// the bench do in the median.
func (s survey) waiting() []Matter {
	clock := s.n.Clock()
	game := time.Duration(clock.Median() * float64(time.Minute))
	var waits []time.Duration
	for _, w := range s.h.Bench {
		waits = append(waits, w.Waited)
	}
	slices.Sort(waits)
	var out []Matter
	for _, w := range s.h.Bench {
		if s.n.Hold != nil || w.Waited < max(shortWait, 2*game) || len(s.n.Running()) == 0 {
			continue
		}
		others := medianWithout(waits, w.Waited)
		if 2*w.Waited < 3*others {
			continue
		}
		text := fmt.Sprintf("%s has waited for %d min", s.name(w.Person), minutes(w.Waited))
		if len(waits) > 1 {
			text += fmt.Sprintf(", the others for about %d", minutes(others))
		}
		id := fmt.Sprintf("wait %s %d", w.Person, w.Games)
		out = append(out, Matter{Kind: Waiting, People: []session.PersonID{w.Person}, Text: text, ID: id})
	}
	return out
}

// medianWithout is the median of sorted waits without one of them; the longer one of two in the middle, and 0 of none.
func medianWithout(waits []time.Duration, w time.Duration) time.Duration {
	if len(waits) < 2 {
		return 0
	}
	middle := (len(waits) - 1) / 2
	if at, _ := slices.BinarySearch(waits, w); at <= middle {
		middle++
	}
	return waits[middle]
}

func (s survey) closing() []Matter {
	n := s.n
	fit, ok := n.Fit(s.now)
	if !ok || n.Hold != nil {
		return nil
	}
	at := n.Settings.Closing.In(s.now.Location()).Format("15:04")
	one := func(text, id string) []Matter {
		return []Matter{{Kind: Closing, Text: text, ID: "closing " + at + " " + id}}
	}
	left := n.Settings.Rounds - len(n.Rounds)
	chance, _ := n.Chance(s.now)
	switch {
	case s.now.After(n.Settings.Closing):
		return one("closing time "+at+" has passed", "passed")
	case n.Settings.Flow == session.Rounds && len(n.Rounds) > 0 && left > fit.Probable:
		return one(fmt.Sprintf("%s planned and %d will probably be over by %s", count(left, "more round is", "more rounds are"), fit.Probable, at),
			fmt.Sprintf("%d %d", left, fit.Probable))
	case n.Settings.Flow == session.Rolling && n.Rolls && !n.LastCall && chance < session.LikelyOver:
		return one(fmt.Sprintf("a game called now will hardly be over by %s (%.0f %%)", at, 100*chance), "hardly")
	}
	return nil
}

func (s survey) missing() []Matter {
	var people []session.PersonID
	var names, ids []string
	for _, a := range s.n.Roll {
		if s.n.Late(a, s.now) {
			people, names, ids = append(people, a.Person), append(names, s.name(a.Person)), append(ids, string(a.Person))
		}
	}
	if len(people) == 0 {
		return nil
	}
	text := "expected and not here: " + strings.Join(names, ", ")
	return []Matter{{Kind: Missing, People: people, Text: text, ID: "missing " + strings.Join(ids, " ")}}
}

func (s survey) name(id session.PersonID) string {
	if p, ok := s.club.Person(id); ok {
		return p.Name
	}
	return "somebody"
}

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

func minutes(d time.Duration) int { return max(0, int(d.Minutes())) }

// posted tells of the messages that the hall reads now, so that none is forgotten.
func (s survey) posted() []Matter {
	var out []Matter
	for _, m := range s.n.MessagesAt(s.now) {
		text := "in the hall"
		if !m.Until.IsZero() {
			text += " until " + m.Until.In(s.now.Location()).Format("15:04")
		}
		out = append(out, Matter{Kind: Posted, Text: text + ": " + m.Text, ID: "posted " + m.ID})
	}
	return out
}
