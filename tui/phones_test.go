package tui

import (
	"errors"
	"strings"
	"testing"

	"club/quadrille/session/courtside"
)

// fakePhones is a page for phones that a test looks at.
type fakePhones struct {
	places []string
	err    error
	at     string
	code   []string
	hall   courtside.Hall
}

func (p *fakePhones) Places() ([]string, error) { return p.places, p.err }

func (p *fakePhones) Open(place string) error {
	if p.err == nil {
		p.at = place
	}
	return p.err
}

func (p *fakePhones) Address() (string, []string) {
	if p.at == "" {
		return "", nil
	}
	return "http://" + p.at + "/", p.code
}

func (p *fakePhones) Close() { p.at = "" }

func (p *fakePhones) Courts(h courtside.Hall) { p.hall = h }

func (p *fakePhones) Court(code string) (string, []string) {
	if p.at == "" {
		return "", nil
	}
	return "HTTP://" + p.at + "/C/" + code, []string{"▀▄ of " + code}
}

func (p *fakePhones) Hear(func(Sent)) {}

// The organiser shares the night from the menu of the night, reads what is shown to whom, picks a network, sees the
// address and its code, finds it again, and stops it.
func TestTheDeskSharesWithPhonesOnRequest(t *testing.T) {
	s := called(t, 1, 5).press("o").shows("share with phones (it needs a club file)").press("p").shows("! it needs a club file").press("esc")
	p := &fakePhones{places: []string{"192.168.1.20 (wlan0)", "10.8.0.2 (tun0)"}, code: []string{strings.Repeat("█", 41), "▀▄ squares"}}
	s.m.options.Phones = p
	s.press("o", "p").shows("Everybody in the network that you choose", "change nothing", "1 at 192.168.1.20 (wlan0)", "2 at 10.8.0.2 (tun0)")
	if p.at != "" {
		t.Fatal("the page is open although nobody asked")
	}
	s.press("2").shows("http://10.8.0.2 (tun0)/", "▀▄ squares").press("esc")
	s.press("o").shows("phones: shared at http://10.8.0.2").press("p").shows("c show the address and its code").press("c").shows("▀▄ squares")
	s.resize(40, 12).shows("window 1", "columns and 0 rows larger").resize(80, 24)
	p.at = "" // the night ended meanwhile
	s.press("down").press("esc")
	p.at = "10.8.0.2"
	s.press("o", "p", "x").hides("┌─ Phones")
	if p.at != "" {
		t.Error("the page is still open")
	}
	p.err = errors.New("join the Wi-Fi of the hall first")
	s.press("o", "p").shows("! join the Wi-Fi of the hall first")
}
