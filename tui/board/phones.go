package board

import (
	"strings"

	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// phones draws where the page for phones is found: its address, as large as it may be, and below it the code for
// cameras, where there is room for it.
func (b *Board) phones(url string, width, height int) []string {
	out := b.pen.draw("On your phone", width, titleSize(height), b.theme.Title)
	out = append(out, b.theme.Frame.Render(strings.Repeat("─", max(0, width))))
	address := b.pen.fit(url, width, max(1, height/8), widget.Sizes[0])
	out = append(out, b.pen.draw(url, width, address, b.theme.Strong)...)
	out = append(out, line.Wrap("In the Wi-Fi of this computer: find your name, see your next court.", max(1, width))...)
	if b.code == nil {
		return out
	}
	for _, l := range b.code(url, width, height-len(out)-1) {
		out = append(out, centred(l, width))
	}
	return out
}
