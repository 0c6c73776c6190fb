package crash

import "errors"

// ErrCannotRecord tells that this system lets nobody watch a program.
var ErrCannotRecord = errors.New("programs cannot be watched here")
