// Package ladder makes the rounds of a winners-up ladder, one after the other.
package ladder
