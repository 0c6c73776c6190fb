// Package tui is the desk: the screens on which an organiser runs a night. It reads the session's
// state and sends it commands; what may happen is never decided here.
package tui

import (
	"context"
	"io"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/session/paper"
	"club/quadrille/session/public"
	"club/quadrille/tui/bench"
	"club/quadrille/tui/calling"
	"club/quadrille/tui/config"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/door"
	"club/quadrille/tui/history"
	"club/quadrille/tui/person"
	"club/quadrille/tui/rotation"
	"club/quadrille/tui/summary"
	"club/quadrille/tui/table"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/timeline"
	"club/quadrille/tui/ui"
)

// Desk is what the screens need of the session.
type Desk interface {
	Ledger() *session.Ledger
	Do(session.Command) (*session.Ledger, error)
	Now() time.Time
	ClockMoved() bool // see session.Desk.ClockMoved
	Past(session.NightID) (*session.Ledger, error)
	DoAll(func(one func(session.Command) (*session.Ledger, error)) error) (*session.Ledger, error)
}

// Options are what the screens get from outside.
type Options struct {
	Theme *theme.Theme
	// AskBackground lets the desk ask the terminal for its background, behind the first frame.
	AskBackground bool
	ReadFile      func(path string) ([]byte, error) // for rosters
	NewSeed       func() uint64                     // for the draws of a new night
	NewSecret     func() string                     // 128 random bits in hexadecimal, for the codes of courts
	Keys          []config.Key                      // as somebody wants them, see Keys; nil for those
	Warnings      []error                           // told when the desk opens
	Bell          func()                            // sounds the terminal's bell, nil for silence
	// Slices is how many pieces of work without a find end the search for better rounds behind the screen; where it is
	// 0, nothing is done there.
	Slices int
	// Backup copies the club file, and does also in the copy what could not be saved, unless that is nil.
	// Backup is nil where there is no file.
	Backup func(path string, also session.Command) error
	// InPlace tells whether the club file's path still leads to it, see session.ErrDisplaced, and PutBack
	// writes it back; what stood in its place is then at aside. Both are nil where there is no file.
	InPlace func() error
	PutBack func() (aside string, err error)
	// Show is given what the hall may see whenever that may have changed, for whoever shows it elsewhere. It must
	// not keep the desk waiting, and may call view at any time and in any goroutine, or not at all. Nil where
	// nobody shows it.
	Show func(view func() public.View)
	// Print writes a sheet to a new file at a path, on one of Papers, and says which of the names it could not draw as they
	// are. Nil where nothing is printed.
	Print  func(path, on string, s paper.Sheet, names []string) (lack []string, err error)
	Papers []string // the sizes of paper, the usual one first
	// Phones shows the night on people's phones when the organiser asks for it, nil where nobody can follow the desk.
	Phones Phones
}

// Model is the desk as Bubble Tea runs it. It routes: keys to the dialog or screen they are meant
// for, intents to the session, results back.
type Model struct {
	desk    Desk
	options Options

	ask    func() // lets the terminal be asked for its background, nil where it is not to be asked
	ledger *session.Ledger
	names  *ui.Names
	now    time.Time

	keys    []deskKey                // what works on every screen
	screens [ui.AllScreens]ui.Screen // and pages
	courts  *courts.Courts
	person  *person.Page
	calling *calling.Page
	active  ui.ScreenID
	back    []origin // where pages were opened, the newest last
	past    *past    // the earlier night that is read, nil for tonight
	dialogs []ui.Dialog

	slip     slip
	queue    []event                  // what was typed and not yet handled, in order
	busy     bool                     // a command is on its way to the disk: the queue waits
	work     *work                    // what the queue waits for, nil where that is a short write
	works    int                      // counts them
	took     map[string]time.Duration // by what it was, the last time
	patience time.Duration            // with work before it is told how long it takes; 0 where nobody is to be told
	after    pending
	advised  advised

	notice  string // what was done last
	change  string // what that did to the coming games, "" for nothing
	changer string // what was done last when the rotation was last worked out anew
	called  bool   // it called people to courts
	typed   uint64 // the action that saved the score typed last, as long as one stays on its screen; 0 for none
	wrong   error  // stays until it is dismissed, or something is saved after it was seen
	seenIt  bool   // keys came after wrong was shown
	unread  int    // further refusals since wrong was shown
	since   bool   // something was saved since wrong was shown first

	trouble *trouble  // what is not saved or not in its place, nil when all is well
	leaving bool      // the desk ends as soon as that is solved
	asking  ui.Dialog // the question whether to leave with it, nil before it was asked
	givenUp bool      // the answer was to leave all the same

	clockUnsaved bool // the disk would not take that the clock was moved

	mind          mind
	hall          hall.Hall // worked out when the ledger, the plan or the minute changes
	minute        time.Time // that hall was worked out for
	seen          uint64    // the newest record when a key was pressed last
	plan          ui.Rotation
	planKey       uint64
	planRun       int  // counts how often a rotation was worked out
	callPlanned   bool // a round is to be called as soon as plan is ready
	planBegan     time.Time
	cancelPlan    context.CancelFunc
	shown         session.Shown          // the rounds to come that people have seen
	shownBefore   []shownOnce            // the newest last
	printed       []session.PlannedRound // the rounds to come that stand on paper
	paper         string                 // size of it that was printed on last, "" for none
	behind        behind
	listed        listed
	judged        fairness
	rest          time.Duration // between two pieces of work behind the screen
	width, height int
}

