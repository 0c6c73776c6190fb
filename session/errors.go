package session

import "errors"

// Refusals that a caller may want to tell apart.
var (
	// ErrNoNight tells that no night is open.
	ErrNoNight = errors.New("no night is open: open one first")
	// ErrNightOpen tells that a night is open already.
	ErrNightOpen = errors.New("a night is open already: close it first")
	// ErrNothingToUndo and ErrNothingToRedo tell that the history has no such step.
	ErrNothingToUndo = errors.New("nothing to undo: the night has just been opened")
	ErrNothingToRedo = errors.New("nothing to redo: the last thing done was no undo")
	// ErrNewer tells that a record was written by a newer Quadrille than this one.
	ErrNewer = errors.New("written by a newer Quadrille: open this file with that version")
	// ErrSavedAfterAll tells that an action that was reported as not saved is on disk, and that the
	// command that came after it was not done.
	ErrSavedAfterAll = errors.New("what was not saved before turns out to be saved: look at it before you go on")
	// ErrDisplaced tells that the club file is not where it was opened: another program removed, moved or
	// replaced it. Nothing is saved until it is put back.
	ErrDisplaced = errors.New("the club file is not in its place")
	// ErrDamaged tells that the club file is not as it was written: another program cut it short or wrote
	// over it. What it had may be lost, and nothing more is saved in it.
	ErrDamaged = errors.New("the club file is damaged")
	// ErrTooFew tells that not enough people are free for a game.
	ErrTooFew = errors.New("a game needs four people who are here and free")
)
