package phones

import (
	"net"
	"net/netip"
	"sync"
	"time"
)

// Limits are what a server takes. Each phone has an address of its own as a rule; several may share one behind
// a router of theirs.
type Limits struct {
	Streams     int           // pages that are kept up to date at once
	StreamsEach int           // of one address
	Conns       int           // connections at once
	ConnsEach   int           // of one address
	Burst       int           // requests of one address at once
	Every       time.Duration // after which it may send one more
	Head        time.Duration // for the head of a request to come
	Write       time.Duration // for an answer, or a piece of a stream, to go out
	Idle        time.Duration // for a connection that asks nothing
	Beat        time.Duration // between two signs of life of a stream
	Tries       int           // wrong codes of courts of one address at once
	TryEvery    time.Duration // after which it may try one more
}

// UsualLimits suit 300 phones: a page takes four requests and two or three connections, of which one stays.
var UsualLimits = Limits{
	Streams: 300, StreamsEach: 16, Conns: 640, ConnsEach: 32, Burst: 60, Every: 100 * time.Millisecond,
	Head: 5 * time.Second, Write: 5 * time.Second, Idle: 5 * time.Second, Beat: 15 * time.Second,
	Tries: 10, TryEvery: 6 * time.Second,
}

// counter counts what is open at once, in all and by address.
type counter struct {
	most, each int

	mu  sync.Mutex
	all int
	by  map[netip.Addr]int
}

func newCounter(most, each int) *counter {
	return &counter{most: most, each: each, by: map[netip.Addr]int{}}
}

// enter takes note of one more, if there is room.
func (c *counter) enter(a netip.Addr) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.all >= c.most || c.by[a] >= c.each {
		return false
	}
	c.all++
	c.by[a]++
	return true
}

func (c *counter) leave(a netip.Addr) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.all--
	if c.by[a]--; c.by[a] == 0 {
		delete(c.by, a)
	}
}

// maxPaced is how many addresses are kept apart; all further ones share one allowance.
const maxPaced = 4096

// pacer lets each address ask so many times at once, and once more each time that every has passed.
type pacer struct {
	burst int
	every time.Duration
	now   func() time.Time

	mu sync.Mutex
	by map[netip.Addr]time.Time // when an address will have its whole burst again
}

func newPacer(burst int, every time.Duration, now func() time.Time) *pacer {
	return &pacer{burst: burst, every: every, now: now, by: map[netip.Addr]time.Time{}}
}

// take uses one request of an address, if it has any left.
func (p *pacer) take(a netip.Addr) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.now()
	if _, known := p.by[a]; !known && len(p.by) >= maxPaced {
		p.forget(now)
		if len(p.by) >= maxPaced {
			a = netip.Addr{}
		}
	}
	full := p.by[a]
	if full.Before(now) {
		full = now
	}
	full = full.Add(p.every)
	if full.Sub(now) > time.Duration(p.burst)*p.every {
		return false
	}
	p.by[a] = full
	return true
}

// spent tells whether an address has no request left.
func (p *pacer) spent(a netip.Addr) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.now()
	if _, known := p.by[a]; !known && len(p.by) >= maxPaced {
		a = netip.Addr{}
	}
	return p.by[a].Add(p.every).Sub(now) > time.Duration(p.burst)*p.every
}

// forget drops the addresses that have their whole burst.
func (p *pacer) forget(now time.Time) {
	for a, full := range p.by {
		if !full.After(now) {
			delete(p.by, a)
		}
	}
}

// gate is a listener that takes only so many connections at once. What is too much is closed at once.
type gate struct {
	net.Listener
	counter *counter
}

// Accept implements net.Listener.
func (g gate) Accept() (net.Conn, error) {
	for {
		c, err := g.Listener.Accept()
		if err != nil {
			return nil, err
		}
		a := addressOf(c.RemoteAddr().String())
		if g.counter.enter(a) {
			return &counted{Conn: c, leave: func() { g.counter.leave(a) }}, nil
		}
		_ = c.Close()
	}
}

// counted is a connection that makes room when it is closed.
type counted struct {
	net.Conn
	once  sync.Once
	leave func()
}

// Close implements net.Conn.
func (c *counted) Close() error {
	c.once.Do(c.leave)
	return c.Conn.Close()
}

// addressOf is the address of the other side, without its port; the zero one if it has none.
func addressOf(remote string) netip.Addr {
	p, err := netip.ParseAddrPort(remote)
	if err != nil {
		return netip.Addr{}
	}
	return p.Addr().Unmap()
}
