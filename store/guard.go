package store

import (
	"fmt"
	"runtime/debug"
)

// guard runs work and turns a panic, or a fault on a mapped page that is no longer there, into an
// error. The file is verified before it is mapped, so this is for what happens to it later: a
// stick that is pulled out, a file that somebody else cuts short.
func guard(work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the file changed under the program's hands (%v)", p)
		}
	}()
	return work()
}
