package scheduler

import (
	"club/quadrille/scheduler/judge"
	"club/quadrille/scheduler/ladder"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/rolling"
)

// The words of a night, from package night.
type (
	Problem   = night.Problem
	Person    = night.Person
	CourtSpec = night.CourtSpec
	Pair      = night.Pair
	Pin       = night.Pin
	Recent    = night.Recent
	Player    = night.Player
	Court     = night.Court
	Team      = night.Team
	Game      = night.Game
	Round     = night.Round
	Format    = night.Format
	Conflict  = night.Conflict
	Clash     = night.Clash
)

// The formats, and what stands for nobody and for no court.
const (
	Rotating = night.Rotating
	Mixed    = night.Mixed
	Pairs    = night.Pairs
	Ladder   = night.Ladder
	Nobody   = night.Nobody
	NoCourt  = night.NoCourt
)

// LastNight is [night.LastNight].
const LastNight = night.LastNight

// Formats lists every format in the order of their constants.
func Formats() []Format { return night.Formats() }

// ParseFormat returns the format of that name. Case and surrounding space do not matter.
func ParseFormat(name string) (Format, error) { return night.ParseFormat(name) }

// WinChance is [night.WinChance].
func WinChance(a, b float64) float64 { return night.WinChance(a, b) }

// What a rotation is judged by, from packages judge and measure.
type (
	Certificate = judge.Certificate
	Value       = measure.Value
)

// The rolling flow, from package rolling.
type (
	Rolling = rolling.Moment
	Waiting = rolling.Waiting
)

// ErrTooFew is [rolling.ErrTooFew].
var ErrTooFew = rolling.ErrTooFew

// Next chooses the four who play next on the free court: see [rolling.Next].
func Next(r Rolling) (Game, error) { return rolling.Next(r) }

// Call is Next for a court that calls by itself, which may be better left free: see [rolling.Call].
func Call(r Rolling) (Game, error) { return rolling.Call(r) }

// ErrPatience is [rolling.ErrPatience].
var ErrPatience = rolling.ErrPatience

// Weighed is [rolling.Weighed].
type Weighed = rolling.Weighed

// ErrNoGameWith is [rolling.ErrNoGameWith].
var ErrNoGameWith = rolling.ErrNoGameWith

// WhyNot weighs the next game against the best one with a certain person: see [rolling.WhyNot].
func WhyNot(r Rolling, who Player) (taken, with Weighed, err error) { return rolling.WhyNot(r, who) }

// QueueNext is the plain way of many halls: see [rolling.QueueNext].
func QueueNext(r Rolling) (Game, error) { return rolling.QueueNext(r) }

// Result is the outcome of one game of a ladder round.
type Result = ladder.Result

// NextLadder makes the next round of a winners-up ladder: see [ladder.Next].
func NextLadder(p Problem, last []Result) (Round, error) { return ladder.Next(p, last) }

// Measure is one line of a certificate.
type Measure = judge.Measure

// Benching says what it may cost that nobody sits out twice running: see [night.Benching].
type Benching = night.Benching

// The ways to share the bench.
const (
	MixedBench  = night.MixedBench
	StrictBench = night.StrictBench
)

// Benchings lists the choices in the order of their constants.
func Benchings() []Benching { return night.Benchings() }

// ParseBenching returns the choice of that name. Case and surrounding space do not matter.
func ParseBenching(name string) (Benching, error) { return night.ParseBenching(name) }

// Leveling says how much even games are worth: see [night.Leveling].
type Leveling = night.Leveling

// The steps of leveling.
const (
	AnyLevels    = night.AnyLevels
	GentleLevels = night.GentleLevels
	EvenLevels   = night.EvenLevels
)

// Levelings lists the steps in the order of their constants.
func Levelings() []Leveling { return night.Levelings() }

// ParseLeveling returns the step of that name. Case and surrounding space do not matter.
func ParseLeveling(name string) (Leveling, error) { return night.ParseLeveling(name) }
