// Package sitout says what is fair in sitting out, and which numbers of sit-outs are the fairest that people,
// rounds and courts allow.
package sitout
