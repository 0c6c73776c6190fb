package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"sync"

	"club/quadrille/cmd/quadrille/phones"
)

// deskPhones opens and closes the page for phones from the desk. The page follows the desk by its socket, as if
// share were a program of its own, so the desk has nothing more to do with it.
type deskPhones struct {
	path   string // of the club file
	ink    phones.Ink
	places func() ([]phones.Place, error)

	mu      sync.Mutex
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
