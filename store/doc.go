// Package store keeps a club's records in one file, so that none is ever lost unnoticed.
//
// [Open] takes the file for this process alone, reads all of it, and gives a [Store], which is the
// [session.Log] that a session writes to. A record is on disk when [Store.Append] returns.
//
// The package knows bytes, not rules: what a payload means is the session's business.
package store
