package browser

import (
	_ "embed"
	"slices"
	"strings"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/chromedp"
)

//go:embed audit.js
var script string

// Faults are what somebody would stumble over in the page as it stands: texts that do not stand out from what is really
// behind them (WCAG 2.2, 1.4.3), targets smaller than 44 by 44 (2.5.5), anything wider than the screen (1.4.10), headings of columns in pieces.
func (t *Tab) Faults() (faults []string) {
	t.t.Helper()
	return get(t, chromedp.Evaluate[[]string](script))
}

// Said are the elements as a screen reader finds them: a role and a name, “button Show my courts”. Those that say
// nothing are left out.
func (t *Tab) Said() (said []string) {
	t.t.Helper()
	for _, n := range call(t, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{}).Nodes {
		if n.Ignored || n.Role == nil {
			continue
		}
		name := ""
		if n.Name != nil {
			name = text(n.Name)
		}
		said = append(said, strings.TrimSpace(text(n.Role)+" "+name))
	}
	return said
}

// Unnamed are the elements that people act on or go to and that have no name for a screen reader.
func Unnamed(said []string) []string {
	roles := []string{"button", "link", "combobox", "textbox", "region", "heading", "img", "RootWebArea"}
	return slices.DeleteFunc(slices.Clone(said), func(s string) bool { return !slices.Contains(roles, s) })
}

// text is a value of the tree of names, which comes as JSON.
func text(v *accessibility.Value) string { return strings.Trim(string(v.Value), `"`) }
