// Package wire brings what the hall may see from the desk to the boards on the same computer: by a socket
// in the file system, which no network reaches and only the same user may open.
//
// A desk listens ([Listen], [Serve]); a board follows it ([Follow]). What goes over the socket are frames: four
// bytes with the length, the highest first, then as much JSON. The board says hello first, with the versions
// that it speaks, and then nothing more. The desk answers with a hello of its own, in which it may refuse the
// board in words, and then sends a [public.View] whenever the hall changes, and an empty object now and then
// to show that it lives.
//
// The desk never waits for a board, and nothing that comes in at the socket can disturb it: frames are
// capped, every step has its time, whoever says anything after the hello is cut off, and so is who does not
// read. There is no queue but the newest state: who is slow misses what lies between. At most [MaxBoards]
// follow, and as many more may be about to say hello; all others are turned away at once.
package wire
