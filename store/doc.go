// Package store keeps a club's records in one file, so that none is ever lost unnoticed.
//
// [Open] takes the file for this process alone, reads all of it, and gives a [Store], which is the
// [session.Log] that a session writes to. Commands that only tell use [Look], which works while
// the desk has the file open. [Check] says what is wrong with a file, [Rescue] saves what is sound
// in a damaged one, [Backup], [Store.Keep] and [Restore] copy, [Store.Rewrite] forgets, and
// [Store.Compact] gives room back.
//
// # Promises
//
// A record is on disk when [Store.Append] returns, together with all others of the same call. What
// it returned nil for is there after a crash, a kill or a power cut, as far as the disk tells the
// truth when it is asked to flush. What it returned an error for is there whole or not at all.
//
// A record that was altered, lost, swapped or taken from another file shows: when the file is
// opened, in a check, in a copy. Nothing is repaired in silence, nothing is dropped, and no damage
// makes the program crash. A file of a newer program is refused and left alone.
//
// No file is ever written over, but for the club file itself; a new file has its name only when it
// is complete, flushed and read back.
//
// # The file
//
// The file is one of go.etcd.io/bbolt, with two buckets or three. The bucket meta has one key, head,
// whose value is described in head.go. The bucket log has a key for each record, described with its
// value in frame.go: numbers without gaps from 1, each record with a CRC-32C over all of it, the
// checksum of the one before, which club's file it was written for, and how many of its action follow.
// The bucket's sequence is the number of the newest record, so that an end that is lost shows. Everything
// else, such as who is on which court, is derived from the records.
//
// One thing that is derived is kept all the same: the bucket snapshots may hold the state that the
// session had before its newest night, described in snapshot.go, so that a season opens in a third
// of the time (30 ms instead of 90 for 25,000 records). It is only ever a shortcut. Every byte of the
// log is verified at every opening with a snapshot as without; the snapshot is used only if its own
// checksum is right and the record that it ends with has the checksum it was made from, which stands
// for all records before; it is always made from the records, never from another snapshot; a file
// that is rewritten, compacted or rescued has none. Check compares it with what the records come to.
//
// A file of an older format is brought up to date when it is opened, after a copy of it was made, as
// told in migrate.go. There is no older format than the one of today yet.
//
// Beside the file may stand its name with .pid, the number of the process that has it open; its name
// with -format, a number and a time, the copy that a migration left; with -before and a time, what made
// room for a restored file or one that was put back; and passing files that begin with a dot and end in
// .new- and numbers, which the next Open removes if no process holds them.
//
// # Where the file is
//
// Symbolic links are followed once, by Open. Other programs may move, remove or replace the file while it
// is open; the system lets them, and what is written then goes where nobody finds it again. So each Append
// compares the path with the open file, before and after, and refuses with a [*DisplacedError]; the file
// then stays open, since it may be nowhere else, and [Store.PutBack] writes it back whole.
//
// # Why damage cannot crash the program
//
// bbolt maps its file and trusts it. So the sub-package pages, which trusts nothing, reads every
// page before bbolt sees the file; that takes 1 ms for each 1,000 records. What happens to the
// mapping later, such as a stick that is pulled out, is caught in guard.go.
//
// The package knows bytes, not rules: what a payload means is the session's business.
package store
