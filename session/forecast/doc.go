// Package forecast says before a night what will fit into it: how many rounds and games, with which chances,
// to how many points, and when it ends.
//
// A [Hall] is played many times over with minutes that a [Habit] holds possible: what the club's own games
// have taught, shrunk to a model where they are few. Nothing of it is stored, and nothing is drawn but
// from the seed that is passed in.
package forecast
