package wire

import (
	"encoding/json"
	"fmt"
	"io"
	"net/netip"
	"strings"

	"club/quadrille/session/public"
)

// Protocol is the version of what goes over the socket. Frames and hellos stay as they are in every version,
// so that a board and a desk that cannot work together can still say so.
const Protocol = 1

// Who says hello.
const (
	isBoard = "board"
	isDesk  = "desk"
)

// hello is the first frame, either way.
type hello struct {
	Quadrille string `json:"quadrille"` // who says it: board or desk
	Protocol  int    `json:"protocol"`
	View      int    `json:"view"`              // version of the views
	Program   string `json:"program"`           // version of the program, for people
	Refused   string `json:"refused,omitempty"` // the desk's: why the board may not follow
	Page      string `json:"page,omitempty"`    // the board's: address of the page at which it shows the views on
}

func newHello(who, program string) hello {
	return hello{Quadrille: who, Protocol: Protocol, View: public.Version, Program: program}
}

// readHello reads the hello of who must be on the other side.
func readHello(r io.Reader, who string) (hello, error) {
	body, err := readFrame(r, maxHello)
	if err != nil {
		return hello{}, err
	}
	var h hello
	if err := json.Unmarshal(body, &h); err != nil || h.Quadrille != who {
		return hello{}, fmt.Errorf("the other side is no %s of Quadrille", who)
	}
	return h, nil
}

// fits says why a board and a desk cannot work together, empty if they can.
func fits(board, desk hello) string {
	age := "an older"
	switch {
	case board.Protocol == desk.Protocol && board.View == desk.View:
		return ""
	case board.Protocol > desk.Protocol, board.Protocol == desk.Protocol && board.View > desk.View:
		age = "a newer"
	}
	return fmt.Sprintf("This board is of %s Quadrille (%s) than the desk (%s). Start it anew from the program that runs the desk.",
		age, printable(board.Program, longestVersion), printable(desk.Program, longestVersion))
}

// page is the address of a page in a local network that somebody says hello with, and nothing else that was said.
func (h hello) page() string {
	at, ok := strings.CutPrefix(h.Page, "http://")
	if !ok {
		return ""
	}
	where, err := netip.ParseAddrPort(strings.TrimSuffix(at, "/"))
	if a := where.Addr(); err != nil || !a.IsPrivate() && !a.IsLoopback() && !a.IsLinkLocalUnicast() || a.Zone() != "" {
		return ""
	}
	return "http://" + where.String() + "/"
}

// longestVersion is how many characters of a version are told.
const longestVersion = 24

// printable keeps a word of the other side to so many plain characters.
func printable(text string, most int) string {
	out := make([]rune, 0, most)
	for _, r := range text {
		if r >= ' ' && r <= '~' && len(out) < most {
			out = append(out, r)
		}
	}
	return string(out)
}
