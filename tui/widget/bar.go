package widget

import "strings"

// Progress is a bar of what has passed of what is expected, width cells wide: full when it has all
// passed, or more. A little is never shown as nothing, nor nearly all as all.
func Progress(width int, passed, expected float64) string {
	return fill(width, passed, expected, "━", "╌")
}

// Gauge is a bar of a value between nothing and most, with the bound as a notch in it: no value lies
// below the bound. Without room for a notch it is left out.
func Gauge(width int, value, bound, most float64) string {
	if width < 1 || most <= 0 {
		return ""
	}
	cells := []rune(fill(width, value, most, "▰", "▱"))
	if at := int(bound / most * float64(width)); bound > 0 && at < width {
		cells[at] = '┃'
	}
	return string(cells)
}

// Blocks is a length for a number among others: width cells for most, and none for nothing.
func Blocks(width int, value, most float64) string {
	if width < 1 || most <= 0 || value <= 0 {
		return ""
	}
	return strings.Repeat("▇", share(width, value, most))
}

func fill(width int, value, most float64, on, off string) string {
	if width < 1 {
		return ""
	}
	k := share(width, value, most)
	return strings.Repeat(on, k) + strings.Repeat(off, width-k)
}

// share is how many of width cells stand for value of most.
func share(width int, value, most float64) int {
	switch {
	case value <= 0 || most <= 0:
		return 0
	case value >= most:
		return width
	}
	return min(max(1, int(value/most*float64(width)+0.5)), max(1, width-1))
}

// rises are the heights of a run, from the lowest to the highest.
var rises = []rune("▁▂▃▄▅▆▇█")

// Run draws numbers as heights in one line, the last width of them: a course at a glance.
func Run(width int, values []float64) string {
	if width < 1 || len(values) == 0 {
		return ""
	}
	values = values[max(0, len(values)-width):]
	least, most := values[0], values[0]
	for _, v := range values {
		least, most = min(least, v), max(most, v)
	}
	out := make([]rune, len(values))
	for i, v := range values {
		at := len(rises) / 2
		if most > least {
			at = int((v - least) / (most - least) * float64(len(rises)-1))
		}
		out[i] = rises[at]
	}
	return string(out)
}
