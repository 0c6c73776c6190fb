// Package judge sets what a rotation has beside what no such rotation can be below. Each measure of a [Certificate]
// has a file here that says what is counted, in words, and how; the arguments behind the bounds are in package bound.
package judge
