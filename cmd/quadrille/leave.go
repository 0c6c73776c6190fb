package main

import (
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
	"club/quadrille/tui"
)

// leaveDesk closes the club file and says the truth about what is saved where. The error says what is
// not in the file at its path.
func leaveDesk(cmd *cobra.Command, desk *session.Desk, kept *keeper, left *tui.Unsaved, path string) error {
	if left != nil && !left.GivenUp {
		left = saveUnasked(desk, kept, left)
	}
	cared, place := kept.cared(), kept.InPlace()
	closed := kept.Store.Close()
	if err := errors.Join(unsaved(left, place, path), closed); err != nil {
		return err
	}
	for _, text := range kept.Notes() {
		note(cmd, "%s", text)
	}
	for _, text := range desk.Ledger().Skipped() {
		note(cmd, "not used, since it rests on a lost event: %s", text)
	}
	note(cmd, "everything is saved in %s", path)
	return cared
}

// saveUnasked tries once more to save what the desk was left with, where nobody could be asked: the
// terminal was closed. It gives what is still not saved.
func saveUnasked(desk *session.Desk, kept *keeper, left *tui.Unsaved) *tui.Unsaved {
	if _, err := kept.PutBack(time.Now()); err != nil {
		return left
	}
	if left.Command == nil {
		return nil
	}
	if _, err := desk.Do(left.Command); err != nil && !errors.Is(err, session.ErrSavedAfterAll) {
		return left
	}
	return nil
}

// unsaved says what is not in the club file at its path, and where it is instead; nil if all of it is.
func unsaved(left *tui.Unsaved, place error, path string) error {
	if left == nil {
		left = &tui.Unsaved{}
	}
	elsewhere := ""
	if left.Copied != "" {
		elsewhere = fmt.Sprintf("; all of it is in the copy %s: bring it back with \"quadrille restore %s\"", left.Copied, left.Copied)
	}
	if errors.Is(place, session.ErrDamaged) {
		if left.Command != nil {
			place = fmt.Errorf("not saved: %s: %w", left.Action, place)
		}
		return withBackup(place, path)
	}
	var displaced *store.DisplacedError
	switch lost := errors.As(place, &displaced); {
	case lost && elsewhere == "" && displaced.Now != "":
		return fmt.Errorf("%w, and has everything%s: move it back before the next start", displaced, butNot(left))
	case lost && elsewhere == "":
		return fmt.Errorf("%w, and was not written back: nothing of it is there%s", displaced, or(latestBackup(path), "; "))
	case lost:
		return fmt.Errorf("%w%s", displaced, elsewhere)
	case left.Command != nil && elsewhere == "":
		return fmt.Errorf("not saved, and lost: %s (%v); everything before it is saved in %s", left.Action, left.Err, path)
	case left.Command != nil:
		return fmt.Errorf("not saved in %s: %s%s", path, left.Action, elsewhere)
	}
	return place
}

// butNot names what could not be saved.
func butNot(left *tui.Unsaved) string {
	if left.Command == nil {
		return ""
	}
	return " but for what is lost: " + left.Action
}

// or puts a joint before a text that is there.
func or(text, joint string) string {
	if text == "" {
		return ""
	}
	return joint + text
}
