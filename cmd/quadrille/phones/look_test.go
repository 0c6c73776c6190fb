package phones

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// luminance is that of a colour such as #0b5a26, by WCAG 2.2, "relative luminance".
func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	rgb, err := strconv.ParseUint(strings.TrimPrefix(colour, "#"), 16, 24)
	if err != nil || len(colour) != 7 {
		t.Fatalf("%q is no colour", colour)
	}
	part := func(shift int) float64 {
		c := float64(rgb>>shift&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(16) + 0.7152*part(8) + 0.0722*part(0)
}

// contrast is that of two colours, by WCAG 2.2, "contrast ratio".
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrastIsThatOfTheDefinition(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#777777", "#ffffff", 4.48}, {"#123456", "#123456", 1}} {
		if got := contrast(t, c.a, c.b); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s on %s: %.2f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// colours are the variables of the style, in light and in dark.
func colours(t *testing.T) map[string]map[string]string {
	t.Helper()
	light, dark, found := strings.Cut(string(asset("look.css")), "@media (prefers-color-scheme: dark)")
	if !found {
		t.Fatal("the style knows no dark")
	}
	out := map[string]map[string]string{"light": {}, "dark": {}}
	for name, text := range map[string]string{"light": light, "dark": dark} {
		for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6});`).FindAllStringSubmatch(text, -1) {
			out[name][m[1]] = m[2]
		}
	}
	if len(out["light"]) < 10 || len(out["light"]) != len(out["dark"]) {
		t.Fatalf("%v", out)
	}
	return out
}

// Texts stand out by 4.5 to 1, and what shows where something is by 3 to 1 (WCAG 2.2: 1.4.3, 1.4.11), in light and dark.
func TestTextsStandOut(t *testing.T) {
	for name, c := range colours(t) {
		for _, pair := range []struct {
			on, under string
			least     float64
		}{
			{"ink", "paper", 7},
			{"quiet", "paper", 4.5},
			{"link", "paper", 4.5},
			{"ink", "card", 7},
			{"on-go", "go", 7},
			{"on-hold", "hold", 4.5},
			{"on-note", "note", 7},
			{"line", "paper", 3},
			{"go", "paper", 3},
			{"link", "card", 3},
		} {
			if got := contrast(t, c[pair.on], c[pair.under]); got < pair.least {
				t.Errorf("%s: %s on %s has %.2f, less than %v", name, pair.on, pair.under, got, pair.least)
			}
		}
	}
	css := string(asset("look.css"))
	rules, _, _ := strings.Cut(css[strings.Index(css, "* {"):], "\x00")
	if found := regexp.MustCompile(`#[0-9a-f]{3,6}\b|rgb|hsl`).FindString(rules); found != "" {
		t.Errorf("the rules have the colour %s, which is not among those that are checked", found)
	}
}

// Fingers find what they aim at (WCAG 2.2, 2.5.5: 44 by 44), nothing moves for whom that is a trouble (2.3.3), and
// the focus shows (2.4.7).
func TestFingersAndEyesAreSpared(t *testing.T) {
	css := string(asset("look.css"))
	for _, want := range []string{
		`(?s)\na, button, select \{[^}]*min-width: 44px;[^}]*min-height: 44px;`,
		`(?s)@media \(prefers-reduced-motion: reduce\) \{\s*\* \{ animation: none !important; transition: none !important; \}`,
		`:focus-visible \{ outline: 3px solid`,
	} {
		if !regexp.MustCompile(want).MatchString(css) {
			t.Errorf("the style does not have %s", want)
		}
	}
	if found := regexp.MustCompile(`outline: (none|0)|user-select|url\(|@import`).FindString(css); found != "" {
		t.Errorf("the style has %s", found)
	}
	if found := regexp.MustCompile(`font(-size)?: [0-9.]+px`).FindString(css); found != "" {
		t.Errorf("%s does not grow with what the reader chose", found) // 1.4.4
	}
}
