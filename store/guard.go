package store

import (
	"fmt"
	"runtime/debug"
)

// faultError tells that work was cut off by a panic. bbolt may then hold locks of its own for
// ever: it must not be called any more, not even to close the file.
type faultError struct{ cause any }

func (e *faultError) Error() string {
	return fmt.Sprintf("the file changed under the program's hands (%v)", e.cause)
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
