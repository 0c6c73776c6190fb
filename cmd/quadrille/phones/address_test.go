package phones

import (
	"net/netip"
	"slices"
	"strings"
	"testing"
)

func place(addr, name string) Place { return Place{netip.MustParseAddr(addr), name} }

// Only addresses of private networks are offered: those of RFC 1918, RFC 4193 and RFC 3927, and none beside them.
func TestOnlyPrivateAddressesAreOffered(t *testing.T) {
	all := []Place{
		place("169.254.10.1", "a"), place("fd12:3456::1", "b"), place("fc00::1", "b"), place("8.8.8.8", "c"), place("192.168.1.20", "d"), place("10.0.0.5", "e"),
		place("172.16.0.1", "f"), place("172.31.255.254", "f"), place("172.32.0.1", "f"), place("172.15.255.255", "f"), place("192.169.0.1", "g"),
		place("100.64.0.1", "h"), place("2001:db8::1", "i"), place("fe80::1", "j"), place("127.0.0.1", "lo"), place("::1", "lo"), place("0.0.0.0", "k"),
		place("224.0.0.1", "k"), place("11.0.0.1", "l"), place("fe00::1", "m"),
	}
	var got []string
	for _, p := range offered(all) {
		got = append(got, p.Addr.String())
	}
	want := []string{"192.168.1.20", "10.0.0.5", "172.16.0.1", "172.31.255.254", "fd12:3456::1", "fc00::1", "169.254.10.1"}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	places, err := Places()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range places {
		if rank(p.Addr) == 0 || p.Interface == "" {
			t.Errorf("%v is offered", p)
		}
	}
}

func TestTheOrganiserChoosesAmongSeveralAddresses(t *testing.T) {
	one, two := place("192.168.1.20", "wlan0"), place("10.8.0.2", "tun0")
	for _, c := range []struct {
		places []Place
		asked  string
		want   string // the address, or a part of the refusal
	}{
		{[]Place{one}, "", "192.168.1.20"},
		{[]Place{one, place("fd00::2", "wlan0")}, "", "192.168.1.20"},
		{[]Place{one, two}, "", "with --address: 192.168.1.20 (wlan0), 10.8.0.2 (tun0)"},
		{[]Place{one, two}, "10.8.0.2", "10.8.0.2"},
		{[]Place{one, two}, "10.8.0.3", "does not have the address 10.8.0.3; it has 192.168.1.20 (wlan0)"},
		{[]Place{one}, "8.8.8.8", "no address of a private network: the page is for the hall only; choose 192.168.1.20 (wlan0)"},
		{[]Place{one}, "0.0.0.0", "no address of a private network"},
		{nil, "::", "no address of a private network"},
		{nil, "fe80::1%eth0", "no address of a private network"},
		{nil, "hall.example", "is no address"},
		{nil, "", "join the Wi-Fi"},
		{nil, "127.0.0.1", "127.0.0.1"},
		{nil, "[::1]", "::1"},
		{[]Place{one}, "::ffff:192.168.1.20", "192.168.1.20"},
	} {
		got, err := Choose(c.places, c.asked)
		text := got.String()
		if err != nil {
			text = err.Error()
		}
		if text != c.want && (err == nil || !strings.Contains(text, c.want)) {
			t.Errorf("%v, %q: %s, want %s", c.places, c.asked, text, c.want)
		}
	}
}
