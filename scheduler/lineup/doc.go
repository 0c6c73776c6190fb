// Package lineup says who plays and who sits out in one round, and on which court, before anybody asks who
// plays with whom: the most urgent first, as many as walls, couples and rests allow.
package lineup
