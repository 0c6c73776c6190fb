package courts

import (
	"fmt"
	"strings"
	"unicode"

	"club/quadrille/tui/ui"
)

// finder is the name of a court on its way from the keyboard: g, and its number or the beginning of its name.
// Enter is only needed where another court begins alike. It is open while it is on.
type finder struct {
	on   bool
	text string
}

// longestName is how long the name of a court is.
const longestName = 8

// finderActions are the keys while a court is looked for.
func (s *Courts) finderActions(c ui.Context) []ui.Action {
	return []ui.Action{
		{Key: ui.Bind("a court's number or name", "letters")},
		ui.Act(ui.Bind("go there", "enter", "enter"), func() ui.Intent { return s.found(c) }),
		ui.Act(ui.Bind("take back", "bksp", "backspace"), func() ui.Intent {
			if s.finder.text == "" {
				s.finder = finder{}
				return nil
			}
			text := []rune(s.finder.text)
			s.finder.text = string(text[:len(text)-1])
			return nil
		}).Quietly(),
		ui.Act(ui.Bind("back", "esc", "esc", undoKey), func() ui.Intent {
			s.finder = finder{}
			return nil
		}),
	}
}

// found puts the cursor on the court that was named, whole or by its only beginning.
func (s *Courts) found(c ui.Context) ui.Intent {
	id, err := c.Night().CourtNamed(s.finder.text)
	if err != nil {
		return ui.Refuse{Err: err}
	}
	s.finder, s.selected = finder{}, id
	return nil
}

// finderPanel shows what was typed.
func (s *Courts) finderPanel(c ui.Context) []string {
	var names []string
	for _, k := range c.Night().Courts {
		names = append(names, string(k.ID))
	}
	head := c.Theme.Next.Render(fmt.Sprintf("Go to court: %s_", s.finder.text))
	return []string{head, c.Theme.Dim.Render("  courts: " + strings.Join(names, " "))}
}

// typed takes letters of the name. What is pasted may have others than a name can have.
func (f *finder) typed(runes []rune) {
	for _, r := range runes {
		if unicode.IsPrint(r) && len([]rune(f.text)) < longestName {
			f.text += string(r)
		}
	}
}
