package main

import "golang.org/x/sys/unix"

// sleepless is the clock that counts sleep too (clock_gettime(3) of macOS).
const sleepless = unix.CLOCK_MONOTONIC_RAW
