package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"

	"club/quadrille/cmd/quadrille/phones"
	"club/quadrille/session"
	"club/quadrille/session/courtside"
	"club/quadrille/tui"
)

// deskPhones opens and closes the page for phones from the desk. The page follows the desk by its socket, as if
// share were a program of its own, so the desk has nothing more to do with it.
type deskPhones struct {
	path   string // of the club file
	ink    phones.Ink
	places func() ([]phones.Place, error)

	mu      sync.Mutex
	hall    courtside.Hall // what the pages of the courts show
	take    func(tui.Sent) // gives the desk what courts send, nil before the screens are there
	server  *phones.Server // nil while the page is not open
	code    []string       // that leads there
	stop    context.CancelFunc
	running sync.WaitGroup
}

// Places implements tui.Phones.
func (d *deskPhones) Places() ([]string, error) {
	places, err := d.places()
	if err != nil {
		return nil, err
	}
	if len(places) == 0 {
		_, err := phones.Choose(nil, "")
		return nil, err
	}
	var words []string
	for _, p := range places {
		words = append(words, p.String())
	}
	return words, nil
}

// Open implements tui.Phones. The usual port is taken, or any other where that is not free.
func (d *deskPhones) Open(place string) error {
	places, err := d.places()
	if err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.server != nil {
		return nil
	}
	at := slices.IndexFunc(places, func(p phones.Place) bool { return p.String() == place })
	if at < 0 {
		return fmt.Errorf("this computer is no longer at %s: share again", place)
	}
	server, err := openPort(places[at].Addr, usualPort)
	if err != nil {
		server, err = openPort(places[at].Addr, 0)
	}
	if err != nil {
		return err
	}
	ctx, stop := context.WithCancel(context.Background())
	d.server, d.stop = server, stop
	server.Courts(d.hall, d.send)
	d.code, _ = phones.Code(server.URL(), d.ink) // an address is short enough for any code
	d.running.Go(func() {
		_ = usualSharing(server, io.Discard).follow(ctx, d.path) // which fails only where it says something
		stop()
		d.mu.Lock()
		if d.server == server {
			d.server = nil
		}
		d.mu.Unlock()
		_ = server.Close() // the port is closed; that a phone was cut off is no news
	})
	return nil
}

// Address implements tui.Phones.
func (d *deskPhones) Address() (url string, code []string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.server == nil {
		return "", nil
	}
	return d.server.URL(), d.code
}

// Courts implements tui.Phones.
func (d *deskPhones) Courts(h courtside.Hall) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.hall = h
	if d.server != nil {
		d.server.Courts(h, d.send)
	}
}

// Court implements tui.Phones.
func (d *deskPhones) Court(code string) (url string, lines []string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.server == nil {
		return "", nil
	}
	url = d.server.CourtURL(code)
	lines, _ = phones.Code(url, d.ink)
	return url, lines
}

// Hear implements tui.Phones.
func (d *deskPhones) Hear(take func(tui.Sent)) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.take = take
}

// send gives the desk a score from a court, and waits for what becomes of it.
func (d *deskPhones) send(ctx context.Context, score session.ProposeScore) error {
	d.mu.Lock()
	take := d.take
	d.mu.Unlock()
	if take == nil {
		return errors.New("the desk takes no scores now: tell yours there")
	}
	answer := make(chan error, 1)
	go take(tui.Sent{Score: score, Answer: func(err error) { answer <- err }}) // which waits for the screens, or for their end
	select {
	case err := <-answer:
		return err
	case <-ctx.Done():
		return ctx.Err()
	}
}

// Close implements tui.Phones. Phones are cut off behind the screen.
func (d *deskPhones) Close() {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.server != nil {
		d.stop()
		d.server = nil
	}
}

// end closes the page, and returns when nothing of it runs any more.
func (d *deskPhones) end() {
	d.Close()
	d.running.Wait()
}
