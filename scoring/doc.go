// Package scoring holds the rules of one pickleball game.
//
// A game is the list of its rallies. [Start] gives the state before the first serve, [State.After] the
// state after one more rally, and [Fold] the state after a whole list. A state knows what a player has
// to know before the next serve: the call, who serves to whom and from which box, where everybody
// stands, and why the last rally changed what it did. Nothing is remembered besides the rallies, so
// undoing a rally is folding one rally fewer.
//
// A game that was not scored rally by rally has only its final score. [Rules.Final] and
// [Rules.ParseFinal] accept exactly the scores at which a game under those rules can end, and say of
// any other score what is wrong with it.
//
// A [Sheet] is the log of one court as it happened, with time-outs, corrections and retirements beside
// the rallies; it folds to the same states.
//
// The rules are those of the USA Pickleball rulebook, which the other federations follow. Numbers such
// as 4.B.6 in the comments of this package are rule numbers of the 2025 edition unless another year
// stands beside them. The venue and its referee have the last word, and so every derived state can be
// overridden in a sheet, with a note.
//
// The package is pure: no clock, no input or output, no randomness, no global state. All its values
// can be compared with == unless they hold a list.
package scoring
