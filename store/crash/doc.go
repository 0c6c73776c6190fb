// Package crash shows what a power cut, a kill or a lost flush leaves of a club file, and that nothing
// which was acknowledged is lost by it.
//
// [Record] runs a program under the eyes of the system and notes each write, flush and name that it gives
// below a folder, and each number that it acknowledges, in the order in which they happened. Nothing in
// the program is changed for that. [Trace.State] then makes the folder as a disk could have it if the power
// had gone at any of these moments: everything before the last flush of a file is there, and of what came
// after any part may be, in any order, cut at the sectors of a disk. Names that were given and not flushed
// are there up to some one of them, as in the journal of a file system.
//
// [Work] is the program that is recorded, a real night through session and store, with backups, snapshots
// and compactions; [Check] opens what a crash left. Tracing works on Linux only; the rest is portable.
package crash
