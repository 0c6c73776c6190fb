package tui

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/session/courtside"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Phones shows the night on people's phones while it is open. Its methods return at once.
type Phones interface {
	// Places lists the networks by which phones may come, in words.
	Places() ([]string, error)
	// Open opens the page for one of them.
	Open(place string) error
	// Address is where the page is found and, line by line, a code that leads there; "" while it is not open.
	Address() (url string, code []string)
	// Close ends it.
	Close()
	// Courts tells what the pages of the courts show from now on, whether the page is open or not.
	Courts(courtside.Hall)
	// Court is where the page of the court with a code is found, as Address.
	Court(code string) (url string, lines []string)
	// Hear gives what courts send to take, from any goroutine.
	Hear(take func(Sent))
}

// phonesItem is the choice about phones in the menu of the night.
func (m *Model) phonesItem() dialog.Item {
	p := m.options.Phones
	item := dialog.Item{Key: "p", Label: "share with phones", Intent: ui.Later{Make: m.sharePhones}}
	if p == nil {
		item.Why = "it needs a club file"
		return item
	}
	if url, _ := p.Address(); url != "" {
		item.Label = "phones: shared at " + url
	}
	return item
}

// sharePhones asks by which network phones come, or what to do with the page that is open.
func (m *Model) sharePhones() ui.Intent {
	p := m.options.Phones
	if url, _ := p.Address(); url != "" {
		return ui.Show{Dialog: dialog.NewMenu("Phones",
			dialog.Item{Key: "c", Label: "show the address and its code", Intent: ui.Show{Dialog: m.codePage()}},
			dialog.Item{Key: "x", Label: "stop sharing with phones", Intent: ui.Later{Make: func() ui.Intent {
				p.Close()
				return nil
			}}})}
	}
	places, err := p.Places()
	if err != nil {
		return ui.Refuse{Err: err}
	}
	var items []dialog.Item
	for i, place := range places {
		items = append(items, dialog.Item{Key: strconv.Itoa(i + 1), Label: "at " + place, Intent: ui.Later{Make: func() ui.Intent { return m.openPhones(place) }}})
	}
	return ui.Show{Dialog: dialog.NewMenu("Share with phones", items...).Noting(whatPhonesSee)}
}

// whatPhonesSee says what is shown to whom, and how it ends.
const whatPhonesSee = "Everybody in the network that you choose can then see what the wall board shows, and change nothing, until the night ends or you stop it."

// openPhones opens the page, and shows where it is found.
func (m *Model) openPhones(place string) ui.Intent {
	if err := m.options.Phones.Open(place); err != nil {
		return ui.Refuse{Err: err}
	}
	return ui.Show{Dialog: m.codePage()}
}

// codePage shows the address of the page and its code, for whoever stands at the table.
func (m *Model) codePage() *dialog.Page {
	return dialog.NewWhole("Tonight on your phone, in the Wi-Fi of the desk", func(c ui.Context) []string {
		url, code := m.options.Phones.Address()
		if url == "" {
			return line.Wrap("The page for phones is closed.", c.Width)
		}
		return codeLines(c, url, code)
	})
}

// codeLines are an address and its code, where that fits: a part of a code leads nowhere.
func codeLines(c ui.Context, url string, code []string) []string {
	out := []string{c.Theme.Strong.Render(url)}
	if line.Width(url) > c.Width {
		out = line.Wrap(url, c.Width)
	}
	if wide, high := line.Width(strings.Join(code[:min(1, len(code))], "")), 1+len(out)+len(code); wide > c.Width || high > c.Height {
		more := fmt.Sprintf("The code for cameras needs a window %d columns and %d rows larger.", max(0, wide-c.Width), max(0, high-c.Height))
		return append(out, line.Wrap(more, c.Width)...)
	}
	return append(out, code...)
}
