package phones

import (
	"fmt"
	"net"
	"net/netip"
	"slices"
	"strings"
)

// Place is an address of this computer at which phones could find the page.
type Place struct {
	Addr      netip.Addr
	Interface string // its name in the system
}

func (p Place) String() string { return fmt.Sprintf("%s (%s)", p.Addr, p.Interface) }

// Places lists the addresses of this computer that only a local network reaches.
func Places() ([]Place, error) {
	interfaces, err := net.Interfaces()
	if err != nil {
		return nil, err
	}
	var all []Place
	for _, i := range interfaces {
		if i.Flags&net.FlagUp == 0 || i.Flags&net.FlagLoopback != 0 {
			continue
		}
		addrs, err := i.Addrs()
		if err != nil {
			continue // an interface that has just gone
		}
		for _, a := range addrs {
			if p, err := netip.ParsePrefix(a.String()); err == nil {
				all = append(all, Place{p.Addr().Unmap(), i.Name})
			}
		}
	}
	return offered(all), nil
}

// offered keeps the addresses that may be offered, those first by which phones usually find a laptop.
func offered(all []Place) []Place {
	all = slices.DeleteFunc(slices.Clone(all), func(p Place) bool { return rank(p.Addr) == 0 })
	slices.SortStableFunc(all, func(a, b Place) int { return rank(a.Addr) - rank(b.Addr) })
	return all
}

// rank orders the kinds of private addresses; 0 is for one that is not offered. Those of RFC 1918 and RFC 4193
// belong to private networks, those of RFC 3927 to a network without a router. The link-local addresses of
// IPv6 are no use here: they need a zone, which browsers refuse in an address.
func rank(a netip.Addr) int {
	switch {
	case a.Is4() && a.IsPrivate():
		return 1
	case a.Is6() && a.IsPrivate():
		return 2
	case a.Is4() && a.IsLinkLocalUnicast():
		return 3
	}
	return 0
}

// Choose picks the address for the page out of the places: the one that was asked for, else the first of the only
// network. A network often gives several addresses, all of which lead to this computer.
// An address of this computer for itself can be asked for, too, to look at the page there.
func Choose(places []Place, asked string) (netip.Addr, error) {
	if asked != "" {
		a, err := netip.ParseAddr(strings.Trim(asked, "[]"))
		switch a = a.Unmap(); {
		case err != nil:
			return netip.Addr{}, fmt.Errorf("%q is no address: give it in numbers, such as 192.168.1.20", asked)
		case a.Zone() != "" || rank(a) == 0 && !a.IsLoopback():
			return netip.Addr{}, fmt.Errorf("%s is no address of a private network: the page is for the hall only%s", a, listed("; choose %s", places))
		case !a.IsLoopback() && !slices.ContainsFunc(places, func(p Place) bool { return p.Addr == a }):
			return netip.Addr{}, fmt.Errorf("this computer does not have the address %s%s", a, listed("; it has %s", places))
		}
		return a, nil
	}
	if len(places) == 0 {
		return netip.Addr{}, fmt.Errorf("this computer is in no local network: join the Wi-Fi of the hall first, or open a hotspot on a phone and join that")
	}
	if !slices.ContainsFunc(places, func(p Place) bool { return p.Interface != places[0].Interface }) {
		return places[0].Addr, nil
	}
	return netip.Addr{}, fmt.Errorf("this computer is in several networks: say by which one the phones come, with --address%s", listed(": %s", places))
}

// listed puts the places into words, nothing if there are none.
func listed(format string, places []Place) string {
	if len(places) == 0 {
		return ""
	}
	words := make([]string, len(places))
	for i, p := range places {
		words[i] = p.String()
	}
	return fmt.Sprintf(format, strings.Join(words, ", "))
}
