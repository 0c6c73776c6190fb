package store

import (
	"os"
	"strconv"
	"strings"
)

// The process that has a file open leaves its number beside it, so that another one can say who
// that is. The lock decides, never this note: a note that a crash left behind is of a process that
// runs no more, or is replaced by the next holder.

func holderPath(path string) string { return path + ".pid" }

// leaveNote notes that this process has path open. That it cannot is no reason to stop a night:
// others are then told that the number is unknown.
func leaveNote(path string) {
	name := holderPath(path)
	if err := os.WriteFile(name, []byte(strconv.Itoa(os.Getpid())+"\n"), 0o600); err != nil {
		os.Remove(name) // an older note would name the wrong process
	}
}

// clearNote takes the note of this process away. It must run while the lock is still held, or it
// could take the next holder's.
func clearNote(path string) { os.Remove(holderPath(path)) }

// holder is the number of the process that has path open, 0 if it is not known.
func holder(path string) int {
	b, err := os.ReadFile(holderPath(path))
	text, whole := strings.CutSuffix(string(b), "\n")
	if err != nil || !whole {
		return 0
	}
	pid, err := strconv.Atoi(text)
	if err != nil || pid <= 0 || !alive(pid) {
		return 0
	}
	return pid
}
