// Package nighttest makes nights for tests: plain ones, any ones, and what can be told of them by brute force.
package nighttest
