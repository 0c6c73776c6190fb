package store

import "runtime/debug"

// faultError tells that work was cut off by a panic. bbolt may then hold locks of its own for
// ever: it must not be called any more, not even to close the file.
type faultError struct{ cause any }

// Error says what that means for people. The cause is a text of the Go runtime.
func (e *faultError) Error() string {
	return "the file changed under the program's hands: it was cut short, or its disk was pulled out"
}

// guard runs work and turns a panic, or a fault on a mapped page that is no longer there, into a
// [*faultError]. The file is verified before it is mapped, so this is for what happens to it
// later: a stick that is pulled out, a file that somebody else cuts short.
func guard(work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if p := recover(); p != nil {
			err = &faultError{p}
		}
	}()
	return work()
}
