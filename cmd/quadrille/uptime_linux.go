package main

import "golang.org/x/sys/unix"

// sleepless is the clock that counts sleep too (clock_gettime(2) of Linux).
const sleepless = unix.CLOCK_BOOTTIME
