// Package measure says what a rotation is judged by, in which order of importance, and counts it.
package measure
