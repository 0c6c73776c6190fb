package wire

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net"
	"time"

	"club/quadrille/session/public"
)

// News is what a board hears.
type News struct {
	View *public.View // what the hall may see, nil when the desk is not there
	Why  string       // why it is not, in words; "" when a desk is simply not open
}

// patience are the times that a board keeps.
type patience struct {
	dial  time.Duration // for a desk to answer
	alive time.Duration // between two frames of a desk that lives
	first time.Duration // before another try; each waits twice as long as the one before
	most  time.Duration
}

// usualPatience is that of a board: a desk that opens is found within a second or two.
var usualPatience = patience{dial: 2 * time.Second, alive: 3 * usualPace.beat, first: 100 * time.Millisecond, most: 2 * time.Second}

// Follow tells what the desk of a club file shows, and whether there is one, until ctx ends. It waits for a
// desk that is not open yet, and for one that is opened again. Tell is called from this goroutine.
func Follow(ctx context.Context, clubFile, program string, tell func(News)) {
	follow(ctx, places(clubFile), newHello(isBoard, program), usualPatience, tell)
}

// Share is Follow for who shows the views on at a page for phones. The desk gives its address away with the views
// while this goes on.
func Share(ctx context.Context, clubFile, program, page string, tell func(News)) {
	ours := newHello(isBoard, program)
	ours.Page = page
	follow(ctx, places(clubFile), ours, usualPatience, tell)
}

// Ask asks the desk of a club file for what it shows, nil where none answers before ctx ends.
func Ask(ctx context.Context, clubFile, program string) (v *public.View) {
	for _, at := range places(clubFile) {
		c, err := dial([]place{at}, usualPatience.dial)
		if err != nil {
			continue
		}
		first, enough := context.WithCancel(ctx)
		_, _ = listenTo(first, c, newHello(isBoard, program), usualPatience, func(n News) {
			if v == nil {
				v = n.View
			}
			enough()
		})
		enough()
	}
	return v
}

func follow(ctx context.Context, at []place, ours hello, p patience, tell func(News)) {
	wait := p.first
	for ctx.Err() == nil {
		c, err := dial(at, p.dial)
		if err == nil {
			var heard bool
			heard, err = listenTo(ctx, c, ours, p, tell)
			if heard {
				wait = p.first
			}
		}
		if ctx.Err() != nil {
			return
		}
		tell(News{Why: reason(err)})
		select {
		case <-ctx.Done():
		case <-time.After(wait):
		}
		wait = min(2*wait, p.most)
	}
}

// refusedError is the word of the desk that a board may not follow.
type refusedError struct{ why string }

func (e *refusedError) Error() string { return e.why }

// reason is what people should know of an error; nothing where the desk is just not there.
func reason(err error) string {
	var refused *refusedError
	if errors.As(err, &refused) {
		return refused.why
	}
	return ""
}

// dial finds the desk at one of the places where it may be.
func dial(at []place, timeout time.Duration) (c net.Conn, err error) {
	for _, p := range at {
		if err = p.private(); err != nil {
			continue
		}
		if c, err = net.DialTimeout("unix", p.path, timeout); err == nil {
			return c, nil
		}
	}
	return nil, err
}

// listenTo follows one desk until it is gone. Heard tells that it has shown something.
func listenTo(ctx context.Context, c net.Conn, ours hello, p patience, tell func(News)) (heard bool, err error) {
	defer c.Close()
	stop := context.AfterFunc(ctx, func() { _ = c.Close() })
	defer stop()
	_ = c.SetDeadline(time.Now().Add(p.dial))
	out, err := frameOf(ours)
	if err != nil {
		return false, err
	}
	if _, err := c.Write(out); err != nil {
		return false, err
	}
	desk, err := readHello(c, isDesk)
	if err != nil {
		return false, err
	}
	if why := fits(ours, desk); why != "" {
		return false, &refusedError{why}
	}
	if desk.Refused != "" {
		return false, &refusedError{printable(desk.Refused, 200)}
	}
	for {
		_ = c.SetDeadline(time.Now().Add(p.alive))
		body, err := readFrame(c, maxView)
		if err != nil {
			return heard, err
		}
		v, err := readView(body)
		if err != nil {
			return heard, err
		}
		if v != nil {
			heard = true
			tell(News{View: v})
		}
	}
}

// readView reads what a desk sends: a view, or nothing but a sign that it lives.
func readView(body []byte) (*public.View, error) {
	var sent struct {
		View *public.View `json:"view"`
	}
	if err := json.Unmarshal(body, &sent); err != nil {
		return nil, fmt.Errorf("the desk sends what is no view: %w", err)
	}
	return sent.View, nil
}

// Encode is a view as a server shows it, see [Server.Show].
func Encode(v public.View) ([]byte, error) {
	return json.Marshal(map[string]public.View{"view": v})
}
