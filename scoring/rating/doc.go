// Package rating tells from the results of games how good people are, and how sure of it one can be.
//
// A person's skill is a normal distribution, [Rating]; a team is the sum of its members. [Model.Update] is
// one game by the Bradley–Terry model with full pairs of R. C. Weng and C.-J. Lin, "A Bayesian
// Approximation Method for Online Ranking", Journal of Machine Learning Research 12 (2011) 267-300.
// [Replay] rates everybody by all games in their order. Ratings are never stored: after any correction
// they are made anew from the games, which takes milliseconds for a season.
//
// Two things here are not in the paper and are choices of the club, off unless chosen: the points of a game can
// count for half of its result ([Model.HalfMargin]), and time away can make a rating less sure
// ([Model.Growth]).
//
// Numbers alone can mislead: if two groups never met, nothing in the games says which is the better, whatever
// the ratings look like. [Design] finds this out from who played with and against whom.
package rating
