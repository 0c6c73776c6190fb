// Package simulation plays whole nights of a club that does not exist: people come, play, wait and
// go, through the same desk and the same log as a real night.
//
// A night is settled by a [Night] alone. What happens next follows from it and from the state that
// the log gives, never from anything kept in memory beside them; so a night that was cut off in the
// middle goes on from its log as if nothing had happened, and ends with the very same records.
package simulation
