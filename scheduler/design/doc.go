// Package design is a catalogue of published combinatorial designs that answer "who plays with
// whom" perfectly: everybody partners everybody, nobody meets twice, spouses never share a court.
//
// [Best] chooses for a night of so many people and rounds. Behind it stand [Whist], in which each two
// people partner once and oppose twice, [Quads], short nights in which nobody
// meets twice, and [Prefix], which cuts a design to the rounds that will really be played. [Unmet]
// returns whole the rounds in which nobody meets twice, for who wants to choose among them, and
// [Wheel] plans for nights that no formula answers. Ask
// [SpouseAvoiding] for couples who want to meet everybody but each other, [MixedRotation] for two
// groups that share teams, and [Berger] for set pairs.
//
// Everything is computed from short constructions: formulas over finite rings, products of smaller
// designs, and starters (one round from which a group of symmetries makes all the others). The few
// starters that were found by computer stand in files named *_starters.go and in wheels.txt, and the program
// cmd/starters finds them or others like them again. [CheckWheel] judges a schedule without
// knowing how it was made; the tests have such checks for the whole catalogue.
//
// The package imports nothing of this module, reads no clock, file or random source, and answers
// alike on every machine. People are numbered from 0.
package design
