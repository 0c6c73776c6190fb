// Package session is the night: what happened, what is true now, and what may happen next.
//
// Everything that happens is an [Event]. A [Ledger] folds events into state ([Club], [Night]) and
// does nothing else, so the same events always give the same state, byte for byte. A [Command] is
// what somebody wants; it is decided against the state, and becomes events or a refusal that says
// what to do instead. A [Desk] ties this to a [Log] that keeps the events: it decides, makes the
// events durable, and only then shows the new state.
//
// Time, randomness and files never enter by a team door: the desk is given a clock and a source of
// identities, and a command sees them only through [Env].
package session
