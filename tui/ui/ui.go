// Package ui is what the screens of the desk share: what they are given to draw, and what they may
// ask for. A screen never decides anything about the night: it turns keys into intents, and state
// into lines.
package ui

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/theme"
)

// Context is what a screen is given whenever it is asked something.
type Context struct {
	Ledger   *session.Ledger
	Advice   session.Advice // what the night needs next, and why courts are free
	Names    *Names
	Now      time.Time // in the zone of the hall
	Theme    *theme.Theme
	Rotation Rotation
	Judged   *scheduler.Certificate // of the games of a rolling night, worked out beside the screen; nil while it is not known
	Hall     hall.Hall              // what stands in the hall, empty without a night
	Past     bool                   // an earlier night is read: Ledger ends with it, and nothing can be changed
	Fresh    bool                   // the newest action has just happened: no key was pressed since
	Width    int                    // cells and lines that the screen may fill
	Height   int
}

// Club is the state of everything.
func (c Context) Club() *session.Club { return c.Ledger.Club() }

// Night is the night that goes on, nil when none does; of an earlier night that is read it is that one.
func (c Context) Night() *session.Night {
	if c.Past {
		return c.Club().Night()
	}
	return c.Ledger.Night()
}

// Rotation is the plan of the rounds to come, worked out beside the screen.
type Rotation struct {
	session.Rotation
	Ready bool  // false while it is being worked out
	Err   error // why there is none

	Ways    []session.Choice // ways to plan it, this one among them; nil where there is no choice, or it is not known yet
	Looking Looking          // for better rounds after the next
}

// Looking is how far the search for a better rotation is, which goes on behind the screen.
type Looking struct {
	Begun   bool
	From    int  // repeated meetings when it began
	Settled bool // it has ended
	Printed bool // the rounds stand on paper, so none is looked for
}

// Screen is one of the desk's screens.
type Screen interface {
	Pressed
	// Click handles a click at a cell of the screen's space.
	Click(c Context, x, y int) Intent
	// Lines draws at most c.Height lines of at most c.Width cells.
	Lines(c Context) []string
	// Typing tells whether letters are text here, so that the desk keeps its hands off them.
	Typing() bool
}

// Leaver is a screen that has something to forget when another one is shown.
type Leaver interface{ Leave() }

// Follower is a screen that has something to forget when the night changes.
type Follower interface{ Follow(n *session.Night) }

// Surveyor is a screen that works out what it shows beside the drawing.
type Surveyor interface {
	// Survey works it out: when the screen is shown, and whenever the night, the plan or the minute changes.
	Survey(c Context)
}

// Adviser is a screen or a dialog that knows better than the night what to do next: it is in the
// middle of something.
type Adviser interface {
	// Next says what to do next, false when the night's own advice holds.
	Next(c Context) (string, bool)
}

// Dialog is a box over a screen that takes all keys until it is closed.
type Dialog interface {
	Pressed
	Title() string
	// Lines draws the inside of the box for the given inner size.
	Lines(c Context) []string
}

// Clicker is a dialog that can be clicked.
type Clicker interface {
	// Click handles a click at a cell of the inside of the box.
	Click(c Context, x, y int) Intent
}

// ScreenID names a screen.
type ScreenID int

// The screens in the order of their tabs.
const (
	Door ScreenID = iota
	Courts
	Bench
	RotationScreen
	Standings
	History
	ScreenCount
)

// The pages: screens without a tab, which are opened over another one and left to where one was.
const (
	PersonScreen ScreenID = ScreenCount + iota // of one person
	CallingPage                                // the newest call, to read aloud
	TimelinePage                               // the night by its courts
	SummaryPage                                // the night in short
	AllScreens                                 // how many screens and pages there are
)

// Intent is what a key press asks the desk to do. Nil asks for nothing.
type Intent interface{ intent() }

// Do asks the session for something.
type Do struct {
	Command session.Command
	After   func(*session.Ledger) // called when it has happened, and only then; may be nil
	Then    func(Context) Dialog  // the box that is opened when it has happened, and only then; may be nil
}

// Show opens a dialog.
type Show struct{ Dialog Dialog }

// Weigh shows what a decision by hand costs, and asks whether to take it. That is worked out beside the screen.
type Weigh struct{ Command session.Command }

// Close closes the dialog that is open, then follows Then if there is one.
type Close struct{ Then Intent }

// Go shows another screen.
type Go struct{ To ScreenID }

// Open shows a page over the screen that is shown.
type Open struct{ Page ScreenID }

// ShowPerson shows a person's page.
type ShowPerson struct {
	Person session.PersonID
	Among  []session.PersonID // whom the arrows go through; nil for everybody by name
}

// Back goes back from a page to where one was.
type Back struct{}

// GoCourt shows the courts with the cursor on one of them.
type GoCourt struct{ Court session.CourtID }

// CourtCode shows the code that opens a court's page.
type CourtCode struct{ Court session.CourtID }

// Import reads a roster from a file and expects its people tonight.
type Import struct {
	Path    string
	Arrived bool // check everybody in who does not come later
}

// Quit ends the desk. With Save it first tries again to save what is not saved, and stays if that fails.
type Quit struct{ Save bool }

// Backup copies the club file to another place.
type Backup struct{ Path string }

// Refuse tells what is wrong with what was typed.
type Refuse struct{ Err error }

// Later is an intent that is only made when it is followed, since that takes a while.
type Later struct{ Make func() Intent }

// Survey lets the screen work out anew what it shows.
type Survey struct{}

// Own is something that the desk itself does, beside the screens.
type Own struct{ Do func() tea.Cmd }

// Worked is the message of something that was worked out beside the screen at a key press: the desk takes it.
type Worked struct{ Take func() }

func (Survey) intent()     {}
func (Do) intent()         {}
func (Show) intent()       {}
func (Weigh) intent()      {}
func (Close) intent()      {}
func (Go) intent()         {}
func (GoCourt) intent()    {}
func (CourtCode) intent()  {}
func (Import) intent()     {}
func (Backup) intent()     {}
func (Quit) intent()       {}
func (Refuse) intent()     {}
func (Own) intent()        {}
func (Later) intent()      {}
func (Open) intent()       {}
func (ShowPerson) intent() {}
func (Back) intent()       {}

// Bind is a key binding with its help.
func Bind(help, keyText string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(keyText, help))
}