// event is a key or a click that waits for its turn. Keys that came glued together in one read of
// the terminal share a burst.
type event struct {
	msg   tea.Msg
	burst int
	at    time.Time // when it was typed
}

// pending is what to do when the command on its way has happened.
type pending struct {
	then   func(*session.Ledger)
	dialog ui.Dialog                  // to close, nil for none
	next   func(ui.Context) ui.Dialog // the box to open then, nil for none
}

// New makes the desk's screens over a session.
func New(desk Desk, o Options) *Model {
	if o.Theme == nil {
		o.Theme = theme.New(io.Discard)
	}
	c := courts.New()
	m := &Model{desk: desk, options: o, courts: c, person: person.New(), calling: calling.New(), keys: keysOf(o.Keys)}
	m.screens = [ui.AllScreens]ui.Screen{
		door.New(), c, bench.New(), rotation.New(), table.New(), history.New(), m.person, m.calling, timeline.New(), summary.New(),
	}
	m.rest, m.patience = restBetween, patience
	m.now = desk.Now()
	m.take(desk.Ledger())
	m.seen = m.ledger.Last()
	m.mind.startAfresh()
	m.doubtClock()
	for _, w := range o.Warnings {
		m.refuse(w)
	}
	m.active = ui.Courts
	if n := m.ledger.Night(); n != nil && len(n.Games) == 0 && n.Count(session.Here) < 4 {
		m.active = ui.Door
	}
	if m.held() {
		m.showHold()
	}
	return m
}

// Init implements tea.Model.
func (m *Model) Init() tea.Cmd { return tea.Batch(tick(), m.replan()) }

// take makes a new state the one that is shown.
func (m *Model) take(l *session.Ledger) {
	m.ledger = l
	m.names = ui.NewNames(l.Club())
	m.survey()
	for _, screen := range m.screens {
		if f, ok := screen.(ui.Follower); ok {
			f.Follow(l.Night())
		}
	}
}

// survey works out what stands in the hall, and what the screen shows that is seen.
func (m *Model) survey() {
	var ahead []session.PlannedRound
	if m.plan.Ready && m.plan.Err == nil {
		ahead = m.plan.Rounds
	}
	m.hall, _ = hall.Of(m.ledger, ahead, m.now)
	if m.options.Show != nil {
		l, h, now := m.ledger, m.hall, m.now
		m.options.Show(func() public.View { return public.Of(l, h, now) })
	}
	m.showCourts()
	m.attend()
	m.listed = listed{}
	m.renewPalette()
	m.surveyScreen()
}

// surveyScreen lets the screen that is seen work out what it shows.
func (m *Model) surveyScreen() {
	if s, ok := m.screens[m.active].(ui.Surveyor); ok {
		s.Survey(m.context())
	}
}

// context is what screens are given; the space is that of the body.
func (m *Model) context() ui.Context {
	c := ui.Context{
		Ledger: m.ledger, Advice: m.advice(), Names: m.names, Now: m.now, Theme: m.options.Theme, Rotation: m.plan,
		Hall: m.hall, Fresh: m.ledger.Last() != m.seen,
		Width: m.width, Height: max(1, m.height-frameRows+1-len(m.message(m.options.Theme))),
	}
	if m.past != nil {
		m.past.show(&c)
	}
	c.Judged = m.judged.of(c.Ledger)
	return c
}

// advice is what the night needs next, worked out once for a state and a time: a frame asks for it often.
func (m *Model) advice() session.Advice {
	if m.advised.ledger != m.ledger || !m.advised.at.Equal(m.now) {
		m.advised = advised{m.ledger, m.now, m.ledger.NextStep(m.now)}
	}
	return m.advised.advice
}

// advised is an advice, with what it is about.
type advised struct {
	ledger *session.Ledger
	at     time.Time
	advice session.Advice
}

// tickMsg tells that time has passed.
type tickMsg struct{}

// tick wakes the desk now and then, since cards show minutes and the club file may be moved.
func tick() tea.Cmd {
	return tea.Every(lookEvery, func(time.Time) tea.Msg { return tickMsg{} })
}
