package rotation

import (
	"fmt"

	"club/quadrille/scheduler"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// bars is the certificate as lengths: of each measure the value, with its bound as a notch. Where the value is the
// bound nothing better is possible.
func bars(c ui.Context, k scheduler.Certificate) []string {
	var out []string
	for _, m := range judged(c, k) {
		out = append(out, bar(c, m))
	}
	columns := max(1, min(3, c.Width/barWidth))
	rows := (len(out) + columns - 1) / columns
	width := c.Width / columns
	lines := make([]string, rows)
	for i, text := range out {
		lines[i%rows] += line.Fit(text, width)
	}
	return lines
}

// barWidth is the least room in which a measure reads well, and gauge the length of its bar.
const (
	barWidth = 58
	gauge    = 16
)

// bar is one measure.
func bar(c ui.Context, m scheduler.Measure) string {
	name := line.Fit(m.Name, 18)
	most := float64(max(1, m.Value.Value, m.Bound))
	if m.Value.Value > m.Bound {
		most *= 1.25
	}
	drawn := widget.Gauge(gauge, float64(m.Value.Value), float64(m.Bound), most)
	switch {
	case m.Open:
		return name + c.Theme.Dim.Render(widget.Gauge(gauge, float64(m.Value.Value), 0, most)) + fmt.Sprintf(" %d, no bound known", m.Value.Value)
	case m.Gap() <= 0:
		return name + c.Theme.Good.Render(drawn) + fmt.Sprintf(" %d, ", m.Value.Value) + c.Theme.Good.Render("✓ proved best")
	}
	return name + drawn + fmt.Sprintf(" %d, none below %d", m.Value.Value, m.Bound)
}

// fairness is the page of the certificate as bars.
func (r *Rotation) fairness(c ui.Context) []string {
	k, ok := r.certificate(c)
	if !ok {
		return summary(c, k, ok)
	}
	out := append(summary(c, k, ok), bars(c, k)...)
	out = append(out, "")
	for _, words := range append([]string{"┃ is the bound."}, k.Words(inRounds(c))...) {
		for _, text := range line.Wrap(words, c.Width) {
			out = append(out, c.Theme.Dim.Render(text))
		}
	}
	return out
}
