package terminal

import (
	"strconv"
	"strings"
)

// Light tells whether a colour as terminals write it, "rgb:ffff/fdfd/f0f0" with one to four digits a
// part or "rgba:…", is a light background: nearer to white than to black in brightness as the eye has it
// (ITU-R BT.709 weights). Ok is false for anything else.
func Light(colour string) (light, ok bool) {
	kind, value, _ := strings.Cut(colour, ":")
	parts := strings.Split(value, "/")
	if kind != "rgb" && kind != "rgba" || len(parts) < 3 {
		return false, false
	}
	bright := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(parts[i], 16, 16)
		if err != nil || parts[i] == "" {
			return false, false
		}
		most := uint64(1)<<(4*len(parts[i])) - 1
		bright += weight * float64(v) / float64(most)
	}
	return bright > 0.5, true
}
