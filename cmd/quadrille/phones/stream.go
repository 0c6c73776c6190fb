package phones

import (
	"bytes"
	"net/http"
	"net/netip"
	"time"
)

// stream keeps a page up to date: it sends the parts that differ from what this phone has, until the phone is
// gone, does not read, or the night is over. A phone that comes back gets all of them.
func (s *Server) stream(w http.ResponseWriter, r *http.Request, from netip.Addr, key string) {
	if !s.streams.enter(from) {
		w.Header().Set("Retry-After", "30")
		s.refuse(w, http.StatusServiceUnavailable, "As many phones as there is room for are kept up to date. Look again by hand.")
		return
	}
	defer s.streams.leave(from)
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Connection", "close") // when it ends nothing else comes here
	if r.Method == http.MethodHead {
		return
	}
	p := &phone{w: w, control: http.NewResponseController(w), patience: s.limits.Write, key: key, sent: map[string][]byte{}}
	_ = p.control.SetReadDeadline(time.Time{}) // the request was read, and the phone has nothing more to say
	beat := time.NewTicker(s.limits.Beat)
	defer beat.Stop()
	for {
		now := s.state.Load()
		if !p.show(now) || now.over {
			return
		}
		select {
		case <-now.replaced:
		case <-beat.C:
			if !p.write(event("beat", []byte("-"))) {
				return
			}
		case <-r.Context().Done():
			return
		case <-s.ctx.Done():
			return
		}
	}
}

// phone is the other end of a stream.
type phone struct {
	w        http.ResponseWriter
	control  *http.ResponseController
	patience time.Duration
	key      string
	sent     map[string][]byte // the events that it has, by part
}

// show sends what is new to the phone, and tells whether it could.
func (p *phone) show(now *state) bool {
	var out [][]byte
	for _, part := range []string{mine, top, hall} {
		e := now.event(part, p.key)
		if !bytes.Equal(e, p.sent[part]) {
			p.sent[part] = e
			out = append(out, e)
		}
	}
	if now.over {
		out = append(out, event("over", []byte("-")))
	}
	return len(out) == 0 || p.write(out...)
}

// write sends some events in one go, if the phone takes them in time.
func (p *phone) write(events ...[]byte) bool {
	if p.control.SetWriteDeadline(time.Now().Add(p.patience)) != nil {
		return false
	}
	for _, e := range events {
		if _, err := p.w.Write(e); err != nil {
			return false
		}
	}
	return p.control.Flush() == nil
}
