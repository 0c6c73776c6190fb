package tui

import (
	"errors"
	"slices"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
)

// wayLabels are the settings that a way picked for tonight settles instead.
var wayLabels = [...]string{levelsLabel, benchLabel}

// wayFields are where they stand among the fields of the settings.
func wayFields() (at [len(wayLabels)]int) {
	for k, label := range wayLabels {
		at[k] = slices.IndexFunc(settingsOfANight(), func(x setting) bool { return x.label == label })
	}
	return at
}

// wayShown is what the form of the settings shows of a way that was picked for tonight, beside what the settings have.
type wayShown struct {
	picked         bool
	shown, setting [len(wayLabels)]string
}

// showWay puts the way that was picked for tonight into the fields of the settings: the form shows what holds.
func showWay(fields []dialog.Field, n *session.Night) wayShown {
	w := wayShown{picked: n.Picked != nil}
	if !w.picked {
		return w
	}
	way := n.Way()
	w.shown = [len(wayLabels)]string{way.Leveling().String(), way.Benching.String()}
	for k, i := range wayFields() {
		f := &fields[i]
		w.setting[k] = f.Value
		f.Value, f.Hint = w.shown[k], "picked for tonight in the rotation; "+f.Hint
	}
	return w
}

// settle are the values to read: what was left as shown is left as the settings have it, so that the pick holds on.
func (w wayShown) settle(values []string) ([]string, error) {
	if !w.picked {
		return values, nil
	}
	var now [len(wayLabels)]string
	for k, i := range wayFields() {
		now[k] = values[i]
	}
	switch {
	case now == w.setting && now != w.shown:
		return nil, errors.New("another way is picked for tonight: pick this one in the rotation (r, m), or undo the pick")
	case now != w.shown:
		return values, nil // settled anew: the pick is over
	}
	values = slices.Clone(values)
	for k, i := range wayFields() {
		values[i] = w.setting[k]
	}
	return values, nil
}
