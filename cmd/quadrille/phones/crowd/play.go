package crowd

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"sync"
	"time"
)

// late is how long the last text may take: far longer than it does, since a machine may be busy.
const late = 20 * time.Second

// play does what was ordered until nothing more comes in, then says what was seen.
func play(o Order, in io.Reader, out io.Writer) error {
	w := &watch{order: o}
	w.newest = make([]string, o.Streams)
	var conns []net.Conn
	var reading, loading sync.WaitGroup
	for i := range o.Streams {
		c, err := w.ask(1, i, "/live?me="+w.key(i), "")
		if err != nil {
			return err
		}
		conns = append(conns, c)
		reading.Go(func() { w.read(i, c) })
	}
	if _, err := io.WriteString(out, ready); err != nil {
		return err
	}
	ctx, stop := context.WithCancel(context.Background())
	if o.Loads > 0 {
		loading.Go(func() { w.load(ctx) })
	}
	last, err := io.ReadAll(in)
	stop()
	loading.Wait()
	for end := time.Now().Add(late); err == nil && w.missing(string(last)) > 0 && time.Now().Before(end); {
		time.Sleep(5 * time.Millisecond)
	}
	for _, c := range conns {
		_ = c.Close()
	}
	reading.Wait()
	return json.NewEncoder(out).Encode(w.report)
}

// watch is what a crowd has seen.
type watch struct {
	order Order

	mu     sync.Mutex
	newest []string // text of each stream
	report Report
}

// missing counts the streams to which a text has not come.
func (w *watch) missing(text string) (n int) {
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, newest := range w.newest {
		if newest != text {
			n++
		}
	}
	return n
}

func (w *watch) key(i int) string {
	if len(w.order.Keys) == 0 {
		return ""
	}
	return w.order.Keys[i%len(w.order.Keys)]
}

// ask sends a request from an address of its own, as each phone has one.
func (w *watch) ask(network, i int, path, more string) (net.Conn, error) {
	from := &net.TCPAddr{IP: net.IPv4(127, byte(network), byte(i/250), byte(i%250+1))}
	c, err := (&net.Dialer{LocalAddr: from}).Dial("tcp", w.order.Host)
	if err != nil {
		return nil, err
	}
	_, err = fmt.Fprintf(c, "GET %s HTTP/1.1\r\nHost: %s\r\n%s\r\n", path, w.order.Host, more)
	return c, err
}

// read notes when a new text with the marker has come to a stream.
func (w *watch) read(stream int, c net.Conn) {
	marker := []byte(w.order.Marker)
	buffer := make([]byte, 16<<10)
	kept := 0
	for {
		n, err := c.Read(buffer[kept:])
		if err != nil {
			return
		}
		seen := buffer[:kept+n]
		if text := lastMarked(seen, marker); text != "" {
			w.note(Arrival{stream, text, time.Now()})
		}
		kept = copy(buffer, seen[max(0, len(seen)-len(marker)-32):])
	}
}

func (w *watch) note(a Arrival) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.newest[a.Stream] != a.Text {
		w.newest[a.Stream] = a.Text
		w.report.Arrivals = append(w.report.Arrivals, a)
	}
}

// lastMarked is the last text with the marker that has come whole.
func lastMarked(seen, marker []byte) string {
	for end := len(seen); ; {
		at := bytes.LastIndex(seen[:end], marker)
		if at < 0 {
			return ""
		}
		tail := seen[at+len(marker):]
		if n := bytes.IndexFunc(tail, func(r rune) bool { return r != '-' && (r < '0' || r > '9') }); n >= 0 {
			return string(seen[at : at+len(marker)+n])
		}
		end = at
	}
}

// load loads pages at a steady rate, each with its style and its script.
func (w *watch) load(ctx context.Context) {
	tick := time.NewTicker(time.Second / time.Duration(w.order.Loads))
	defer tick.Stop()
	var loading sync.WaitGroup
	defer loading.Wait()
	for i := 0; ; i++ {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		loading.Go(func() {
			whole := true
			for _, path := range []string{"/?me=" + w.key(i), "/look.css", "/live.js"} {
				whole = w.fetch(i, path) && whole
			}
			w.mu.Lock()
			defer w.mu.Unlock()
			w.report.Loaded++
			if !whole {
				w.report.Failed++
			}
		})
	}
}

// fetch reads one file and tells whether it came.
func (w *watch) fetch(i int, path string) bool {
	c, err := w.ask(2, i%5000, path, "Connection: close\r\n")
	if err != nil {
		return false
	}
	defer c.Close()
	text, err := io.ReadAll(c)
	return err == nil && bytes.HasPrefix(text, []byte("HTTP/1.1 200 "))
}
